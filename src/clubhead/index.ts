export type * from './clubhead.js';
export * from './presets.js';
