import type { Angle } from '../units/index.js';
import { DEGREES, PERCENT } from '../units/unit.js';
import { type Declared, type QuantityField, quantity } from './field.js';
import { frozen } from './frozen.js';
import type { MeasuredShot } from './measured-shot.js';

/** Readings of the ball. */
export type BallReading = 'ballSpeed' | 'launchAngle' | 'launchDirection' | 'spinRate' | 'spinAxisTilt';
/** Readings of the club. */
export type ClubReading = 'clubSpeed' | 'attackAngle' | 'clubPath' | 'faceAngle' | 'dynamicLoft';
/** Any reading of an impact. */
export type StrikeReading = ClubReading | BallReading;

/** @internal */
export const BALL_READINGS: readonly BallReading[] = [
  'ballSpeed',
  'launchAngle',
  'launchDirection',
  'spinRate',
  'spinAxisTilt',
];
/** @internal */
export const CLUB_READINGS: readonly ClubReading[] = [
  'clubSpeed',
  'attackAngle',
  'clubPath',
  'faceAngle',
  'dynamicLoft',
];

/**
 * What a measuring device says about one impact: readings of the delivery and of the launch, each optional. Where one is
 * asked for, the other fields of a measured shot (carry, apex …) may be present and play no part.
 */
export type StrikeMeasurement = Pick<MeasuredShot, StrikeReading | 'hand'>;

/**
 * Standard deviation of each reading: one shot against the truth. Speeds and spin as a share of the reading, angles in
 * radians.
 */
export interface ReadingErrors {
  /** Club speed, as a share, 1e-5 to 0.5. */
  readonly clubSpeed: number;
  /** Attack angle [rad], 1e-5 to 1. */
  readonly attackAngle: Angle;
  /** Club path [rad], 1e-5 to 1. */
  readonly clubPath: Angle;
  /** Face angle [rad], 1e-5 to 1. */
  readonly faceAngle: Angle;
  /** Dynamic loft [rad], 1e-5 to 1. */
  readonly dynamicLoft: Angle;
  /** Ball speed, as a share, 1e-5 to 0.5. */
  readonly ballSpeed: number;
  /** Launch angle [rad], 1e-5 to 1. */
  readonly launchAngle: Angle;
  /** Launch direction [rad], 1e-5 to 1. */
  readonly launchDirection: Angle;
  /** Spin rate, as a share, 1e-5 to 0.5. */
  readonly spinRate: number;
  /** Spin axis tilt [rad], 1e-5 to 1. */
  readonly spinAxisTilt: Angle;
}

/** Standard deviations of the readings of a flight. */
export interface FlightReadingErrors {
  /** Carry, as a share, 1e-5 to 0.5. */
  readonly carry: number;
  /** Apex, as a share, 1e-5 to 0.5. */
  readonly apex: number;
  /** Descent angle [rad], 1e-5 to 1. */
  readonly descentAngle: Angle;
}

const share = (example: number, of: string): QuantityField<''> =>
  quantity(PERCENT, 1e-5, 0.5, example, `error of ${of}`);
const angle = (example: number, of: string): QuantityField<'rad'> =>
  quantity(DEGREES, 1e-5, 1, example, `error of ${of}`);

/** Declaration of {@link ReadingErrors}. @internal */
export const readingErrorFields: Declared<ReadingErrors> = /* @__PURE__ */ frozen(() => ({
  clubSpeed: share(0.015, 'club speed'),
  attackAngle: angle(0.017, 'attack angle'),
  clubPath: angle(0.017, 'club path'),
  faceAngle: angle(0.017, 'face angle'),
  dynamicLoft: angle(0.017, 'dynamic loft'),
  ballSpeed: share(0.005, 'ball speed'),
  launchAngle: angle(0.005, 'launch angle'),
  launchDirection: angle(0.005, 'launch direction'),
  spinRate: share(0.03, 'spin rate'),
  spinAxisTilt: angle(0.035, 'spin axis tilt'),
}));

/** Readings of a flight. @internal */
export type FlightReading = keyof FlightReadingErrors;

/** Declaration of {@link FlightReadingErrors}. @internal */
export const flightReadingErrorFields: Declared<FlightReadingErrors> = /* @__PURE__ */ frozen(() => ({
  carry: share(0.015, 'carry'),
  apex: share(0.03, 'apex'),
  descentAngle: angle(0.017, 'descent angle'),
}));

/** Readings of a flight, in the order of the vectors that a calibration fits. @internal */
export const FLIGHT_READINGS: readonly FlightReading[] = /* @__PURE__ */ frozen(
  () => Object.keys(flightReadingErrorFields) as FlightReading[],
);
