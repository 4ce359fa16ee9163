import { describe, expect, it } from 'vitest';
import { checksumOf } from '../../src/numerics/checksum.js';

/** Numbers whose bytes are the letters of a text of eight. */
function lettersOf(text: string): Float64Array {
  return new Float64Array(new Uint8Array(Buffer.from(text, 'latin1')).buffer);
}

describe('the checksum of numbers', () => {
  it('is that of FNV-1a, 64 bits', () => {
    // The offset basis, for nothing at all: draft-eastlake-fnv. The others from the definition, in whole numbers.
    expect(checksumOf([])).toBe('cbf29ce484222325');
    for (const text of ['abcdefgh', 'fairflig', '\0\0\0\0\0\0\0\0', '\u00ff\u00fe\u0080\u007f1234']) {
      let hash = 0xcbf29ce484222325n;
      for (const byte of Buffer.from(text, 'latin1')) {
        hash = ((hash ^ BigInt(byte)) * 0x100000001b3n) & 0xffffffffffffffffn;
      }
      expect(checksumOf([lettersOf(text)])).toBe(hash.toString(16).padStart(16, '0'));
    }
  });

  it('tells −0 from 0 and the last digit from the next', () => {
    const of = (...numbers: number[]): string => checksumOf([Float64Array.from(numbers)]);
    expect(of(1, 0)).not.toBe(of(1, -0));
    expect(of(1)).not.toBe(of(1 + Number.EPSILON));
    expect(of(1, 2)).not.toBe(of(2, 1));
  });
});
