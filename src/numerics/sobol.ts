import { requireOneOf, requireWithin } from './require.js';
import { SOBOL_DIRECTIONS } from './sobol-directions.js';
import { mixedState } from './stream.js';

/** Largest number of dimensions. */
export const SOBOL_DIMENSIONS: number = SOBOL_DIRECTIONS.length;
/** Largest index of a point. */
export const SOBOL_LAST_INDEX: number = 2 ** 31 - 1;

/** Points in the unit cube, each computed from its index alone. */
export interface PointSet {
  /** Number of coordinates of a point. */
  readonly dimensions: number;
  /** Writes the point number `index`, counted from 0, into `out` and returns it. */
  readonly point: (index: number, out?: Float64Array) => Float64Array;
}

/**
 * How the points are randomised. `none`: the sequence as published, its first point the origin. `shift`: one random
 * number a dimension, added bit by bit, which keeps the spacing. `owen`: random swaps within every elementary
 * interval, which also breaks the patterns between dimensions and makes errors fall faster for smooth functions.
 */
export type SobolScramble = 'none' | 'shift' | 'owen';

/** Options of {@link sobol}. */
export interface SobolOptions {
  /** Default `none`. */
  readonly scramble?: SobolScramble;
  /** Seed of the scramble, a whole number; default 0. */
  readonly seed?: number;
}

/**
 * Sobol's sequence in Gray-code order, with 32 bits a coordinate. Take 2^k points, from a multiple of 2^k on. Scrambled
 * coordinates lie at the middle of their 2⁻³² cell, so they are never 0 or 1; unscrambled ones lie at its lower end,
 * as published.
 *
 * Sources: Sobol I M (1967) USSR Comput. Math. Math. Phys. 7(4), 86–112; Joe and Kuo (2008), see
 * sobol-directions.ts; Gray-code order: Antonov I A, Saleev V M (1979) ibid. 19(1), 252–256. Scrambles: Owen A B
 * (1995) in Monte Carlo and Quasi-Monte Carlo Methods, LNS 106, 299–317, by the hash of Burley B (2020) Practical
 * hash-based Owen scrambling, J. Comput. Graph. Tech. 9(4), 1–20.
 * @param dimensions - 1 to {@link SOBOL_DIMENSIONS}
 * @throws FairflightError `outside-range` for more dimensions or an index beyond {@link SOBOL_LAST_INDEX}
 */
export function sobol(dimensions: number, options: SobolOptions = {}): PointSet {
  requireWithin('dimensions', dimensions, 1, SOBOL_DIMENSIONS, '');
  const scramble = requireOneOf('scramble', options.scramble ?? 'none', ['none', 'shift', 'owen'] as const);
  const seed = options.seed ?? 0;
  const directions = Array.from({ length: dimensions }, (_, j) => directionNumbers(j));
  const keys = Array.from({ length: dimensions }, (_, j) => scrambleKey(seed, j));
  return {
    dimensions,
    point: (index, out = new Float64Array(dimensions)) => {
      requireIndex(index);
      const gray = index ^ (index >>> 1);
      for (let j = 0; j < dimensions; j++) {
        const v = directions[j]!;
        let bits = 0;
        for (let rest = gray; rest !== 0; rest &= rest - 1) bits ^= v[31 - Math.clz32(rest & -rest)]!;
        if (scramble === 'none') {
          out[j] = (bits >>> 0) * 2 ** -32;
        } else {
          const key = keys[j]!;
          const mixed = scramble === 'shift' ? bits ^ key : nestedScramble(bits, key);
          out[j] = ((mixed >>> 0) + 0.5) * 2 ** -32;
        }
      }
      return out;
    },
  };
}

/** What the scramble of one dimension is made by. @internal */
export function scrambleKey(seed: number, dimension: number): number {
  return mixedState(seed, dimension)[0];
}

/** The 32 direction numbers of one dimension, by the recurrence of Sobol's primitive polynomials. @internal */
export function directionNumbers(dimension: number): Int32Array {
  const [polynomial, initial] = SOBOL_DIRECTIONS[dimension]!;
  const v = new Int32Array(32);
  if (dimension === 0) {
    for (let k = 0; k < 32; k++) v[k] = 1 << (31 - k);
    return v;
  }
  const degree = initial.length;
  for (let k = 0; k < 32; k++) {
    if (k < degree) {
      v[k] = initial[k]! << (31 - k);
      continue;
    }
    let next = v[k - degree]! ^ (v[k - degree]! >>> degree);
    for (let i = 1; i < degree; i++) if ((polynomial >>> (degree - i)) & 1) next ^= v[k - i]!;
    v[k] = next;
  }
  return v;
}

/** Owen's nested uniform scramble: every bit is flipped by a hash of the bits above it. */
function nestedScramble(bits: number, key: number): number {
  let x = reverseBits(bits);
  x = (x + key) | 0;
  x ^= Math.imul(x, 0x6c50b47c);
  x ^= Math.imul(x, 0xb82f1e52);
  x ^= Math.imul(x, 0xc7afe638);
  x ^= Math.imul(x, 0x8d22f6e6);
  return reverseBits(x);
}

function reverseBits(bits: number): number {
  let x = bits;
  x = ((x >>> 1) & 0x55555555) | ((x & 0x55555555) << 1);
  x = ((x >>> 2) & 0x33333333) | ((x & 0x33333333) << 2);
  x = ((x >>> 4) & 0x0f0f0f0f) | ((x & 0x0f0f0f0f) << 4);
  x = ((x >>> 8) & 0x00ff00ff) | ((x & 0x00ff00ff) << 8);
  return (x >>> 16) | (x << 16);
}

function requireIndex(index: number): void {
  if (!(Number.isInteger(index) && index >= 0 && index <= SOBOL_LAST_INDEX)) {
    requireWithin(
      'index',
      Number.isInteger(index) ? index : Number.NaN,
      0,
      SOBOL_LAST_INDEX,
      '',
      'a whole number',
    );
  }
}
