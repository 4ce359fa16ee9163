const PRIME_LOW = 0x1b3;

/**
 * Checksum of numbers: FNV-1a over their bytes, 64 bits, as sixteen hexadecimal digits. It tells numbers that differ by
 * mistake; it is no protection against forgery.
 *
 * Source: Fowler, Noll and Vo; IETF draft-eastlake-fnv (offset basis cbf29ce484222325, prime 2⁴⁰ + 1b3 hexadecimal).
 */
export function checksumOf(columns: readonly Float64Array[]): string {
  let high = 0xcbf29ce4;
  let low = 0x84222325;
  for (const column of columns) {
    const bytes = new Uint8Array(column.buffer, column.byteOffset, column.byteLength);
    for (let i = 0; i < bytes.length; i++) {
      // The hash times the prime, modulo 2⁶⁴, in two halves: the product with 1b3 stays below 2⁵³.
      const mixed = (low ^ (bytes[i] as number)) >>> 0;
      const product = mixed * PRIME_LOW;
      high = (Math.imul(high, PRIME_LOW) + Math.floor(product / 2 ** 32) + (mixed << 8)) >>> 0;
      low = product >>> 0;
    }
  }
  return high.toString(16).padStart(8, '0') + low.toString(16).padStart(8, '0');
}
