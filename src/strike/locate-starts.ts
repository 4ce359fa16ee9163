import { inverseOfSymmetric, type Matrix } from '../numerics/index.js';
import type { LocateProblem } from './locate-model.js';

/** Half extents of the face that is searched [m]. @internal */
export const FACE = { toe: 0.055, high: 0.038 } as const;
/** Grid of the search: steps of 9 mm each way, finer than any valley of chi-square is wide. */
const COLUMNS = 13;
const ROWS = 9;
/** Valleys this much shallower than the deepest are not followed. */
const SHALLOW = 30;

/** The derivatives J of the readings by the delivery, and (1 + J Jᵀ)⁻¹, which is undefined where J is not finite. @internal */
export function profiledOut(
  { readings }: LocateProblem,
  jacobian: Matrix,
): { readonly delivery: Matrix; readonly inverse: Matrix | undefined } {
  const delivery = readings.map((_, i) => (jacobian[i] ?? []).slice(2));
  const spread = delivery.map((a, i) =>
    delivery.map((b, j) => a.reduce((sum, x, k) => sum + x * (b[k] ?? 0), i === j ? 1 : 0)),
  );
  return { delivery, inverse: inverseOfSymmetric(spread) };
}

/**
 * Starting points for the fit: the local minima of chi-square over a grid of the face, with the delivery profiled out
 * in linear approximation: minimum over p of |r + J p|² + |p|² is rᵀ (1 + J Jᵀ)⁻¹ r at p = −Jᵀ (1 + J Jᵀ)⁻¹ r. So no
 * place that explains the readings is missed, and most fits start next to their end.
 * @internal
 */
export function startsOf(problem: LocateProblem): number[][] {
  const m = problem.readings.length;
  const centre = problem.priors.map((_, i) => (i < 2 ? problem.standardised(i, 0) : 0));
  const { delivery, inverse } = profiledOut(problem, problem.jacobianAt(centre));
  if (inverse === undefined) return [];

  const points: { readonly q: number[]; readonly weighted: number[]; readonly chiSquare: number }[] = [];
  for (let row = 0; row < ROWS; row++) {
    for (let column = 0; column < COLUMNS; column++) {
      const q = [...centre];
      q[0] = problem.standardised(0, FACE.toe * ((2 * column) / (COLUMNS - 1) - 1));
      q[1] = problem.standardised(1, FACE.high * ((2 * row) / (ROWS - 1) - 1));
      const r = problem.residualsAt(q);
      const weighted: number[] = [];
      let chiSquare = q[0] * q[0] + q[1] * q[1];
      for (const line of inverse) {
        let sum = 0;
        for (let k = 0; k < m; k++) sum += (line[k] as number) * (r[k] as number);
        chiSquare += sum * (r[weighted.length] as number);
        weighted.push(sum);
      }
      points.push({
        q,
        weighted,
        chiSquare: Number.isFinite(chiSquare) ? chiSquare : Number.POSITIVE_INFINITY,
      });
    }
  }
  const at = (row: number, column: number): number =>
    column < 0 || column >= COLUMNS
      ? Number.POSITIVE_INFINITY
      : (points[row * COLUMNS + column]?.chiSquare ?? Number.POSITIVE_INFINITY);
  const valleys = points.filter(({ chiSquare }, index) => {
    if (chiSquare === Number.POSITIVE_INFINITY) return false;
    const row = Math.floor(index / COLUMNS);
    const column = index % COLUMNS;
    for (let i = -1; i <= 1; i++) {
      for (let j = -1; j <= 1; j++) if (at(row + i, column + j) < chiSquare) return false;
    }
    return true;
  });
  valleys.sort((a, b) => a.chiSquare - b.chiSquare);
  const deepest = valleys[0]?.chiSquare ?? 0;
  return valleys
    .filter(({ chiSquare }) => chiSquare < deepest + SHALLOW)
    .map(({ q, weighted }) =>
      q.map((value, i) =>
        i < 2 ? value : -delivery.reduce((sum, row, k) => sum + (row[i - 2] ?? 0) * (weighted[k] ?? 0), 0),
      ),
    );
}
