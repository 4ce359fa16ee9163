export type * from './measured-shot.js';
export type { OddReading, OddShot } from './odd-shots.js';
export type { QuantityName, ShotQuantities } from './quantities.js';
export type { Banding, SpeedBand } from './speed-bands.js';
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
