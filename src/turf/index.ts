export type { Turf } from '../inputs/turf.js';
export { rollingResistanceOfGreen } from './green-speed.js';
export { type TurfName, turfs } from './presets.js';
export type * from './run.js';
