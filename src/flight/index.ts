export type * from './flight.js';
export { flightDefaults, fly } from './fly.js';
export { MAX_BALL_SPEED, MAX_SPIN_RATE, STANDARD_GRAVITY } from './problem.js';
export { pathOf, stateAt } from './track.js';
