/** Mean; NaN of nothing. */
export function average(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

/** Standard deviation from item to item; NaN of fewer than two. */
export function deviation(values: readonly number[]): number {
  const mean = average(values);
  return Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1));
}

/** Median; NaN of nothing. */
export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const half = sorted.length / 2;
  const [low = Number.NaN, high = Number.NaN] = [sorted[Math.ceil(half) - 1], sorted[Math.floor(half)]];
  return (low + high) / 2;
}
