import { at, endSlope, hermite, innerSlope, intervalOf, monotoneSlopes } from './monotone.js';

/**
 * The monotone piecewise cubic through a grid, in S along each row and then in Re across the rows; held at its edges.
 * `values[row][column]` belong to `reynolds[row]` and `spinRatio[column]`. @internal
 */
export function monotoneSurface(
  reynolds: readonly number[],
  spinRatio: readonly number[],
  values: readonly (readonly number[])[],
): (re: number, s: number) => number {
  const slopes = values.map((row) => monotoneSlopes(spinRatio, row));
  const lastRow = reynolds.length - 1;
  const [firstS, lastS] = [at(spinRatio, 0), at(spinRatio, spinRatio.length - 1)];
  const [firstRe, lastRe] = [at(reynolds, 0), at(reynolds, lastRow)];

  function alongRow(row: number, column: number, t: number, h: number): number {
    const y = values[row] as readonly number[];
    const d = slopes[row] as readonly number[];
    return hermite(t, h, at(y, column), at(y, column + 1), at(d, column), at(d, column + 1));
  }

  return (re, s) => {
    const x = Math.min(Math.max(s, firstS), lastS);
    const column = intervalOf(spinRatio, x);
    const h = at(spinRatio, column + 1) - at(spinRatio, column);
    const t = (x - at(spinRatio, column)) / h;
    if (lastRow === 0) return alongRow(0, column, t, h);

    // The slopes in Re at the two rows around the point need one more row on either side, where there is one.
    const z = Math.min(Math.max(re, firstRe), lastRe);
    const i = intervalOf(reynolds, z);
    const width = at(reynolds, i + 1) - at(reynolds, i);
    const y0 = alongRow(i, column, t, h);
    const y1 = alongRow(i + 1, column, t, h);
    const secant = (y1 - y0) / width;
    const before = i > 0 ? at(reynolds, i) - at(reynolds, i - 1) : 0;
    const secantBefore = i > 0 ? (y0 - alongRow(i - 1, column, t, h)) / before : 0;
    const after = i + 1 < lastRow ? at(reynolds, i + 2) - at(reynolds, i + 1) : 0;
    const secantAfter = i + 1 < lastRow ? (alongRow(i + 2, column, t, h) - y1) / after : 0;
    let slope0 = secant;
    let slope1 = secant;
    if (i > 0) slope0 = innerSlope(before, width, secantBefore, secant);
    else if (i + 1 < lastRow) slope0 = endSlope(width, after, secant, secantAfter);
    if (i + 1 < lastRow) slope1 = innerSlope(width, after, secant, secantAfter);
    else if (i > 0) slope1 = endSlope(width, before, secant, secantBefore);
    return hermite((z - at(reynolds, i)) / width, width, y0, y1, slope0, slope1);
  };
}
