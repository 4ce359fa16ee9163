import type * as z from 'zod/mini';
import { FairflightError } from '../errors.js';
import type { Fault } from './schema-of.js';

/** Reads JSON by a schema made from declarations. @throws FairflightError that names the first fault and tells of the others */
export function parseWith<T>(name: string, schema: z.ZodMiniType, json: unknown): T {
  const result = schema.safeParse(json);
  if (result.success) return result.data as T;
  const errors = result.error.issues.map((issue) =>
    ((issue as { readonly params?: unknown }).params as Fault).refuse(pathText(name, issue.path)),
  );
  const [first] = errors as [FairflightError, ...FairflightError[]];
  if (errors.length === 1) throw first;
  const { code, field, value, unit, range, hint } = first;
  throw new FairflightError(code, errors.map(({ message }) => message).join('; also '), {
    value,
    ...(field !== undefined && { field }),
    ...(unit !== undefined && { unit }),
    ...(range !== undefined && { range }),
    ...(hint !== undefined && { hint }),
  });
}

function pathText(name: string, path: readonly PropertyKey[]): string {
  return path.reduce<string>(
    (text, key) => (typeof key === 'number' ? `${text}[${key}]` : `${text}.${String(key)}`),
    name,
  );
}
