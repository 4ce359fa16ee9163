/** ln Σ exp(vᵢ), without overflow and without losing the small ones; −∞ for an empty list. */
export function logSumExp(values: readonly number[]): number {
  let top = Number.NEGATIVE_INFINITY;
  // Written so that NaN is not passed over.
  for (const value of values) if (!(value <= top)) top = value;
  if (top === Number.NEGATIVE_INFINITY) return top;
  let sum = 0;
  for (const value of values) sum += Math.exp(value - top);
  return top + Math.log(sum);
}
