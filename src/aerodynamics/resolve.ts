import { describe, FairflightError, isRecord, requireOneOf, requireRecord } from '../errors.js';
import { frozen } from '../inputs/frozen.js';
import { checkName, checkSource } from './check-data.js';
import { checkFittedConstants, fittedFunctions } from './fitted-modern.js';
import type { AerodynamicModel } from './model.js';
import type { ModelChoice, ModelData } from './model-data.js';
import { type AerodynamicModelId, aerodynamicModels, defaultAerodynamics } from './registry.js';
import { reverseMagnusFunctions } from './reverse-magnus.js';
import { checkScale, scaledFunctions } from './scaled.js';
import { checkTable, GRID_FIELDS, tableFunctions } from './table.js';

/** Fields of each kind of data besides `kind`. */
const FIELDS = {
  table: GRID_FIELDS,
  scaled: ['of', 'drag', 'lift'],
  'reverse-magnus': ['of'],
  fitted: ['id', 'label', 'constants', 'source'],
} as const satisfies Readonly<Record<ModelData['kind'], readonly string[]>>;

/** Models of models of models: a longer chain, or a ring, is a mistake. */
const DEEPEST = 8;

/** Data with the functions they stand for. */
interface Resolved {
  /** A checked copy that nobody outside can change. */
  readonly data: ModelData;
  readonly model: AerodynamicModel;
}

/**
 * Models made from data lately, the latest first. Whoever writes the same numbers out anew for each flight gets the same
 * functions, so that their law is compiled once and not for each flight. A compiled law holds 390 kB.
 */
const recent: Resolved[] = [];
const MOST_RECENT = 16;

/**
 * The coefficient functions that a scene flies by: of a built-in model by its id, of a model held as data, or of a
 * record of functions, which is given back as it is. `undefined` gives {@link defaultAerodynamics}. The same data give
 * the same functions.
 * @param field - name used in error messages
 * @throws {@link FairflightError} `invalid-input` or `outside-range` naming the entry that is wrong
 */
export function resolveModel(
  choice: ModelChoice = defaultAerodynamics,
  field = 'aerodynamics',
): AerodynamicModel {
  if (typeof choice === 'string') return builtIn(choice, field);
  return isData(choice) ? resolveData(choice, field, DEEPEST).model : checkFunctions(choice, field);
}

/**
 * The same choice in a form that survives JSON and `structuredClone`: an id or data, a copy that shares nothing with
 * what was given. `undefined` where the model, or one it is made from, is a record of functions of the caller's own.
 * @throws FairflightError as {@link resolveModel} does @internal
 */
export function modelAsData(
  choice: ModelChoice = defaultAerodynamics,
  field = 'aerodynamics',
): string | ModelData | undefined {
  const plain = plainChoice(choice, field, DEEPEST);
  return holdsFunctions(plain) ? undefined : (plain as string | ModelData);
}

/** A checked copy of data, for the functions that write them. @throws FairflightError naming the entry @internal */
export function checkedData<Data extends ModelData>(data: Data, field: string): Data {
  return resolveData(data, field, DEEPEST).data as Data;
}

function builtIn(id: string, field: string): AerodynamicModel {
  if (Object.hasOwn(aerodynamicModels, id)) return aerodynamicModels[id as AerodynamicModelId];
  const known = Object.keys(aerodynamicModels).join(', ');
  throw new FairflightError(
    'invalid-input',
    `${field} must be one of ${known}, or a model, got ${describe(id)}`,
    { field, value: id, hint: 'pass your own grid through tabulatedModel()' },
  );
}

function isData(choice: unknown): choice is ModelData {
  return isRecord(choice) && 'kind' in choice;
}

function resolveData(given: ModelData, field: string, deepest: number): Resolved {
  const at = recent.findIndex(({ data }) => isSame(data, given));
  const found = recent[at] ?? build(given, field, deepest);
  if (at >= 0) recent.splice(at, 1);
  recent.unshift(found);
  recent.length = Math.min(recent.length, MOST_RECENT);
  return found;
}

