/** What kind of failure a {@link FairflightError} reports. */
export type ErrorCode = 'invalid-input' | 'outside-range' | 'not-converged' | 'unsupported' | 'aborted';

/** Machine-readable particulars of a {@link FairflightError}. */
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
 * `range` and `hint` carry the particulars.
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
}

/** True for a {@link FairflightError}, also one thrown by another copy of the library. */
export function isFairflightError(error: unknown): error is FairflightError {
  return typeof error === 'object' && error !== null && TAG in error;
}

/** True for a number within a range, both ends included: {@link requireWithin} for where no text may be made. @internal */
export function isWithin(value: unknown, minimum: number, maximum: number): boolean {
  return typeof value === 'number' && value >= minimum && value <= maximum && Number.isFinite(value);
}

/**
 * Returns `value` when it is a finite number within the range, both ends included.
 * @throws {@link FairflightError} `invalid-input` when it is not a finite number, `outside-range` when it lies outside.
 */
export function requireWithin(
  field: string,
  value: unknown,
  minimum: number,
  maximum: number,
  unit: string,
  hint?: string,
): number {
  // Nearly every value is fine: no text is made for those.
  if (isWithin(value, minimum, maximum)) return value as number;
  const range = [minimum, maximum] as const;
  const details = hint === undefined ? { field, value, unit, range } : { field, value, unit, range, hint };
  const allowed = `${field} must be between ${minimum} and ${maximum}${unit === '' ? '' : ` ${unit}`}`;
  const advice = hint === undefined ? '' : `; ${hint}`;
  if (typeof value !== 'number' || !Number.isFinite(value)) {
    throw new FairflightError('invalid-input', `${allowed}, got ${describe(value)}${advice}`, details);
  }
  throw new FairflightError('outside-range', `${allowed}, got ${value}${advice}`, details);
}

/**
 * Returns `value` when it is one of the listed names.
 * @throws {@link FairflightError} `invalid-input` otherwise.
 */
export function requireOneOf<T extends string>(field: string, value: unknown, allowed: readonly T[]): T {
  const found = allowed.find((name) => name === value);
  if (found === undefined) {
    throw new FairflightError(
      'invalid-input',
      `${field} must be one of ${allowed.join(', ')}, got ${describe(value)}`,
      {
        field,
        value,
      },
    );
  }
  return found;
}

/**
 * Returns `value` when it is an object whose keys are all known, so that a misspelt field fails instead of being ignored.
 * @throws {@link FairflightError} `invalid-input` otherwise.
 */
export function requireRecord<T extends object>(field: string, value: T, known: readonly string[]): T {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) {
    throw new FairflightError('invalid-input', `${field} must be an object, got ${describe(value)}`, {
      field,
      value,
    });
  }
  for (const key in value) {
    if (!known.includes(key)) {
      throw new FairflightError(
        'invalid-input',
        `${field} has no field ${JSON.stringify(key)}; known fields: ${known.join(', ')}`,
        { field: `${field}.${key}`, value: (value as Record<string, unknown>)[key] },
      );
    }
  }
  return value;
}

function describe(value: unknown): string {
  if (typeof value === 'string') return JSON.stringify(value);
  if (typeof value === 'object' && value !== null) return Array.isArray(value) ? 'an array' : 'an object';
  return String(value);
}
