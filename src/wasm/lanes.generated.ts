// Written by simd-source.ts (npm run generate); edit that, not this.
// biome-ignore-all lint: generated
// biome-ignore-all format: generated

/** Bytes of a register. */
export const REGISTER: usize = 4864;
/** First of the 36 lane variables that are the control flow's own. */
export const CONTROL: usize = 39;
// Lane variables the step reads and writes, each two numbers, one a lane.
export const A_: usize = 0;
export const H: usize = 7;
export const K: usize = 8;
export const G2: usize = 12;
export const G3: usize = 13;
export const DRAG: usize = 14;
export const LIFT: usize = 15;
export const DECAY: usize = 16;
export const RINV: usize = 17;
export const ACROSS: usize = 18;
export const PER_TOLERANCE: usize = 19;
export const NEW: usize = 20;
export const KN: usize = 27;
export const ERROR: usize = 31;
export const WANTED: usize = 32;
export const LOW_X: usize = 33;
export const HIGH_X: usize = 34;
export const LOW_Z: usize = 35;
export const HIGH_Z: usize = 36;
export const END_X: usize = 37;
export const END_Z: usize = 38;
