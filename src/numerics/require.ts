import { describe, FairflightError } from '../errors.js';

/**
 * Returns `value` when it is a finite number within the range, both ends included.
 * @throws `FairflightError` `invalid-input` when it is not a finite number, `outside-range` when it lies outside.
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
  if (typeof value === 'number' && value >= minimum && value <= maximum && Number.isFinite(value))
    return value;
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
 * @throws `FairflightError` `invalid-input` otherwise.
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
