import { requireWithin } from './require.js';
import { incompleteBeta, incompleteGamma, logBeta, logGamma } from './special-functions.js';

/** Standard normal distribution function Φ(x), accurate also far in the lower tail: erfc by the incomplete gamma function. */
export function normalCdf(x: number): number {
  const { lower, upper } = incompleteGamma(0.5, 0.5 * x * x);
  return x < 0 ? 0.5 * upper : 0.5 + 0.5 * lower;
}

/**
 * Inverse of the standard normal distribution function, 0 < p < 1, relative error about 1e-16.
 * Source: Wichura M J (1988) Algorithm AS 241, Appl. Statist. 37, 477–484, function PPND16.
 * @throws FairflightError `outside-range` outside 0 < p < 1
 */
export function normalQuantile(p: number): number {
  const q = p - 0.5;
  if (Math.abs(q) <= 0.425) {
    const r = 0.180625 - q * q;
    return (q * polynomial(CENTRE_ABOVE, r)) / polynomial(CENTRE_BELOW, r);
  }
  requireProbability(p);
  const r = Math.sqrt(-Math.log(q < 0 ? p : 1 - p));
  const size =
    r <= 5
      ? polynomial(MIDDLE_ABOVE, r - 1.6) / polynomial(MIDDLE_BELOW, r - 1.6)
      : polynomial(TAIL_ABOVE, r - 5) / polynomial(TAIL_BELOW, r - 5);
  return q < 0 ? -size : size;
}

// The published coefficients, rounded to doubles.
const CENTRE_ABOVE = [
  3.3871328727963665, 133.14166789178438, 1971.5909503065513, 13731.69376550946, 45921.95393154987,
  67265.7709270087, 33430.57558358813, 2509.0809287301227,
];
const CENTRE_BELOW = [
  1, 42.31333070160091, 687.1870074920579, 5394.196021424751, 21213.794301586597, 39307.89580009271,
  28729.085735721943, 5226.495278852854,
];
const MIDDLE_ABOVE = [
  1.4234371107496835, 4.630337846156546, 5.769497221460691, 3.6478483247632045, 1.2704582524523684,
  0.2417807251774506, 0.022723844989269184, 0.0007745450142783414,
];
const MIDDLE_BELOW = [
  1, 2.053191626637759, 1.6763848301838038, 0.6897673349851, 0.14810397642748008, 0.015198666563616457,
  0.0005475938084995345, 1.0507500716444169e-9,
];
const TAIL_ABOVE = [
  6.657904643501103, 5.463784911164114, 1.7848265399172913, 0.29656057182850487, 0.026532189526576124,
  0.0012426609473880784, 2.7115555687434876e-5, 2.0103343992922881e-7,
];
const TAIL_BELOW = [
  1, 0.599832206555888, 0.1369298809227358, 0.014875361290850615, 0.0007868691311456133,
  1.8463183175100548e-5, 1.421511758316446e-7, 2.0442631033899397e-15,
];

function polynomial(coefficients: readonly number[], x: number): number {
  let sum = 0;
  for (let i = coefficients.length - 1; i >= 0; i--) sum = sum * x + coefficients[i]!;
  return sum;
}

/** Student's t distribution function with `dof` > 0 degrees of freedom (Abramowitz and Stegun 26.7.1). */
export function studentTCdf(t: number, dof: number): number {
  const tail = 0.5 * incompleteBeta(0.5 * dof, 0.5, dof / (dof + t * t), (t * t) / (dof + t * t));
  return t < 0 ? tail : 1 - tail;
}

/** Density of Student's t distribution. */
function studentTDensity(t: number, dof: number): number {
  const front = -logBeta(0.5 * dof, 0.5) - 0.5 * Math.log(dof);
  return Math.exp(front - 0.5 * (dof + 1) * Math.log1p((t * t) / dof));
}

/**
 * Inverse of {@link studentTCdf}, 0 < p < 1; `dof` > 0.
 * @throws FairflightError `outside-range` outside these
 */
export function studentTQuantile(p: number, dof: number): number {
  requireProbability(p);
  requireDof('dof', dof);
  if (p === 0.5) return 0;
  const tail = Math.min(p, 1 - p);
  const sign = p < 0.5 ? -1 : 1;
  if (dof === 1) return sign / Math.tan(Math.PI * tail);
  if (dof === 2) return (sign * (1 - 2 * tail)) / Math.sqrt(2 * tail * (1 - tail));
  // Cornish–Fisher start, Abramowitz and Stegun 26.7.5, first term.
  const z = normalQuantile(1 - tail === 1 ? 1 - Number.EPSILON : 1 - tail);
  const start = z + (z ** 3 + z) / (4 * dof);
  return (
    sign *
    invert(
      tail,
      (t) => studentTCdf(-t, dof),
      (t) => -studentTDensity(t, dof),
      start,
    )
  );
}

