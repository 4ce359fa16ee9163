import { requireWithin } from './require.js';
import type { PointSet } from './sobol.js';
import { mixedState, stream } from './stream.js';

/**
 * A Latin hypercube of `count` points: in every dimension each of the `count` equal slices holds exactly one point,
 * at a random place within its slice. Point number i is computed from i alone, so that any part of the design can be
 * made anywhere.
 *
 * Source: McKay M D, Beckman R J, Conover W J (1979) Technometrics 21, 239–245. The random permutations are the
 * keyed hash of Kensler A (2013) Correlated multi-jittered sampling, Pixar technical memo 13-01.
 * @param count - points, 1 to 2³⁰
 * @param dimensions - 1 to 1000
 * @param seed - whole number; default 0
 * @throws FairflightError `outside-range` outside these, or for an index outside 0 … count − 1
 */
export function latinHypercube(count: number, dimensions: number, seed = 0): PointSet {
  requireWithin('count', count, 1, 2 ** 30, '');
  requireWithin('dimensions', dimensions, 1, 1000, '');
  const keys = Array.from({ length: dimensions }, (_, j) => mixedState(seed, 2 ** 52 + j)[0]);
  return {
    dimensions,
    point: (index, out = new Float64Array(dimensions)) => {
      requireWithin(
        'index',
        Number.isInteger(index) ? index : Number.NaN,
        0,
        count - 1,
        '',
        'a whole number',
      );
      const jitter = stream(seed, index);
      for (let j = 0; j < dimensions; j++) {
        out[j] = (permute(index, count, keys[j]!) + jitter.uniform()) / count;
      }
      return out;
    },
  };
}

/** Where a keyed permutation of 0 … count − 1 sends `index`. */
function permute(index: number, count: number, key: number): number {
  let mask = count - 1;
  for (let shift = 1; shift < 32; shift *= 2) mask |= mask >>> shift;
  let i = index;
  do {
    i = Math.imul(i ^ key, 0xe170893d);
    i ^= key >>> 16;
    i ^= (i & mask) >>> 4;
    i = Math.imul(i ^ (key >>> 8), 0x0929eb3f);
    i ^= key >>> 23;
    i ^= (i & mask) >>> 1;
    i = Math.imul(i, 1 | (key >>> 27));
    i = Math.imul(i, 0x6935fa69);
    i ^= (i & mask) >>> 11;
    i = Math.imul(i, 0x74dcb303);
    i ^= (i & mask) >>> 2;
    i = Math.imul(i, 0x9e501cc3);
    i ^= (i & mask) >>> 2;
    i = Math.imul(i, 0xc860a3df) & mask;
    i ^= i >>> 5;
  } while (i >= count);
  return (i + (key >>> 0)) % count;
}
