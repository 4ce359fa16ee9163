/**
 * What kind of failure a `FairflightError` reports. `invalid-input`: missing, of the wrong type, unknown, or in
 * contradiction to another input. `outside-range`: a number outside the range allowed. `not-converged`: a user's own
 * coefficient model cannot be integrated. `unsupported`: this runtime or these inputs do not allow it. `aborted`: the
 * caller's signal ended it. `system`: a disk, a worker thread or another process got in the way; the input is sound, and
 * the hint says how to go on.
 */
export type ErrorCode =
  | 'invalid-input'
  | 'outside-range'
  | 'not-converged'
  | 'unsupported'
  | 'aborted'
  | 'system';

/** Machine-readable particulars of a `FairflightError`. */
export interface ErrorDetails {
  /** Dotted path of the offending input, for example `launch.ballSpeed`. */
  readonly field?: string;
  /** The value that was given. */
  readonly value?: unknown;
  /** Unit of the value and the range, for example `m/s`. */
  readonly unit?: string;
  /** Allowed range, both ends included. */
  readonly range?: readonly [minimum: number, maximum: number];
  /** What the caller can do about it. */
  readonly hint?: string;
}

const TAG = Symbol.for('fairflight/error');

/**
 * The one error class of the library. `code` is for programs, `message` for people; `field`, `value`, `unit`,
 * `range` and `hint` carry the particulars. `JSON.stringify` keeps all of them; a value JSON cannot hold becomes text.
 */
export class FairflightError extends Error {
  override readonly name: string = 'FairflightError';
  /** What kind of failure this is. */
  readonly code: ErrorCode;
  /** Dotted path of the offending input. */
  readonly field: string | undefined;
  /** The value that was given. */
  readonly value: unknown;
  /** Unit of value and range. */
  readonly unit: string | undefined;
  /** Allowed range, both ends included. */
  readonly range: readonly [minimum: number, maximum: number] | undefined;
  /** What the caller can do about it. */
  readonly hint: string | undefined;

  constructor(code: ErrorCode, message: string, details: ErrorDetails = {}) {
    super(message);
    this.code = code;
    this.field = details.field;
    this.value = details.value;
    this.unit = details.unit;
    this.range = details.range;
    this.hint = details.hint;
    // The ESM and CommonJS builds can be loaded side by side, so identity rests on a shared symbol, not on the class.
    Object.defineProperty(this, TAG, { value: true });
  }

  /** All of it as plain data, for logs. */
  toJSON(): object {
    const { name, code, message, field, value, unit, range, hint } = this;
    const plain = typeof value === 'string' || typeof value === 'boolean' || Number.isFinite(value);
    return { name, code, message, field, value: plain ? value : describe(value), unit, range, hint };
  }
}

/** True for a `FairflightError`, also one thrown by another copy of the library. */
export function isFairflightError(error: unknown): error is FairflightError {
  return isReadable(error) && TAG in error;
}

/** Longest piece of a caller's text that a message repeats. */
const LONGEST_QUOTE = 60;

/** A value in words short enough for a message. Never calls code of the value's own. @internal */
export function describe(value: unknown): string {
  switch (typeof value) {
    case 'string':
      return value.length > LONGEST_QUOTE
        ? `${JSON.stringify(value.slice(0, LONGEST_QUOTE))}… (${value.length} characters)`
        : JSON.stringify(value);
    case 'bigint':
      return `${String(value).slice(0, LONGEST_QUOTE)}n`;
    case 'function':
      return 'a function';
    case 'symbol':
      return 'a symbol';
    case 'object':
      return value === null ? 'null' : kindOf(value);
    default:
      return String(value);
  }
}

/** True for an object that can hold named fields: no array, no promise, no map, no date. @internal */
export function isRecord(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && kindOf(value) === RECORD;
}

/** True for an array. @internal */
export function isList(value: unknown): value is readonly unknown[] {
  return typeof value === 'object' && value !== null && kindOf(value) === LIST;
}

/** True for an object of whatever kind whose fields can be looked at. @internal */
export function isReadable(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && kindOf(value) !== UNREADABLE;
}

const RECORD = 'an object';
const LIST = 'an array';
const UNREADABLE = 'an object that cannot be read';

function kindOf(value: object): string {
  try {
    if (Array.isArray(value)) return LIST;
    // Nearly every object is a plain one: no name is made for those.
    if (Object.getPrototypeOf(value) === Object.prototype) return RECORD;
    const name = Object.prototype.toString.call(value).slice('[object '.length, -1);
    if (name === 'Object') return RECORD;
    return name === 'Promise' ? 'a promise (await it)' : `an object of class ${name}`;
  } catch {
    // A revoked proxy throws at every look.
    return UNREADABLE;
  }
}
