export type { Ball } from '../inputs/ball.js';
export { type BallName, balls } from './ball.js';
