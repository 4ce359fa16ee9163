import { describe, expect, it } from 'vitest';
import { naturalGroups } from '../../src/numerics/natural-groups.js';
import { stream } from '../../src/numerics/stream.js';

describe('naturalGroups', () => {
  it('finds groups that lie apart, in any order', () => {
    expect(naturalGroups([10, 1, 11, 1.2, 30, 10.4, 1.1, 29.5], 0.1)).toEqual([1, 0, 1, 0, 2, 1, 0, 2]);
    expect(naturalGroups([5], 0.1)).toEqual([0]);
    expect(naturalGroups([5, 5, 5, 5], 0.1)).toEqual([0, 0, 0, 0]);
  });

  it('makes no difference of what lies within the least spread', () => {
    expect(new Set(naturalGroups([1, 1.001, 1.002, 1.1, 1.101, 1.102], 0.5)).size).toBe(1);
  });

  // The split with the least sum of squares: 1-D k-means is exact by dynamic programming (Fisher 1958).
  it('leaves one normal heap whole nearly always, and finds four heaps four standard deviations apart', () => {
    let whole = 0;
    let four = 0;
    for (let k = 0; k < 100; k++) {
      const random = stream(k);
      const heap = Array.from({ length: 30 }, random.normal);
      if (Math.max(...naturalGroups(heap, 0.01)) === 0) whole++;
      const heaps = [0, 8, 16, 24].flatMap((c) => Array.from({ length: 6 }, () => c + random.normal()));
      if (naturalGroups(heaps, 0.01).every((g, i) => g === Math.floor(i / 6))) four++;
    }
    expect(whole).toBeGreaterThan(93);
    expect(four).toBeGreaterThan(85);
  });
});
