export type { CloudOptions, ShotColumns } from './cloud.js';
export { type ConvergenceRow, type Dispersion, type DispersionSetup, disperse } from './disperse.js';
export {
  type ExpectedStrokes,
  type ExpectedStrokesOptions,
  expectedStrokes,
  type Skill,
} from './expected-strokes.js';
export {
  type BestSpeed,
  type BreakEven,
  type FasterOrStraighter,
  type FasterQuestion,
  fasterOrStraighter,
  type SpeedStep,
} from './faster-or-straighter.js';
export type { Fairway, GroundPoint, Hazard, Hole } from './hole.js';
export type { Ending } from './hole-strokes.js';
export type { DistanceDistribution, MonteCarlo, Share } from './monte-carlo.js';
export { type PublishedScatter, publishedScatter, publishedScatterSource } from './published-scatter.js';
export type { DensityGrid, GroundEllipse, GroundRegion, LandingRegion } from './region.js';
export type { ScalableSpread, ScatterLaw } from './scatter-law.js';
export type { Correlation, DeliverySd, LaunchSd, SdOf, Spread } from './spread.js';
export { type Lie, strokesBaselineSource } from './strokes-baseline.js';
export { type StrokesOnHole, type StrokesOnHoleOptions, strokesOnHole } from './strokes-on-hole.js';
