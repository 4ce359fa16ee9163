import { xoroshiro128plusFromState } from 'pure-rand/generator/xoroshiro128plus';
import { normalQuantile } from './distributions.js';
import { requireWithin } from './require.js';

/** A source of random numbers that belongs to one seed and one index. */
export interface Stream {
  /** Uniform on the open interval (0, 1), in steps of 2⁻⁵³. */
  readonly uniform: () => number;
  /** Standard normal: the inverse distribution function of one uniform number. */
  readonly normal: () => number;
  /**
   * Student's t with `dof` > 0 degrees of freedom: the polar method of Bailey R W (1994) Math. Comput. 62, 779–781.
   * Its variance is dof/(dof − 2).
   */
  readonly studentT: (dof: number) => number;
  /** Uniform on the integers 0 … n − 1. */
  readonly integer: (n: number) => number;
}

/**
 * The stream number `index` of `seed`: the same two numbers always give the same stream, so that draw number one
 * million can be repeated without the ones before it, in any order and on any thread.
 *
 * Seed and index fill the 128-bit state through eight ChaCha quarter rounds (Bernstein D J (2008) ChaCha, a variant
 * of Salsa20), a bijection, so two pairs never share a state. Generator: xoroshiro128+ (Blackman D, Vigna S (2021)
 * ACM Trans. Math. Softw. 47, 36).
 * @param seed - whole number, 0 to 2⁵³ − 1
 * @param index - whole number, 0 to 2⁵³ − 1
 * @throws FairflightError `outside-range` outside these
 */
export function stream(seed: number, index = 0): Stream {
  const generator = xoroshiro128plusFromState(mixedState(seed, index));
  const uniform = (): number =>
    ((generator.next() >>> 5) * 0x4000000 + (generator.next() >>> 6) + 0.5) * 2 ** -53;
  return {
    uniform,
    normal: () => normalQuantile(uniform()),
    studentT: (dof) => {
      for (;;) {
        const u = 2 * uniform() - 1;
        const v = 2 * uniform() - 1;
        const w = u * u + v * v;
        if (w > 0 && w <= 1) return u * Math.sqrt((dof * (w ** (-2 / dof) - 1)) / w);
      }
    },
    integer: (n) => Math.floor(uniform() * n),
  };
}

/** Four well-mixed 32-bit words from a seed and an index. */
export function mixedState(seed: number, index: number): [number, number, number, number] {
  const s = requireWhole('seed', seed);
  const i = requireWhole('index', index);
  let a = (s | 0) ^ 0x61707865;
  let b = ((s / 0x100000000) | 0) ^ 0x3320646e;
  let c = (i | 0) ^ 0x79622d32;
  let d = ((i / 0x100000000) | 0) ^ 0x6b206574;
  for (let round = 0; round < 8; round++) {
    a = (a + b) | 0;
    d = rotate(d ^ a, 16);
    c = (c + d) | 0;
    b = rotate(b ^ c, 12);
    a = (a + b) | 0;
    d = rotate(d ^ a, 8);
    c = (c + d) | 0;
    b = rotate(b ^ c, 7);
  }
  // From the state of all zeros the generator would give nothing but zeros.
  return (a | b | c | d) === 0 ? [1, 0, 0, 0] : [a, b, c, d];
}

function rotate(x: number, bits: number): number {
  return (x << bits) | (x >>> (32 - bits));
}

function requireWhole(field: string, value: number): number {
  requireWithin(field, value, 0, Number.MAX_SAFE_INTEGER, '', 'a whole number');
  return Math.floor(value) === value
    ? value
    : requireWithin(field, Number.NaN, 0, Number.MAX_SAFE_INTEGER, '');
}