function build(given: ModelData, field: string, deepest: number): Resolved {
  if (deepest === 0) {
    throw new FairflightError('invalid-input', `${field}: models may be ${DEEPEST} deep, no deeper`, {
      field,
    });
  }
  // Every field is read once, here: what is checked is what is used.
  const copy = { ...given };
  const kind = requireOneOf(`${field}.kind`, copy.kind, Object.keys(FIELDS) as ModelData['kind'][]);
  requireRecord(field, given, ['kind', ...FIELDS[kind]]);
  switch (copy.kind) {
    case 'table': {
      const data = frozen(() => checkTable(copy, field));
      return { data, model: tableFunctions(data) };
    }
    case 'fitted': {
      const data = frozen(() => ({
        kind: copy.kind,
        ...checkName(copy, field),
        constants: checkFittedConstants(copy.constants, `${field}.constants`),
        source: checkSource(copy.source, `${field}.source`),
      }));
      return { data, model: fittedFunctions(data) };
    }
    case 'scaled': {
      const of = plainChoice(copy.of, `${field}.of`, deepest - 1);
      const data = Object.freeze({ kind: copy.kind, of, ...checkScale(copy, field) });
      return { data, model: scaledFunctions(resolveModel(of), data) };
    }
    case 'reverse-magnus': {
      const of = plainChoice(copy.of, `${field}.of`, deepest - 1);
      return {
        data: Object.freeze({ kind: copy.kind, of }),
        model: reverseMagnusFunctions(resolveModel(of)),
      };
    }
  }
}

/** The choice with built-in models by their ids and data checked and copied; functions of the caller's own stay. */
function plainChoice(choice: ModelChoice, field: string, deepest: number): ModelChoice {
  if (typeof choice === 'string') return builtIn(choice, field).id;
  if (isData(choice)) return resolveData(choice, field, deepest).data;
  const known = Object.values(aerodynamicModels).find((model) => model === choice);
  return known?.id ?? checkFunctions(choice, field);
}

function holdsFunctions(choice: ModelChoice): boolean {
  if (typeof choice === 'string') return false;
  if (!isData(choice)) return true;
  return 'of' in choice && holdsFunctions(choice.of);
}

/** Whether `given` says the same as data checked before; walks along the latter, so that `given` may be anything. */
function isSame(known: unknown, given: unknown): boolean {
  if (Object.is(known, given)) return true;
  if (typeof known !== 'object' || known === null || typeof given !== 'object' || given === null)
    return false;
  if (Array.isArray(known)) {
    return (
      Array.isArray(given) &&
      given.length === known.length &&
      known.every((value, i) => isSame(value, given[i]))
    );
  }
  // A record of functions is the same as itself alone.
  if ('dragCoefficient' in known) return false;
  let fields = 0;
  for (const key in given) {
    if (!Object.hasOwn(known, key)) return false;
    fields++;
  }
  const keys = Object.keys(known) as (keyof typeof known)[];
  return fields === keys.length && keys.every((key) => isSame(known[key], given[key]));
}

/** Says what keeps a record from being a model; the types cannot promise it to callers in plain JavaScript. */
function checkFunctions(model: AerodynamicModel, field: string): AerodynamicModel {
  const fault = faultOf(model);
  if (fault === undefined) return model;
  throw new FairflightError('invalid-input', `${field} is not a coefficient model: ${fault}`, {
    field,
    value: model,
    hint: 'name a built-in model, or spread one and change what differs, or pass your own grid through tabulatedModel()',
  });
}

function faultOf(model: Partial<AerodynamicModel> | null): string | undefined {
  if (!isRecord(model)) return `got ${describe(model)}`;
  if (typeof model.id !== 'string' || model.id === '') return 'id must be a non-empty string';
  if (typeof model.dragCoefficient !== 'function') return 'dragCoefficient must be a function of Re and S';
  if (typeof model.liftCoefficient !== 'function') return 'liftCoefficient must be a function of Re and S';
  if (model.spinEntering !== 'across' && model.spinEntering !== 'total') {
    return "spinEntering must be 'across' or 'total'";
  }
  if (!isRange(model.validity?.reynolds) || !isRange(model.validity?.spinRatio)) {
    return 'validity must give min and max of reynolds and spinRatio';
  }
  if (typeof model.spinDecay !== 'number' || !(model.spinDecay >= 0 && model.spinDecay <= 1e-3)) {
    return 'spinDecay must be between 0 and 0.001';
  }
  return undefined;
}

function isRange(range: { readonly min: number; readonly max: number } | undefined): boolean {
  return typeof range === 'object' && range !== null && range.min <= range.max;
}
