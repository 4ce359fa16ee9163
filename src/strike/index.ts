export type { Delivery, Hand, StrikeOffset } from './delivery.js';
export * from './locate.js';
export type { Identifiability } from './locate-findings.js';
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
