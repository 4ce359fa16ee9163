import type { Matrix } from './linear-algebra.js';

/** First and second derivatives of one function of several variables. */
export interface Derivatives {
  /** First derivatives. */
  readonly gradient: readonly number[];
  /** Second derivatives. */
  readonly hessian: Matrix;
}

/**
 * Derivatives of several functions of the same variables by central differences, their errors of the order of the
 * squared steps.
 *
 * Source: Abramowitz M, Stegun I A (1964) Handbook of Mathematical Functions, 25.3.21, 25.3.23 and 25.3.26
 * (numbers from memory).
 * @param values - the functions, all at once, at a point
 * @param steps - step of each variable, above 0
 */
export function centralDifferences(
  values: (x: readonly number[]) => readonly number[],
  x: readonly number[],
  steps: readonly number[],
): Derivatives[] {
  const shifted = (...moves: readonly (readonly [variable: number, sign: number])[]): readonly number[] => {
    const y = [...x];
    for (const [i, sign] of moves) y[i]! += sign * steps[i]!;
    return values(y);
  };
  const middle = values(x);
  const up = x.map((_, i) => shifted([i, 1]));
  const down = x.map((_, i) => shifted([i, -1]));
  /** Mixed second derivatives by i and an earlier j, of every function. */
  const mixed = x.map((_, i) =>
    x.slice(0, i).map((__, j) => {
      const [pp, mm] = [shifted([i, 1], [j, 1]), shifted([i, -1], [j, -1])];
      const [pm, mp] = [shifted([i, 1], [j, -1]), shifted([i, -1], [j, 1])];
      return middle.map((___, k) => (pp[k]! + mm[k]! - pm[k]! - mp[k]!) / (4 * steps[i]! * steps[j]!));
    }),
  );
  return middle.map((centre, k) => ({
    gradient: x.map((_, i) => (up[i]![k]! - down[i]![k]!) / (2 * steps[i]!)),
    hessian: x.map((_, i) =>
      x.map((__, j) =>
        i === j
          ? (up[i]![k]! - 2 * centre + down[i]![k]!) / steps[i]! ** 2
          : mixed[Math.max(i, j)]![Math.min(i, j)]![k]!,
      ),
    ),
  }));
}
