export type { LandingBall } from '../inputs/landing.js';
export { type PathOptions, type PathSamples, pathOf, stateAt } from './path.js';
export { playShot } from './play-shot.js';
export { type RunOptions, runOut } from './run-out.js';
export type { Shot } from './shot.js';
export type { ShotOptions } from './shot-options.js';
