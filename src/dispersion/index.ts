/**
 * Shots that scatter: where they end, and what that is worth in strokes.
 * @module
 */
export type { BestSpeed } from './best-speed.js';
export type { BreakEven, BreakEvenFactor } from './break-even.js';
export type { CloudOptions, CloudWarning, FailedShot, ShotColumns } from './cloud.js';
export {
  type ConvergenceRow,
  type Dispersion,
  type DispersionOptions,
  disperse,
  type LateralLimits,
} from './disperse.js';
export {
  type ExpectedStrokes,
  type ExpectedStrokesOptions,
  expectedStrokes,
  type Golfer,
  type GolferSkill,
  type StrokesBasis,
} from './expected-strokes.js';
export {
  type FasterOrStraighter,
  fasterOrStraighter,
  type SpeedStep,
} from './faster-or-straighter.js';
export type { FasterOptions, FasterQuestion } from './faster-question.js';
export type {
  Bend,
  Fairway,
  FairwayArea,
  FairwayStrip,
  Hazard,
  HazardArea,
  HazardKind,
  HazardStrip,
  Hole,
} from './hole.js';
export type { DistanceDistribution, MonteCarlo, ShareOfShots } from './monte-carlo.js';
export type { PairedDifference } from './paired-difference.js';
export type { GroundPoint, Polygon } from './polygon.js';
export { type PublishedScatter, publishedScatter } from './published-scatter.js';
export type { DensityGrid, GroundEllipse, GroundRegion, LandingRegion } from './region.js';
export type { ScatterLaw } from './scatter-law.js';
export type { Scattered } from './scattered.js';
export type { ShotLie } from './shot-lie.js';
export { type ClearAnswer, type ClearOptions, type ClearQuestion, speedToClear } from './speed-to-clear.js';
export type { Correlation, DeliverySd, LaunchSd, OwnSpread, ScalableSpread, SdOf, Spread } from './spread.js';
export type { BallLie } from './strokes-baseline.js';
export {
  type HoleQuestion,
  type StrokesOnHole,
  type StrokesOnHoleOptions,
  strokesOnHole,
} from './strokes-on-hole.js';
