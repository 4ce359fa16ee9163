import { FairflightError } from '../errors.js';

/** What a search over several variables found. */
export interface SimplexSolution {
  /** Where. */
  readonly x: readonly number[];
  /** Value of the function there. */
  readonly value: number;
  /** Iterations used, all restarts together. */
  readonly iterations: number;
  /** Evaluations of the function. */
  readonly evaluations: number;
  /** False when the iteration cap stopped the search before the tolerance was met. */
  readonly converged: boolean;
}

/** How {@link nelderMead} searches and when it stops. */
export interface NelderMeadOptions {
  /** First step along each variable; default 5 % of the value, or 0.05 where the start is 0. */
  readonly steps?: readonly number[];
  /** Lower bounds; `-Infinity` for none. */
  readonly lower?: readonly number[];
  /** Upper bounds; `Infinity` for none. */
  readonly upper?: readonly number[];
  /** The simplex must shrink to this fraction of the first steps; default 1e-7. */
  readonly tolerance?: number;
  /** And its values must agree within this, plus a few units of rounding; default 1e-10. */
  readonly valueTolerance?: number;
  /** Cap on iterations, all restarts together; default 500 a variable. */
  readonly maxIterations?: number;
  /** Fresh simplexes grown around the point found, to leave a collapsed one; default 1. */
  readonly restarts?: number;
}

/**
 * A local minimum of a function of several variables without derivatives. Bounds are met by a smooth change of
 * variable (sine for two bounds, square root for one), so the function is never called outside them. Values that
 * are not finite count as worst.
 *
 * Source: Nelder J A, Mead R (1965) A simplex method for function minimization, Comput. J. 7, 308–313, with the
 * dimension-dependent coefficients of Gao F, Han L (2012) Comput. Optim. Appl. 51, 259–277, eq. 4.1.
 * @throws {@link FairflightError} `invalid-input` when lengths differ or the start lies outside the bounds.
 */
export function nelderMead(
  f: (x: readonly number[]) => number,
  start: readonly number[],
  options: NelderMeadOptions = {},
): SimplexSolution {
  const n = start.length;
  const lower = options.lower ?? start.map(() => Number.NEGATIVE_INFINITY);
  const upper = options.upper ?? start.map(() => Number.POSITIVE_INFINITY);
  const steps = options.steps ?? start.map((x) => (x === 0 ? 0.05 : 0.05 * Math.abs(x)));
  checkInputs(start, lower, upper, steps);
  const tolerance = options.tolerance ?? 1e-7;
  const valueTolerance = options.valueTolerance ?? 1e-10;
  const maxIterations = options.maxIterations ?? 500 * n;
  const restarts = options.restarts ?? 1;
  // Gao and Han's coefficients; in one dimension they degenerate, so the classical ones are kept there.
  const expand = n > 1 ? 1 + 2 / n : 2;
  const contract = n > 1 ? 0.75 - 1 / (2 * n) : 0.5;
  const shrink = n > 1 ? 1 - 1 / n : 0.5;

  let evaluations = 0;
  const evaluate = (u: readonly number[]): number => {
    evaluations++;
    const value = f(u.map((ui, i) => outward(ui, lower[i]!, upper[i]!)));
    return Number.isFinite(value) ? value : Number.POSITIVE_INFINITY;
  };

  let best = start.map((x, i) => inward(x, lower[i]!, upper[i]!));
  let bestValue = evaluate(best);
  let iterations = 0;
  let converged = false;

  for (let attempt = 0; attempt <= restarts; attempt++) {
    const scale = attempt === 0 ? 1 : 0.1;
    const centre = best.map((u, i) => outward(u, lower[i]!, upper[i]!));
    const simplex: number[][] = [best];
    const values: number[] = [bestValue];
    for (let i = 0; i < n; i++) {
      const vertex = [...best];
      const step = scale * steps[i]!;
      const fits = centre[i]! + step <= upper[i]! ? step : -step;
      vertex[i] = inward(Math.max(centre[i]! + fits, lower[i]!), lower[i]!, upper[i]!);
      simplex.push(vertex);
      values.push(evaluate(vertex));
    }
    converged = false;
    for (; ; iterations++) {
      sortVertices(simplex, values);
      const spread = values[n]! - values[0]!;
      const rounding = 8 * Number.EPSILON * Math.abs(values[0]!);
      if (spread <= valueTolerance + rounding && isSmall(simplex, lower, upper, steps, tolerance)) {
        converged = true;
        break;
      }
      if (iterations >= maxIterations) break;
      const worst = simplex[n]!;
      const centroid = best.map((_, i) => simplex.slice(0, n).reduce((sum, v) => sum + v[i]!, 0) / n);
      const along = (t: number): number[] => centroid.map((c, i) => c + t * (worst[i]! - c));
      const reflected = along(-1);
      const reflectedValue = evaluate(reflected);
      if (reflectedValue < values[0]!) {
        const expanded = along(-expand);
        const expandedValue = evaluate(expanded);
        const further = expandedValue < reflectedValue;
        simplex[n] = further ? expanded : reflected;
        values[n] = further ? expandedValue : reflectedValue;
      } else if (reflectedValue < values[n - 1]!) {
        simplex[n] = reflected;
        values[n] = reflectedValue;
      } else {
        const outside = reflectedValue < values[n]!;
        const contracted = along(outside ? -contract : contract);
        const contractedValue = evaluate(contracted);
        if (contractedValue < Math.min(reflectedValue, values[n]!)) {
          simplex[n] = contracted;
          values[n] = contractedValue;
        } else {
          for (let k = 1; k <= n; k++) {
            simplex[k] = simplex[k]!.map((u, i) => simplex[0]![i]! + shrink * (u - simplex[0]![i]!));
            values[k] = evaluate(simplex[k]!);
          }
        }
      }
    }
    const gain = bestValue - values[0]!;
    best = simplex[0]!;
    bestValue = values[0]!;
    if (!converged || (attempt > 0 && gain <= valueTolerance)) break;
  }
  return {
    x: best.map((u, i) => outward(u, lower[i]!, upper[i]!)),
    value: bestValue,
    iterations,
    evaluations,
    converged,
  };
}

