import { normalCdf, studentTCdf } from './distributions.js';
import { incompleteBeta, logGamma } from './special-functions.js';

/**
 * Distribution function of the noncentral t distribution, by the series in incomplete beta functions summed outward
 * from its largest term.
 * Source: Lenth R V (1989) Algorithm AS 243, Appl. Statist. 38, 185–189, eqs. 2 and 3.
 */
export function noncentralTCdf(t: number, dof: number, shift: number): number {
  if (t < 0) return 1 - noncentralTCdf(-t, dof, -shift);
  if (t === 0) return normalCdf(-shift);
  const half = 0.5 * shift * shift;
  if (half === 0) return studentTCdf(t, dof);
  const x = (t * t) / (dof + t * t);
  const rest = dof / (dof + t * t);
  const term = (j: number): number => {
    const even = Math.exp(-half + j * Math.log(half) - logGamma(j + 1));
    const odd = Math.sign(shift) * Math.exp(-half + (j + 0.5) * Math.log(half) - logGamma(j + 1.5));
    return (
      even * incompleteBeta(j + 0.5, 0.5 * dof, x, rest) + odd * incompleteBeta(j + 1, 0.5 * dof, x, rest)
    );
  };
  const middle = Math.floor(half);
  let sum = 0;
  for (const step of [1, -1]) {
    for (let j = step > 0 ? middle : middle - 1; j >= 0 && j < middle + 5000; j += step) {
      const value = term(j);
      sum += value;
      if (Math.abs(value) < 1e-17 && Math.abs(j - middle) > 3) break;
    }
  }
  return Math.min(1, Math.max(0, normalCdf(-shift) + 0.5 * sum));
}
