import { type CountField, count } from '../inputs/field.js';
import { frozen } from '../inputs/frozen.js';
import { readField, readQuantity } from '../inputs/read.js';
import { normalQuantile, studentTQuantile } from '../numerics/index.js';
import { levelField } from './level.js';

/** Declaration of the number of values. @internal */
export const valueCountField: CountField = /* @__PURE__ */ frozen(() =>
  count(1, 1_000_000_000, 5, 'number of values'),
);

/**
 * How many times wider than resampling says the interval of a mean of few values is: √(n/(n − 1)) t(n − 1)/z. Resamples
 * scatter by √((n − 1)/n) too little, and follow the normal instead of Student's distribution. It is 1 for a single
 * value, whose scatter is not known.
 *
 * Source: Hesterberg T C (2015) What Teachers Should Know About the Bootstrap, Am. Stat. 69, 371–386 (from memory).
 * @param count - values the mean is taken over, 1 to 1,000,000,000
 * @param level - coverage of the interval, 0.5 to 0.999
 * @throws `FairflightError` `invalid-input` or `outside-range`
 */
export function fewValuesStretch(count: number, level: number): number {
  const n = readField(valueCountField, count, 'count') as number;
  const p = 0.5 + readQuantity(levelField, level, 'level') / 2;
  return n < 2 ? 1 : (Math.sqrt(n / (n - 1)) * studentTQuantile(p, n - 1)) / normalQuantile(p);
}
