/**
 * A square grid of values with its steps halved `times` times, row after row. New values are those of the cubic through
 * the four nearest nodes of a line; beyond the edge stands the value of the edge.
 *
 * Source: Dubuc S (1986) Interpolation through an iterative scheme, J. Math. Anal. Appl. 114, 185–204.
 */
export function refinedGrid(values: Float64Array, count: number, times: number): Float64Array {
  if (times === 0) return values;
  return refinedGrid(halved(halved(values, count), count), 2 * count - 1, times - 1);
}

/** Halves the steps along the rows and turns rows into columns, so that twice halves both. */
function halved(values: Float64Array, count: number): Float64Array {
  const rows = values.length / count;
  const last = count - 1;
  const out = new Float64Array(rows * (2 * count - 1));
  for (let row = 0; row < rows; row++) {
    const at = row * count;
    for (let k = 0; k < last; k++) {
      const [here, next] = [values[at + k]!, values[at + k + 1]!];
      const [before, after] = [values[at + Math.max(0, k - 1)]!, values[at + Math.min(last, k + 2)]!];
      out[2 * k * rows + row] = here;
      out[(2 * k + 1) * rows + row] = (9 * (here + next) - before - after) / 16;
    }
    out[2 * last * rows + row] = values[at + last]!;
  }
  return out;
}
