import { FairflightError } from '../errors.js';

/** An interval for a quantity, with the share of cases it is meant to cover. */
export interface Interval {
  /** Lower end. */
  readonly low: number;
  /** Upper end. */
  readonly high: number;
  /** Coverage, for example 0.95. */
  readonly level: number;
}

/**
 * Throws unless there are at least `least` values, all finite.
 * @throws FairflightError `invalid-input`
 */
export function requireSample(field: string, values: readonly number[], least: number): void {
  if (values.length < least) {
    throw new FairflightError(
      'invalid-input',
      `${field} needs at least ${least} values, got ${values.length}`,
      {
        field,
        value: values.length,
      },
    );
  }
  const bad = values.find((value) => !Number.isFinite(value));
  if (bad !== undefined) {
    throw new FairflightError('invalid-input', `${field} must hold finite numbers, got ${bad}`, {
      field,
      value: bad,
    });
  }
}

/** Arithmetic mean, in two passes so that large values cost no digits. */
export function mean(values: readonly number[]): number {
  requireSample('values', values, 1);
  let first = 0;
  for (const value of values) first += value;
  first /= values.length;
  let rest = 0;
  for (const value of values) rest += value - first;
  return first + rest / values.length;
}

/**
 * Sample variance with divisor n − 1, by the corrected two-pass algorithm.
 * Source: Chan T F, Golub G H, LeVeque R J (1983) Am. Stat. 37, 242–247, eq. 1.7.
 */
export function variance(values: readonly number[]): number {
  requireSample('values', values, 2);
  const centre = mean(values);
  let square = 0;
  let rest = 0;
  for (const value of values) {
    square += (value - centre) ** 2;
    rest += value - centre;
  }
  return (square - rest ** 2 / values.length) / (values.length - 1);
}

/** Sample standard deviation with divisor n − 1. */
export function standardDeviation(values: readonly number[]): number {
  return Math.sqrt(variance(values));
}

/** Sample covariance of two equally long lists, divisor n − 1. */
export function covariance(x: readonly number[], y: readonly number[]): number {
  requireSample('x', x, 2);
  requireSample('y', y, x.length);
  const mx = mean(x);
  const my = mean(y);
  let sum = 0;
  for (let i = 0; i < x.length; i++) sum += (x[i]! - mx) * (y[i]! - my);
  return sum / (x.length - 1);
}
