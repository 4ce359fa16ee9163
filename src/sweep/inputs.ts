import type { Delivery } from '../inputs/delivery.js';
import type { Launch } from '../inputs/launch.js';
import { memberPath, refusal } from '../inputs/refuse.js';
import { type FactorName, factorFields } from './factors.js';
import type { ReadDesign } from './read-design.js';
import type { SweepSetup } from './setup.js';

/** Where the value of a factor comes from in each row: a column of the design, or one number. @internal */
export interface Input {
  readonly name: FactorName;
  /** Position among the design's columns, −1 for a constant. */
  readonly column: number;
  readonly constant: number;
  /** Where the caller wrote it. */
  readonly path: string;
  /** By how much the reading is above the truth. */
  readonly error?: Input;
}

/** The factors that design, `fixed` or `from` say something about. @internal */
export interface Inputs {
  readonly struck: boolean;
  /** 1 right-handed, −1 left-handed. */
  readonly mirror: 1 | -1;
  /** The factor's source; undefined when nothing is said about it. */
  readonly find: (name: FactorName) => Input | undefined;
  /** All factors of a group that something is said about, for example `clubhead`. */
  readonly group: (group: string) => readonly Input[];
}

/** Value of an input in row i of a chunk: of a reading with an error the truth behind it. @internal */
export function valueAt(input: Input, columns: readonly Float64Array[], i: number): number {
  const value = input.column < 0 ? input.constant : ((columns[input.column] as Float64Array)[i] as number);
  if (input.error === undefined) return value;
  const error = valueAt(input.error, columns, i);
  return factorFields[input.error.name].si === '' ? value * (1 - error) : value - error;
}

/** True when any of the inputs changes from row to row. @internal */
export function anyVaries(inputs: readonly (Input | undefined)[]): boolean {
  return inputs.some((input) => input !== undefined && input.column >= 0);
}

/**
 * Gathers what design, `fixed` and `from` say, and decides whether the walk starts at the club or at the ball.
 * @throws `FairflightError` for contradictions and for what is missing
 * @internal
 */
export function gatherInputs(
  names: readonly FactorName[],
  design: ReadDesign['kind'],
  setup: SweepSetup,
): Inputs {
  const sources = new Map<FactorName, Input>();
  const { start, fixed } = setup;
  if (start?.delivery !== undefined) addDelivery(sources, start.delivery);
  if (start?.launch !== undefined) addLaunch(sources, start.launch);
  for (const [key, value] of Object.entries(fixed)) {
    const name = key as FactorName;
    const path = memberPath('options.fixed', name);
    if (names.includes(name)) {
      throw refusal(path, `${name} is varied by the design and fixed by the options`, { value });
    }
    sources.set(name, { name, column: -1, constant: value, path });
  }
  names.forEach((name, column) => {
    const path = design === 'list' ? memberPath('design.rows[0]', name) : `design.factors[${column}].name`;
    sources.set(name, { name, column, constant: Number.NaN, path });
  });

  const group = (wanted: string): Input[] =>
    [...sources.values()].filter(({ name }) => name.startsWith(`${wanted}.`));
  const struck = group('delivery').length + group('clubhead').length > 0 || setup.struck;
  requireOneWalk(struck, group('launch').length > 0);
  const needed: readonly FactorName[] = struck
    ? ['delivery.clubSpeed', 'delivery.attackAngle', 'delivery.dynamicLoft']
    : ['launch.ballSpeed', 'launch.launchAngle', 'launch.spinRate'];
  const missing = needed.filter((name) => !sources.has(name));
  if (missing.length > 0) {
    throw refusal('options.from', `the sweep has no value for ${missing.join(', ')}`, {
      hint: 'vary it in the design, fix it in options.fixed, or give options.from',
    });
  }
  const mirror = start?.delivery?.hand === 'left' ? -1 : 1;
  addErrors(sources, group('readingError'), struck ? 'delivery' : 'launch');
  return { struck, mirror, find: (name) => sources.get(name), group };
}

/** Puts each error beside the reading it belongs to. */
function addErrors(
  sources: Map<FactorName, Input>,
  errors: readonly Input[],
  start: 'delivery' | 'launch',
): void {
  for (const error of errors) {
    const name = error.name.replace('readingError', start) as FactorName;
    const reading = sources.get(name);
    if (reading === undefined) {
      throw refusal(error.path, `${error.name} needs ${name} beside it: what was read`);
    }
    sources.set(name, { ...reading, error });
  }
}

function requireOneWalk(struck: boolean, launched: boolean): void {
  if (struck !== launched) return;
  throw refusal(
    'options.from',
    struck
      ? 'the sweep speaks of a strike (delivery or clubhead) and of a launch; a shot starts from one of them'
      : 'the sweep needs a delivery or a launch to start from',
    { hint: 'give options.from, options.fixed or factors of one of the two' },
  );
}

function addDelivery(sources: Map<FactorName, Input>, delivery: Delivery): void {
  const { strikeOffset, hand: _, ...plain } = delivery;
  addNumbers(sources, 'delivery', 'options.from', plain);
  addNumbers(sources, 'delivery.strikeOffset', 'options.from.strikeOffset', strikeOffset ?? {});
}

function addLaunch(sources: Map<FactorName, Input>, launch: Launch): void {
  addNumbers(sources, 'launch', 'options.from', launch);
}

function addNumbers(sources: Map<FactorName, Input>, group: string, path: string, numbers: object): void {
  for (const [key, constant] of Object.entries(numbers as Readonly<Record<string, number>>)) {
    const name = `${group}.${key}` as FactorName;
    sources.set(name, { name, column: -1, constant, path: `${path}.${key}` });
  }
}

/**
 * A record with the inputs of one row set at their places: `clubhead.inertia.vertical` becomes `inertia.vertical`.
 * @internal
 */
export function withInputs<T extends object>(
  record: T,
  inputs: readonly Input[],
  columns: readonly Float64Array[],
  i: number,
): T {
  return inputs.reduce(
    (result, input) => withValue(result, input.name.split('.').slice(1), valueAt(input, columns, i)),
    record,
  );
}

function withValue<T extends object>(record: T, path: readonly string[], value: number): T {
  const [key = '', ...rest] = path;
  const old = (record as Record<string, unknown>)[key];
  return { ...record, [key]: rest.length === 0 ? value : withValue((old ?? {}) as object, rest, value) };
}
