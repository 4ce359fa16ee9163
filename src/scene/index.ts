export type * from './ground.js';
export type * from './launch.js';
export type * from './scene.js';
