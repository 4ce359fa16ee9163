export type { Delivery, PlayerHand, StrikeOffset } from '../inputs/delivery.js';
export type { NormalPrior } from '../inputs/prior.js';
export type {
  BallReading,
  ClubReading,
  ReadingErrors,
  StrikeMeasurement,
  StrikeReading,
} from '../inputs/readings.js';
export type * from './estimate.js';
export { type LocateOptions, locateStrike } from './locate.js';
export { defaultReadingErrors } from './measurement.js';
export { type Strike, type StrikeOptions, strike } from './strike.js';
export type { StrikePriors } from './strike-priors.js';
