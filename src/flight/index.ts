export type { BatchKernel } from './engine/batch.js';
export type * from './flight.js';
export { flightDefaults, fly } from './fly.js';
export {
  type ConditionColumns,
  ENDED,
  type FlightColumns,
  type FlyManyOptions,
  flyMany,
  type LaunchColumns,
} from './fly-many.js';
export { MAX_BALL_SPEED, MAX_SPIN_RATE, STANDARD_GRAVITY } from './problem.js';
