/**
 * A player's measured shots: sessions, calibration, training logs, and where on the face the shots were struck.
 * @module
 */
export type { MeasuredShot } from '../inputs/measured-shot.js';
export type { FlightReadingErrors } from '../inputs/readings.js';
export {
  type DeliveredLoft,
  type InferOptions,
  inferDynamicLoft,
  type MeasuredLaunch,
} from '../optimum/index.js';
export {
  type FaceMap,
  type FaceMapOptions,
  type FaceMove,
  faceMap,
  judgePattern,
  type PatternReport,
  type StrikePattern,
  strikePattern,
} from '../sensitivity/index.js';
export {
  attributeChange,
  type ChangeAttribution,
  type DistanceChange,
  type SplitChange,
} from './attribution.js';
export type { AttributionOptions, GroupConditions, ShotGroups } from './attribution-options.js';
export { calibrate } from './calibrate.js';
export { defaultFlightReadingErrors } from './calibrate-flight.js';
export type * from './calibration.js';
export type { CalibrationOptions, CalibrationPriors } from './calibration-options.js';
export type { CarryOver } from './carry-over.js';
export { type ChangeElsewhere, changeElsewhere, type ModelledChange } from './change-elsewhere.js';
export type * from './change-ranking.js';
export { fewValuesStretch } from './few-values.js';
export {
  type GainsToShow,
  type GainsToShowOptions,
  type GainToShow,
  gainsToShow,
} from './gains-to-show.js';
export { type LaunchOrMissing, launchOf } from './launch-of.js';
export type { SessionRow } from './log-sessions.js';
export type { ChangeFactor } from './mixtures.js';
export type { OddReading, OddShot } from './odd-shots.js';
export type { QuantityName, ShotQuantities } from './quantities.js';
export { rankChanges } from './rank-changes.js';
export type { RankOptions } from './rank-options.js';
export type { ScatterChange } from './scatter-change.js';
export {
  type BandScatter,
  type ScatterTrend,
  type ScatterTrendOptions,
  scatterTrend,
} from './scatter-trend.js';
export type * from './session-summary.js';
export type { Banding, SpeedBand } from './speed-bands.js';
export { type SceneEffect, type StandardisedShot, standardise, type TwoScenes } from './standardise.js';
export { type SessionOptions, summariseSession } from './summarise.js';
export type { Tails } from './tails.js';
export { trainingCautions } from './training-cautions.js';
export { judgeTraining, type TrainingOptions } from './training-log.js';
export type { LogChange, TrainingReport } from './training-report.js';
