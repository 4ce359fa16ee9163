export { type PathOptions, type PathSamples, pathOf, stateAt } from './path.js';
export { playShot } from './play-shot.js';
export type * from './shot.js';
