import fc from 'fast-check';

/** Steps that a range is cut into; both its ends can be drawn. */
const STEPS = 1_000_000;

/**
 * Numbers even over a range, for speeds, angles, winds and whatever else has a size. fc.double is even over the doubles,
 * of which most lie next to 0, so that a wind drawn by it is nearly always a calm.
 */
export const even = (min: number, max: number): fc.Arbitrary<number> =>
  fc.integer({ min: 0, max: STEPS }).map((i) => min * (1 - i / STEPS) + max * (i / STEPS));

/**
 * Numbers of a range that are mostly even over it and now and then even over its doubles (5e-324, −0, the ends), for
 * tests that nothing whatever breaks the code.
 */
export const anyOf = (min: number, max: number): fc.Arbitrary<number> =>
  fc.oneof(
    { weight: 3, arbitrary: even(min, max) },
    { weight: 1, arbitrary: fc.double({ min, max, noNaN: true }) },
  );
