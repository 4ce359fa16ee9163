import { type ErrorCode, type ErrorDetails, FairflightError, requireWithin } from '../errors.js';

/** An error whose message ends in what the caller can do about it. @internal */
export function refusal(
  field: string,
  message: string,
  details: Omit<ErrorDetails, 'field'> = {},
  code: ErrorCode = 'invalid-input',
): FairflightError {
  const advice = details.hint === undefined ? '' : `; ${details.hint}`;
  return new FairflightError(code, `${message}${advice}`, { field, ...details });
}

/** A whole number in a range, both ends included. @throws {@link FairflightError} @internal */
export function requireWhole(field: string, value: number, least: number, most: number): number {
  if (typeof value === 'number' && Number.isFinite(value) && !Number.isInteger(value)) {
    throw refusal(field, `${field} must be a whole number, got ${value}`, { value, range: [least, most] });
  }
  return requireWithin(field, value, least, most, '', 'a whole number');
}
