export type { Delivery, Hand, StrikeOffset } from './delivery.js';
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
export * from './strike.js';
