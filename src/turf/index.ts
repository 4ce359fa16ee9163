export type { BiberBounce, PennerBounce, Turf, TurfBounce } from '../inputs/turf.js';
export { rollingResistanceOfGreen } from './green-speed.js';
export { turfs } from './presets.js';
export type * from './run.js';
export type { TurfName } from './turf-name.js';
