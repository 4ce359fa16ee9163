export { fewValuesStretch } from '../numerics/bootstrap.js';
export {
  type AttributionOptions,
  attributeChange,
  type ChangeAttribution,
  type DistanceChange,
  type SplitChange,
} from './attribution.js';
export { calibrate } from './calibrate.js';
export { defaultFlightReadingErrors, type FlightReadingErrors } from './calibrate-flight.js';
export type * from './calibration.js';
export { launchOf } from './launch-of.js';
export type { SessionRow } from './log-sessions.js';
export type * from './measured-shot.js';
export type { ChangeFactor } from './mixtures.js';
export type { OddReading, OddShot } from './odd-shots.js';
export type { QuantityName, ShotQuantities } from './quantities.js';
export type { ScatterChange } from './scatter-change.js';
export {
  type BandScatter,
  type ScatterTrend,
  type ScatterTrendOptions,
  scatterTrend,
} from './scatter-trend.js';
export type * from './session-summary.js';
export type { Banding, SpeedBand } from './speed-bands.js';
export { type SceneEffect, type StandardisedShot, standardise } from './standardise.js';
export { type SessionOptions, summariseSession } from './summarise.js';
export { trainingCautions } from './training-cautions.js';
export {
  judgeTraining,
  type LogChange,
  type TrainingOptions,
  type TrainingReport,
} from './training-log.js';