/** Chi-square distribution function (Abramowitz and Stegun 26.4.19). */
export function chiSquareCdf(x: number, dof: number): number {
  return incompleteGamma(0.5 * dof, 0.5 * x).lower;
}

/** Inverse of {@link chiSquareCdf} with two degrees of freedom, 0 < p < 1: there the distribution is exponential. */
export function chiSquareQuantileOfTwo(p: number): number {
  return -2 * Math.log1p(-p);
}

/**
 * Inverse of {@link chiSquareCdf}, 0 < p < 1; `dof` > 0.
 * @throws FairflightError `outside-range` outside these
 */
export function chiSquareQuantile(p: number, dof: number): number {
  requireProbability(p);
  requireDof('dof', dof);
  if (dof === 2) return chiSquareQuantileOfTwo(p);
  const half = 0.5 * dof;
  // Wilson–Hilferty start (Abramowitz and Stegun 26.4.17), or the leading term of the series for small x.
  const cube = 1 - 2 / (9 * dof) + normalQuantile(p) * Math.sqrt(2 / (9 * dof));
  const small = 2 * Math.exp((Math.log(p) + logGamma(half + 1)) / half);
  const start = cube > 0.2 && small > 0.3 * dof ? dof * cube ** 3 : small;
  const density = (x: number): number =>
    0.5 * Math.exp((half - 1) * Math.log(0.5 * x) - 0.5 * x - logGamma(half));
  if (p <= 0.5) return invert(p, (x) => incompleteGamma(half, 0.5 * x).lower, density, start);
  return invert(
    1 - p,
    (x) => incompleteGamma(half, 0.5 * x).upper,
    (x) => -density(x),
    start,
  );
}

/** F distribution function with `above` and `below` degrees of freedom (Abramowitz and Stegun 26.6.2). */
export function fCdf(x: number, above: number, below: number): number {
  if (!(x > 0)) return 0;
  const sum = above * x + below;
  return incompleteBeta(0.5 * above, 0.5 * below, (above * x) / sum, below / sum);
}

/**
 * Inverse of {@link fCdf}, 0 < p < 1; `above` and `below` > 0.
 * @throws FairflightError `outside-range` outside these
 */
export function fQuantile(p: number, above: number, below: number): number {
  requireProbability(p);
  requireDof('above', above);
  requireDof('below', below);
  if (p > 0.5) return 1 / fQuantileBelowMedian(1 - p, below, above);
  return fQuantileBelowMedian(p, above, below);
}

function fQuantileBelowMedian(p: number, above: number, below: number): number {
  const a = 0.5 * above;
  const b = 0.5 * below;
  const front = a * Math.log(above / below) - logBeta(a, b);
  const density = (x: number): number =>
    Math.exp(front + (a - 1) * Math.log(x) - (a + b) * Math.log1p((above / below) * x));
  return invert(p, (x) => fCdf(x, above, below), density, 1);
}

/** Positive x with cdf(x) = p for a monotonic cdf on x > 0, by Newton steps kept inside a shrinking bracket. */
function invert(
  p: number,
  cdf: (x: number) => number,
  derivative: (x: number) => number,
  start: number,
): number {
  let low = 0;
  let high = Number.POSITIVE_INFINITY;
  let x = start > 0 && Number.isFinite(start) ? start : 1;
  for (let k = 0; k < 200; k++) {
    const error = cdf(x) - p;
    const slope = derivative(x);
    if (error === 0) return x;
    if (error > 0 === slope >= 0) high = x;
    else low = x;
    let next = x - error / slope;
    if (!(next > low && next < high)) next = high === Number.POSITIVE_INFINITY ? 2 * x : 0.5 * (low + high);
    if (Math.abs(next - x) <= 2 * Number.EPSILON * x) return next;
    x = next;
  }
  return x;
}

/**
 * Smallest number of successes that so many trials exceed with a probability of 1 − p at most; `share` is the
 * probability of a success, 0 < share < 1 (Abramowitz and Stegun 26.5.24).
 * @throws FairflightError `outside-range` outside these
 */
export function binomialQuantile(p: number, trials: number, share: number): number {
  requireProbability(p);
  requireProbability(share);
  let [below, enough] = [-1, trials];
  while (enough - below > 1) {
    const middle = Math.floor((below + enough) / 2);
    const cdf = incompleteBeta(trials - middle, middle + 1, 1 - share, share);
    if (cdf >= p) enough = middle;
    else below = middle;
  }
  return enough;
}

function requireProbability(p: number): void {
  requireWithin(
    'p',
    p,
    Number.MIN_VALUE,
    1 - Number.EPSILON / 2,
    '',
    'a probability strictly between 0 and 1',
  );
}

function requireDof(field: string, dof: number): void {
  requireWithin(field, dof, Number.MIN_VALUE, 1e12, '', 'degrees of freedom');
}
