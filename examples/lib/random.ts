/** Uniform numbers in [0, 1) from a 32-bit counter and the finaliser of MurmurHash3 (Appleby, public domain; from memory). */
export function randomStream(seed: number): () => number {
  let counter = seed;
  return () => {
    counter = (counter + 0x9e3779b9) | 0;
    let x = counter;
    x = Math.imul(x ^ (x >>> 16), 0x85ebca6b);
    x = Math.imul(x ^ (x >>> 13), 0xc2b2ae35);
    return ((x ^ (x >>> 16)) >>> 0) / 2 ** 32;
  };
}
