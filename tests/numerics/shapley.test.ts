import fc from 'fast-check';
import { expect, it } from 'vitest';
import { shapley } from '../../src/numerics/shapley.js';
import { anyOf } from '../even.js';

// Textbook: the glove game. Players 0 and 1 own a left glove, player 2 a right one; a pair is worth 1: 1/6, 1/6, 2/3.
it('shares the glove game as published', () => {
  const values = shapley(3, (c) => ((c & 4) !== 0 && (c & 3) !== 0 ? 1 : 0));
  [1 / 6, 1 / 6, 2 / 3].forEach((share, k) => {
    expect(values[k]).toBeCloseTo(share, 12);
  });
});

// Littlechild S C, Owen G (1973) Management Science 20, 370–372, airport game: costs 1, 2, 3 give 1/3, 5/6, 11/6.
it('shares the airport game as published', () => {
  const cost = (c: number): number => ((c & 4) !== 0 ? 3 : (c & 2) !== 0 ? 2 : c & 1);
  [1 / 3, 5 / 6, 11 / 6].forEach((share, k) => {
    expect(shapley(3, cost)[k]).toBeCloseTo(share, 12);
  });
});

it('adds up, gives nothing to who adds nothing, and treats equals equally', () => {
  fc.assert(
    fc.property(fc.array(anyOf(-9, 9), { minLength: 32, maxLength: 32 }), (table) => {
      const game = (c: number): number => table[c & 15] ?? 0;
      const values = shapley(5, game);
      expect(values.reduce((s, v) => s + v, 0)).toBeCloseTo(game(31) - game(0), 9);
      expect(values[4]).toBeCloseTo(0, 9);
      const symmetric = (c: number): number => table[(c & 1) + ((c >> 1) & 1)] ?? 0;
      const [a = 0, b = 0] = shapley(2, symmetric);
      expect(a).toBeCloseTo(b, 9);
    }),
  );
});
