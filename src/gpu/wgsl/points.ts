import type { SobolScramble } from '../../numerics/sobol.js';
import { directionNumbers, scrambleKey } from '../../numerics/sobol.js';

/** Words of a dimension in the numbers of a kernel: its key, then its direction numbers. */
const WORDS = 33;

/** The points of `sobol`, bit for bit, up to the rounding of a coordinate to single precision. @internal */
export function pointsText(scramble: SobolScramble): string {
  const value = {
    none: 'f32(bits) * 2.3283064e-10',
    shift: '(f32(bits ^ key) + 0.5) * 2.3283064e-10',
    owen: '(f32(nestedScramble(bits, key)) + 0.5) * 2.3283064e-10',
  };
  return `
fn nestedScramble(bits: u32, key: u32) -> u32 {
  var x = reverseBits(bits) + key;
  x ^= x * 0x6c50b47cu;
  x ^= x * 0xb82f1e52u;
  x ^= x * 0xc7afe638u;
  x ^= x * 0x8d22f6e6u;
  return reverseBits(x);
}

fn coordinate(index: u32, dimension: u32) -> f32 {
  let at = ${WORDS}u * dimension;
  let key = numbers[at];
  var bits = 0u;
  for (var rest = index ^ (index >> 1u); rest != 0u; rest &= rest - 1u) {
    bits ^= numbers[at + 1u + firstTrailingBit(rest)];
  }
  return ${value[scramble]};
}
`;
}

/** What that reads of `numbers`. @internal */
export function pointWords(dimensions: number, seed: number): Uint32Array {
  const words = new Uint32Array(WORDS * dimensions);
  for (let j = 0; j < dimensions; j++) {
    words[WORDS * j] = scrambleKey(seed, j);
    words.set(directionNumbers(j), WORDS * j + 1);
  }
  return words;
}
