import { FairflightError, requireRecord, requireWithin } from '../errors.js';
import type { Angle, AngularSpeed, Speed } from '../units/index.js';

/**
 * What a measuring device says about one impact: readings of the delivery and of the launch. Every field is optional;
 * other fields of a measured shot (carry, apex …) may be present and play no part. Directions are in the world frame.
 */
export interface StrikeMeasurement {
  /** Speed of the clubhead [m/s]. */
  readonly clubSpeed?: Speed;
  /** Vertical direction of head travel [rad], + up. */
  readonly attackAngle?: Angle;
  /** Horizontal direction of head travel [rad], + right. */
  readonly clubPath?: Angle;
  /** Horizontal direction the face centre points [rad], + right. */
  readonly faceAngle?: Angle;
  /** Vertical direction the face centre points [rad], + up. */
  readonly dynamicLoft?: Angle;
  /** Ball speed [m/s]. */
  readonly ballSpeed?: Speed;
  /** Vertical launch angle [rad], + up. */
  readonly launchAngle?: Angle;
  /** Horizontal launch direction [rad], + right. */
  readonly launchDirection?: Angle;
  /** Spin rate [rad/s]. */
  readonly spinRate?: AngularSpeed;
  /** Tilt of the spin axis [rad], + right. */
  readonly spinAxisTilt?: Angle;
}

/** Readings of the ball. */
export type BallReading = 'ballSpeed' | 'launchAngle' | 'launchDirection' | 'spinRate' | 'spinAxisTilt';
/** Readings of the club. */
export type ClubReading = 'clubSpeed' | 'attackAngle' | 'clubPath' | 'faceAngle' | 'dynamicLoft';
/** Any reading of an impact. */
export type Reading = ClubReading | BallReading;

export const BALL_READINGS: readonly BallReading[] = [
  'ballSpeed',
  'launchAngle',
  'launchDirection',
  'spinRate',
  'spinAxisTilt',
];
export const CLUB_READINGS: readonly ClubReading[] = [
  'clubSpeed',
  'attackAngle',
  'clubPath',
  'faceAngle',
  'dynamicLoft',
];

/**
 * Standard deviation of each reading: one shot against the truth. Speeds and spin as a share of the reading, angles in
 * radians.
 */
export interface ReadingErrors {
  /** Club speed, relative. */
  readonly clubSpeed: number;
  /** Attack angle [rad]. */
  readonly attackAngle: Angle;
  /** Club path [rad]. */
  readonly clubPath: Angle;
  /** Face angle [rad]. */
  readonly faceAngle: Angle;
  /** Dynamic loft [rad]. */
  readonly dynamicLoft: Angle;
  /** Ball speed, relative. */
  readonly ballSpeed: number;
  /** Launch angle [rad]. */
  readonly launchAngle: Angle;
  /** Launch direction [rad]. */
  readonly launchDirection: Angle;
  /** Spin rate, relative. */
  readonly spinRate: number;
  /** Spin-axis tilt [rad]. */
  readonly spinAxisTilt: Angle;
}

const DEGREE = Math.PI / 180;

/**
 * Reading errors assumed when none are given: club speed 1.5 % (two definitions of it differ by that much), ball speed
 * 0.5 %, spin 3 %, attack, path, face and loft 1°, launch angle and direction 0.3°, tilt 2°. Engineering assumptions,
 * no published values; replace them with your device's.
 */
export const defaultReadingErrors: ReadingErrors = {
  clubSpeed: 0.015,
  attackAngle: (1 * DEGREE) as Angle,
  clubPath: (1 * DEGREE) as Angle,
  faceAngle: (1 * DEGREE) as Angle,
  dynamicLoft: (1 * DEGREE) as Angle,
  ballSpeed: 0.005,
  launchAngle: (0.3 * DEGREE) as Angle,
  launchDirection: (0.3 * DEGREE) as Angle,
  spinRate: 0.03,
  spinAxisTilt: (2 * DEGREE) as Angle,
};

const RANGES: Readonly<Record<Reading, readonly [number, number, string, string]>> = {
  clubSpeed: [1, 90, 'm/s', 'if that was mph, use mph(100)'],
  attackAngle: [-0.6, 0.6, 'rad', 'angles are in radians: use degrees(2)'],
  clubPath: [-0.8, 0.8, 'rad', 'angles are in radians: use degrees(2)'],
  faceAngle: [-0.8, 0.8, 'rad', 'angles are in radians: use degrees(2)'],
  dynamicLoft: [-0.4, 1.4, 'rad', 'angles are in radians: use degrees(12)'],
  ballSpeed: [1, 110, 'm/s', 'if that was mph, use mph(150)'],
  launchAngle: [-1, 1.4, 'rad', 'angles are in radians: use degrees(12)'],
  launchDirection: [-1, 1, 'rad', 'angles are in radians: use degrees(2)'],
  spinRate: [0, 2100, 'rad/s', 'if that was rpm, use rpm(2500)'],
  spinAxisTilt: [-Math.PI, Math.PI, 'rad', 'angles are in radians: use degrees(5)'],
};

/** @throws {@link FairflightError} naming the reading. @internal */
export function checkMeasurement(measured: StrikeMeasurement, field = 'measured'): void {
  if (typeof measured !== 'object' || measured === null || Array.isArray(measured)) {
    throw new FairflightError('invalid-input', `${field} must be an object of readings`, {
      field,
      value: measured,
    });
  }
  for (const [reading, [minimum, maximum, unit, hint]] of Object.entries(RANGES)) {
    const value = measured[reading as Reading];
    if (value !== undefined) requireWithin(`${field}.${reading}`, value, minimum, maximum, unit, hint);
  }
}

/** Fills in and checks reading errors. @throws {@link FairflightError} @internal */
export function resolveReadingErrors(given: Partial<ReadingErrors>, field: string): ReadingErrors {
  requireRecord(field, given, Object.keys(defaultReadingErrors));
  const errors = { ...defaultReadingErrors, ...given };
  for (const [reading, value] of Object.entries(errors)) {
    const relative = reading === 'clubSpeed' || reading === 'ballSpeed' || reading === 'spinRate';
    if (relative) requireWithin(`${field}.${reading}`, value, 1e-5, 0.5, '', 'a share: 0.015 for 1.5 %');
    else requireWithin(`${field}.${reading}`, value, 1e-5, 1, 'rad', 'use degrees(1)');
  }
  return errors;
}
