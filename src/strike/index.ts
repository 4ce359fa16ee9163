export type { Delivery, Hand, StrikeOffset } from '../inputs/delivery.js';
export type * from './estimate.js';
export * from './locate.js';
export type { Prior } from './locate-model.js';
export {
  type BallReading,
  type ClubReading,
  defaultReadingErrors,
  type Reading,
  type ReadingErrors,
  type StrikeMeasurement,
} from './measurement.js';
export { type Strike, type StrikeOptions, strike } from './strike.js';
