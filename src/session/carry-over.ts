import { mean, normalCdf, stream } from '../numerics/index.js';

/** Whether sessions resemble their neighbours: form that lasts, or a gain that comes in steps. */
export interface CarryOver {
  /** Correlation of neighbouring session means about a straight line, freed of its bias, −1 to 0.95; 0 for independent days. */
  readonly autocorrelation: number;
  /** Chance of a correlation as large among independent days. */
  readonly probability: number;
  /**
   * `carries-over` when the chance is below 10 %: the change and the limits it is judged by are then widened. With a
   * dozen sessions days that carry over are found a third of the time, with two dozen two thirds: `not-shown` proves nothing.
   */
  readonly verdict: 'carries-over' | 'not-shown';
  /** How many times wider the change is for it; 1 where nothing is shown. */
  readonly widening: number;
}

const LIMIT = 0.1;
const TRIALS = 2000;
/** From here on the correlation of independent days is normal to a hundredth. */
const MANY = 100;
const MOST = 0.95;

/**
 * Lag-1 autocorrelation of the residuals about a straight line, judged by trial against independent normal days, always
 * with the same numbers. A trend taken out pulls the estimate down by (2 + 4ρ)/n, which is given back (Kendall M G 1954,
 * Biometrika 41, 403–404, for a mean; the term of the trend by the same expansion).
 * @param means - session means in order, at least four
 * @param block - sessions averaged at each end
 * @internal
 */
export function carryOverOf(means: readonly number[], block: number): CarryOver {
  const n = means.length;
  const found = aboutLine(means);
  const probability = chanceOf(found, n);
  const autocorrelation = Math.max(-1, Math.min(MOST, n > 4 ? (found + 2 / n) / (1 - 4 / n) : found));
  if (probability >= LIMIT || autocorrelation <= 0) {
    return { autocorrelation, probability, verdict: 'not-shown', widening: 1 };
  }
  const ends = means.map((_, i) => (i < block ? -1 : i >= n - block ? 1 : 0));
  // Differences of neighbours, which the typical error is taken from, are smaller by √(1 − ρ).
  const widening = growth(ends, autocorrelation) / Math.sqrt(1 - autocorrelation);
  return { autocorrelation, probability, verdict: 'carries-over', widening };
}

/**
 * How many times larger the error of a weighted sum of days is when each keeps a share of the last one's form
 * (first-order autoregression) than when they are independent.
 * @internal
 */
export function growth(weights: readonly number[], autocorrelation: number): number {
  // Σᵢ Σⱼ wᵢ wⱼ ρ^|i−j| in one pass: `past` is Σ wⱼ ρ^(i−j) over j < i.
  let [sum, square, past] = [0, 0, 0];
  for (const weight of weights) {
    sum += weight * (weight + 2 * past);
    square += weight * weight;
    past = autocorrelation * (past + weight);
  }
  return Math.sqrt(sum / square);
}

function aboutLine(values: readonly number[]): number {
  const centre = mean(values);
  const times = values.map((_, i) => i - (values.length - 1) / 2);
  const slope =
    times.reduce((sum, time, i) => sum + time * (values[i] ?? 0), 0) /
    times.reduce((sum, time) => sum + time * time, 0);
  const left = values.map((value, i) => value - centre - slope * (times[i] ?? 0));
  const square = left.reduce((sum, value) => sum + value * value, 0);
  const products = left.reduce((sum, value, i) => sum + value * (left[i - 1] ?? 0), 0);
  return square > 0 ? products / square : 0;
}

function chanceOf(found: number, n: number): number {
  if (n > MANY) return normalCdf(-(found + 2 / n) * Math.sqrt(n));
  const random = stream(0, n);
  const larger = Array.from({ length: TRIALS }, () =>
    Number(aboutLine(Array.from({ length: n }, random.normal)) >= found),
  );
  return larger.reduce((sum, each) => sum + each, 0) / TRIALS;
}
