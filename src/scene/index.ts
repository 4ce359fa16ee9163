export type { Ground } from '../inputs/ground.js';
export type { Launch } from '../inputs/launch.js';
export type { Scene } from './scene.js';
