/**
 * The non-decreasing sequence closest to `values` in weighted least squares, by pooling adjacent violators.
 * Source: Barlow R E, Bartholomew D J, Bremner J M, Brunk H D (1972) Statistical Inference under Order Restrictions.
 */
export function isotonic(values: readonly number[], weights?: readonly number[]): number[] {
  const blocks: { value: number; weight: number; count: number }[] = [];
  values.forEach((value, i) => {
    let block = { value, weight: weights?.[i] ?? 1, count: 1 };
    for (let last = blocks.at(-1); last !== undefined && last.value >= block.value; last = blocks.at(-1)) {
      blocks.pop();
      const weight = last.weight + block.weight;
      block = {
        value: (last.weight * last.value + block.weight * block.value) / weight,
        weight,
        count: last.count + block.count,
      };
    }
    blocks.push(block);
  });
  return blocks.flatMap((block) => new Array<number>(block.count).fill(block.value));
}
