/** Mean of an output in even slices of one input, whatever the other inputs are. */
export interface MainEffect {
  /** Middle of each slice, in the input's own unit. */
  readonly at: readonly number[];
  readonly mean: readonly number[];
}

/** How the mean of `output` moves with one input. Values that are not finite are left out. */
export function mainEffect(
  input: Float64Array,
  output: Float64Array,
  from: number,
  to: number,
  slices = 16,
): MainEffect {
  const sum = new Float64Array(slices);
  const count = new Float64Array(slices);
  for (let i = 0; i < input.length; i++) {
    const value = output[i] as number;
    if (!Number.isFinite(value)) continue;
    const share = ((input[i] as number) - from) / (to - from);
    const slice = Math.min(slices - 1, Math.floor(share * slices));
    sum[slice] = (sum[slice] as number) + value;
    count[slice] = (count[slice] as number) + 1;
  }
  return {
    at: Array.from(sum, (_, k) => from + ((k + 0.5) / slices) * (to - from)),
    mean: Array.from(sum, (total, k) => total / (count[k] as number)),
  };
}
