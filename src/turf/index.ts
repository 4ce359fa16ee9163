export { rollingResistanceOfGreen } from './green-speed.js';
export { turfs } from './presets.js';
export type * from './run.js';
export { type LandingBall, type RunOptions, runOut } from './run-out.js';
export type * from './turf.js';
