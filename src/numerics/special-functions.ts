import { FairflightError } from '../errors.js';

/**
 * Natural logarithm of the gamma function for x > 0, to about 14 digits: Stirling's series after shifting x above 12.
 * Source: Abramowitz M, Stegun I A (1964) Handbook of Mathematical Functions, 6.1.41.
 */
export function logGamma(x: number): number {
  if (!(x > 0)) {
    throw new FairflightError('outside-range', `logGamma needs x > 0, got ${x}`, { field: 'x', value: x });
  }
  let z = x;
  let product = 1;
  while (z < 12) product *= z++;
  return (z - 0.5) * Math.log(z) - z + 0.5 * Math.log(2 * Math.PI) + stirlingSeries(z) - Math.log(product);
}

/** Correction to Stirling's formula, for z of 12 and more. */
function stirlingSeries(z: number): number {
  const w = 1 / (z * z);
  return (
    (1 / 12 +
      w * (-1 / 360 + w * (1 / 1260 + w * (-1 / 1680 + w * (1 / 1188 + w * (-691 / 360360 + w / 156)))))) /
    z
  );
}

/** Natural logarithm of the beta function, without cancellation where one argument is large. */
export function logBeta(a: number, b: number): number {
  const large = Math.max(a, b);
  const small = Math.min(a, b);
  if (large < 12) return logGamma(a) + logGamma(b) - logGamma(a + b);
  // ln Γ(large) − ln Γ(large + small) by Stirling's series, its big terms cancelled by hand.
  const ratio =
    -(large - 0.5) * Math.log1p(small / large) -
    small * Math.log(large + small) +
    small +
    stirlingSeries(large) -
    stirlingSeries(large + small);
  return logGamma(small) + ratio;
}

/**
 * Regularised incomplete gamma functions P(a, x) and Q(a, x) = 1 − P for a > 0, x ≥ 0, each without cancellation.
 * Source: Abramowitz and Stegun 6.5.29 (series) and 6.5.31 (continued fraction), evaluated by Lentz's method.
 */
export function incompleteGamma(a: number, x: number): { readonly lower: number; readonly upper: number } {
  if (!(x > 0)) return { lower: 0, upper: 1 };
  const front = Math.exp(a * Math.log(x) - x - logGamma(a));
  if (x < a + 1) {
    let term = 1 / a;
    let sum = term;
    for (let k = 1; k < 10_000 && term > sum * 0.5 * Number.EPSILON; k++) {
      term *= x / (a + k);
      sum += term;
    }
    const lower = Math.min(1, front * sum);
    return { lower, upper: 1 - lower };
  }
  const fraction = lentz(
    (k) => (k === 1 ? 1 : (k - 1) * (a - (k - 1))),
    (k) => x + 2 * k - 1 - a,
  );
  const upper = front * fraction;
  return { lower: 1 - upper, upper };
}

/**
 * Regularised incomplete beta function I_x(a, b) for a, b > 0 and 0 ≤ x ≤ 1; `complement` is 1 − x; give it where
 * the difference would lose digits.
 * Source: NIST Digital Library of Mathematical Functions, 8.17.22.
 */
export function incompleteBeta(a: number, b: number, x: number, complement: number = 1 - x): number {
  if (x <= 0) return 0;
  if (complement <= 0) return 1;
  const logX = x < 0.5 ? Math.log(x) : Math.log1p(-complement);
  const logComplement = complement < 0.5 ? Math.log(complement) : Math.log1p(-x);
  const front = Math.exp(a * logX + b * logComplement - logBeta(a, b));
  if (x < (a + 1) / (a + b + 2)) return (front / a) * betaFraction(a, b, x);
  return 1 - (front / b) * betaFraction(b, a, complement);
}

function betaFraction(a: number, b: number, x: number): number {
  return lentz(
    (k) => {
      if (k === 1) return 1;
      const m = Math.floor((k - 1) / 2);
      return (k - 1) % 2 === 0
        ? (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m))
        : (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    },
    () => 1,
  );
}

/** Continued fraction n₁/(d₁ + n₂/(d₂ + …)); Lentz W J (1976) Appl. Opt. 15, 668–671, as modified by Thompson and Barnett. */
function lentz(numerator: (k: number) => number, denominator: (k: number) => number): number {
  const tiny = 1e-300;
  let f = tiny;
  let c = f;
  let d = 0;
  for (let k = 1; k < 10_000; k++) {
    const a = numerator(k);
    const b = denominator(k);
    d = b + a * d || tiny;
    c = b + a / c || tiny;
    d = 1 / d;
    const change = c * d;
    f *= change;
    if (Math.abs(change - 1) < 0.5 * Number.EPSILON) break;
  }
  return f;
}
