export {
  type AttributionOptions,
  attributeChange,
  type ChangeAttribution,
  type ChangeFactor,
  type DistanceChange,
  type SplitChange,
} from './attribution.js';
export type * from './measured-shot.js';
export type { OddReading, OddShot } from './odd-shots.js';
export type { QuantityName, ShotQuantities } from './quantities.js';
export {
  type BandScatter,
  type ScatterTrend,
  type ScatterTrendOptions,
  scatterTrend,
} from './scatter-trend.js';
export type { Banding, SpeedBand } from './speed-bands.js';
export { type SceneEffect, type StandardisedShot, standardise } from './standardise.js';
export {
  type BandSummary,
  type Estimate,
  type Estimates,
  type Repeatability,
  type SessionOptions,
  type SessionSummary,
  type ShotsToShow,
  summariseSession,
  type Trend,
} from './summarise.js';
