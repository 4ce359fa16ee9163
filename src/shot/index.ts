export type * from './shot.js';