function sortVertices(simplex: number[][], values: number[]): void {
  const order = values.map((_, i) => i).sort((i, j) => values[i]! - values[j]! || i - j);
  const vertices = order.map((i) => simplex[i]!);
  const sorted = order.map((i) => values[i]!);
  for (let i = 0; i < order.length; i++) {
    simplex[i] = vertices[i]!;
    values[i] = sorted[i]!;
  }
}

function isSmall(
  simplex: readonly (readonly number[])[],
  lower: readonly number[],
  upper: readonly number[],
  steps: readonly number[],
  tolerance: number,
): boolean {
  for (let i = 0; i < steps.length; i++) {
    const centre = outward(simplex[0]![i]!, lower[i]!, upper[i]!);
    const limit = tolerance * steps[i]! + 4 * Number.EPSILON * Math.abs(centre);
    for (let k = 1; k < simplex.length; k++) {
      if (Math.abs(outward(simplex[k]![i]!, lower[i]!, upper[i]!) - centre) > limit) return false;
    }
  }
  return true;
}

/** From the unbounded variable of the search to the bounded one of the caller. */
function outward(u: number, lower: number, upper: number): number {
  const low = Number.isFinite(lower);
  const high = Number.isFinite(upper);
  if (low && high) return Math.min(upper, lower + (upper - lower) * 0.5 * (1 + Math.sin(u)));
  if (low) return lower + u * u;
  if (high) return upper - u * u;
  return u;
}

/** Inverse of {@link outward} on its main branch. */
function inward(x: number, lower: number, upper: number): number {
  const low = Number.isFinite(lower);
  const high = Number.isFinite(upper);
  if (low && high) return Math.asin(Math.min(1, Math.max(-1, (2 * (x - lower)) / (upper - lower) - 1)));
  if (low) return Math.sqrt(Math.max(0, x - lower));
  if (high) return Math.sqrt(Math.max(0, upper - x));
  return x;
}

function checkInputs(
  start: readonly number[],
  lower: readonly number[],
  upper: readonly number[],
  steps: readonly number[],
): void {
  const n = start.length;
  const same = n > 0 && lower.length === n && upper.length === n && steps.length === n;
  const inside = start.every((x, i) => x >= lower[i]! && x <= upper[i]! && lower[i]! < upper[i]!);
  if (same && inside && steps.every((s) => Number.isFinite(s) && s > 0)) return;
  throw new FairflightError(
    'invalid-input',
    'start, steps and bounds must have one entry a variable, with positive steps and lower <= start <= upper',
    { field: 'start', value: start },
  );
}
