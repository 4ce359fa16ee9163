import { pathToFileURL } from 'node:url';
import { type ModelChoice, resolveModel } from '../aerodynamics/index.js';
import { modelAsData } from '../aerodynamics/resolve.js';
import { describe, isReadable } from '../errors.js';
import { type Declared, optional, text } from '../inputs/field.js';
import { frozen } from '../inputs/frozen.js';
import { refusal, refuseType } from '../inputs/refuse.js';
import type { SweepRequest } from '../sweep/request.js';

/**
 * Where worker threads find a coefficient model of the user's own. Functions cannot be sent to a thread, so the thread
 * imports them itself.
 */
export interface ModelModule {
  /** ES module: a URL such as `new URL('./my-model.js', import.meta.url)`, or an absolute path. */
  readonly module: string | URL;
  /** Name of its export that is the model; default `default`. */
  readonly name?: string;
}

/** Declaration of {@link ModelModule}. @internal */
export const modelModuleFields: Declared<ModelModule> = /* @__PURE__ */ frozen(() => ({
  module: { kind: 'custom', read: readAddress, label: 'module' },
  name: optional(text('default', 'export')),
}));

function readAddress(value: unknown, path: string): string | URL {
  if (typeof value === 'string' || (isReadable(value) && value instanceof URL)) return value;
  throw refuseType(path, 'a URL or a path', value);
}

/** A {@link ModelModule} that survives the trip to a thread. @internal */
export interface ModelAddress {
  readonly url: string;
  readonly name: string;
}

/** @internal */
export function addressOf(model: ModelModule | undefined): ModelAddress | undefined {
  if (model === undefined) return undefined;
  const { module, name = 'default' } = model;
  const text = String(module);
  return { url: /^[a-z][a-z+.-]+:/i.test(text) ? text : pathToFileURL(text).href, name };
}

/** Longest piece of the runtime's own words that a message repeats. */
const LONGEST_REASON = 200;

/** The request with the model of a module in it. @throws `FairflightError` when the module has no such model @internal */
export async function withModel(
  request: SweepRequest,
  address: ModelAddress | undefined,
): Promise<SweepRequest> {
  if (address === undefined) return request;
  const field = 'options.modelFrom';
  const exports = await import(address.url).then(
    (module: unknown) => module as Record<string, unknown>,
    (error: unknown) => {
      const reason = error instanceof Error ? error.message : describe(error);
      throw refusal(
        field,
        `${describe(address.url)} cannot be imported: ${reason.slice(0, LONGEST_REASON)}`,
        { value: address.url },
      );
    },
  );
  if (exports[address.name] === undefined) {
    throw refusal(field, `${describe(address.url)} has no export ${describe(address.name)}`, {
      value: address.name,
    });
  }
  const given = exports[address.name] as ModelChoice;
  // Data stay data, so that a file can tell their numbers.
  const aerodynamics = modelAsData(given, field) ?? resolveModel(given, field);
  return { ...request, scene: { ...request.scene, aerodynamics } };
}

/**
 * Refuses a request that is not plain data: everything but a coefficient model of functions is.
 * @throws `FairflightError` `unsupported`
 * @internal
 */
export function requireSendable({ scene: { aerodynamics } }: SweepRequest): void {
  if (modelAsData(aerodynamics) !== undefined) return;
  throw refusal(
    'scene.aerodynamics',
    'a coefficient model made of functions cannot be sent to worker threads',
    {
      value: resolveModel(aerodynamics).id,
      hint: 'give it as data, through tabulatedModel(), or export it from a module and pass options.modelFrom, or compute with workers: 0',
    },
    'unsupported',
  );
}
