export { playShot } from './play-shot.js';
export type * from './shot.js';
