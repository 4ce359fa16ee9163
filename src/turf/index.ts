export type * from './run.js';
export type * from './turf.js';
