import { describe, isList, isRecord } from '../errors.js';
import { frozen } from '../inputs/frozen.js';
import { readField, readRecord } from '../inputs/read.js';
import { refusal, refuseType } from '../inputs/refuse.js';
import { lawOf } from './described.js';
import { fittedLaw, lawOfConstants } from './fitted-modern.js';
import type { AerodynamicModel, CoefficientLaw } from './model.js';
import type { ModelChoice, ModelData } from './model-data.js';
import { isModelData, modelDataField, modelFields } from './model-fields.js';
import { type AerodynamicModelId, coefficientLaws } from './registry.js';
import { reverseMagnusLaw } from './reverse-magnus.js';
import { scaledLaw } from './scaled.js';
import { soundTable, tableLaw } from './table.js';

/** Models of models of models: a longer chain, or a ring, is a mistake. */
const DEEPEST = 8;

/** Data with the law they stand for. */
interface Resolved {
  /** A checked copy that nobody outside can change. */
  readonly data: ModelData;
  readonly law: CoefficientLaw;
}

/**
 * Laws made from data lately, the latest first. Whoever writes the same numbers out anew for each flight gets the same
 * law, so that it is compiled once and not for each flight. A compiled law holds 390 kB.
 */
const recent: Resolved[] = [];
const MOST_RECENT = 16;

/**
 * The law that a scene flies by: of a built-in model by its id, of a model held as data, or a record of functions,
 * which is given back as it is. The same data give the same law.
 * @param field - name used in error messages
 * @throws `FairflightError` `invalid-input` or `outside-range` naming the entry that is wrong
 * @internal
 */
export function resolveLaw(choice: ModelChoice, field = 'aerodynamics'): CoefficientLaw {
  if (typeof choice === 'string') return builtIn(choice, field);
  if (isModelData(choice)) return resolveData(choice, field).law;
  return lawOf(choice) ?? checkFunctions(choice, field);
}

/**
 * The same choice in a form that survives JSON and `structuredClone`: an id or data, a copy that shares nothing with
 * what was given. `undefined` where the model, or one it is made from, is a record of functions of the caller's own.
 * @throws FairflightError as {@link resolveModel} does @internal
 */
export function modelAsData(
  choice: ModelChoice = fittedLaw.id,
  field = 'aerodynamics',
): string | ModelData | undefined {
  const plain = plainChoice(choice, field, DEEPEST);
  return holdsFunctions(plain) ? undefined : (plain as string | ModelData);
}

/** A checked copy of data, for the functions that write them. @throws FairflightError naming the entry @internal */
export function checkedData<Data extends ModelData>(data: Data, field: string): Data {
  return resolveData(data, field).data as Data;
}

function builtIn(id: string, field: string): CoefficientLaw {
  if (Object.hasOwn(coefficientLaws, id)) return coefficientLaws[id as AerodynamicModelId];
  const known = Object.keys(coefficientLaws).join(', ');
  throw refusal(field, `${field} must be one of ${known}, or a model, got ${describe(id)}`, {
    value: id,
    hint: 'pass your own grid through tabulatedModel()',
  });
}

/** Data checked, with their law. @throws FairflightError naming the entry @internal */
export function resolveData(given: ModelData, field: string, deepest: number = DEEPEST): Resolved {
  const at = recent.findIndex(({ data }) => isSame(data, given));
  const found = recent[at] ?? build(given, field, deepest);
  if (at >= 0) recent.splice(at, 1);
  recent.unshift(found);
  recent.length = Math.min(recent.length, MOST_RECENT);
  return found;
}

function build(given: ModelData, field: string, deepest: number): Resolved {
  if (deepest === 0) throw refusal(field, `${field}: models may be ${DEEPEST} deep, no deeper`);
  const fields = modelDataField({
    kind: 'custom',
    read: (of, path) => plainChoice(of as ModelChoice, path, deepest - 1),
    label: 'model',
  });
  const data = readField(fields, given, field) as ModelData;
  switch (data.kind) {
    case 'table': {
      const table = frozen(() => soundTable(data, field));
      return { data: table, law: tableLaw(table) };
    }
    case 'fitted': {
      const fitted = frozen(() => data);
      return { data: fitted, law: lawOfConstants(fitted) };
    }
    // What these are made from may be functions of the caller's own, which stay open.
    case 'scaled':
      return { data: Object.freeze(data), law: scaledLaw(resolveLaw(data.of), data) };
    case 'reverse-magnus':
      return { data: Object.freeze(data), law: reverseMagnusLaw(resolveLaw(data.of)) };
  }
}

/** The choice with built-in models by their ids and data checked and copied; functions of the caller's own stay. */
function plainChoice(choice: ModelChoice, field: string, deepest: number): ModelChoice {
  if (typeof choice === 'string') return builtIn(choice, field).id;
  if (isModelData(choice)) return resolveData(choice, field, deepest).data;
  const law = lawOf(choice);
  if (law === undefined) return checkFunctions(choice, field);
  return Object.values(coefficientLaws).includes(law) ? law.id : choice;
}

function holdsFunctions(choice: ModelChoice): boolean {
  if (typeof choice === 'string') return false;
  if (!isModelData(choice)) return true;
  return 'of' in choice && holdsFunctions(choice.of);
}

/** Whether `given` says the same as data checked before; walks along the latter, so that `given` may be anything. */
function isSame(known: unknown, given: unknown): boolean {
  if (Object.is(known, given)) return true;
  if (isList(known)) {
    return (
      isList(given) && given.length === known.length && known.every((value, i) => isSame(value, given[i]))
    );
  }
  // A record of functions is the same as itself alone.
  if (!isRecord(known) || !isRecord(given) || 'dragCoefficient' in known) return false;
  let fields = 0;
  for (const key in given) {
    if (!Object.hasOwn(known, key)) return false;
    fields++;
  }
  const keys = Object.keys(known);
  return fields === keys.length && keys.every((key) => isSame(known[key], given[key]));
}

/** Says what keeps a record from being a model; the types cannot promise it to callers in plain JavaScript. */
function checkFunctions(model: AerodynamicModel, field: string): AerodynamicModel {
  if (!isRecord(model)) {
    throw refuseType(field, 'the id of a built-in model, data, or a record of functions', model);
  }
  // The record itself is given back, not the copy: its law is compiled once.
  readRecord(modelFields, model, field);
  return model;
}
