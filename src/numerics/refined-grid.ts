/**
 * A square grid of values with its steps halved `times` times, row after row. New values are those of the cubic through
 * the four nearest nodes of a line; beyond the edge stands the value of the edge.
 *
 * Source: Dubuc S (1986) Interpolation through an iterative scheme, J. Math. Anal. Appl. 114, 185–204.
 */
export function refinedGrid(values: readonly number[], count: number, times: number): readonly number[] {
  if (times === 0) return values;
  return refinedGrid(halved(halved(values, count), count), 2 * count - 1, times - 1);
}

/** Halves the steps along the rows and turns rows into columns, so that twice halves both. */
function halved(values: readonly number[], count: number): number[] {
  const rows = values.length / count;
  const at = (row: number, i: number): number =>
    values[row * count + Math.min(Math.max(i, 0), count - 1)] ?? 0;
  const out: number[] = [];
  for (let i = 0; i < 2 * count - 1; i++) {
    const k = i >> 1;
    for (let row = 0; row < rows; row++) {
      out.push(
        i % 2 === 0 ? at(row, k) : (9 * (at(row, k) + at(row, k + 1)) - at(row, k - 1) - at(row, k + 2)) / 16,
      );
    }
  }
  return out;
}
