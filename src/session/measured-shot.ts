import type { Angle, AngularSpeed, Duration, Length, Speed } from '../units/index.js';

/**
 * One shot as a measuring device reports it. Every field is optional: a device measures what it can. Directions are
 * in the world frame for either hand: + is right of the target line.
 */
export interface MeasuredShot {
  /** Speed of the clubhead just before contact [m/s]. */
  readonly clubSpeed?: Speed;
  /** Vertical direction of head travel [rad], + up. */
  readonly attackAngle?: Angle;
  /** Horizontal direction of head travel [rad], + right. */
  readonly clubPath?: Angle;
  /** Horizontal direction the face points [rad], + right. */
  readonly faceAngle?: Angle;
  /** Vertical direction the face points at impact [rad], + up. */
  readonly dynamicLoft?: Angle;
  /** Loft the club was built or set with [rad]. */
  readonly nominalLoft?: Angle;
  /** Speed of the ball just after separation [m/s]. */
  readonly ballSpeed?: Speed;
  /** Vertical launch angle [rad], + up. */
  readonly launchAngle?: Angle;
  /** Horizontal launch direction [rad], + right. */
  readonly launchDirection?: Angle;
  /** Total spin rate [rad/s]. */
  readonly spinRate?: AngularSpeed;
  /** Tilt of the spin axis [rad], + right (curves right). */
  readonly spinAxisTilt?: Angle;
  /** Horizontal distance to the first contact with the ground [m]. */
  readonly carry?: Length;
  /** Horizontal distance to rest [m]. */
  readonly total?: Length;
  /** Greatest height above the start [m]. */
  readonly apex?: Length;
  /** Steepness of the path below the horizontal at landing [rad]. */
  readonly descentAngle?: Angle;
  /** Sideways position where the ball came down [m], + right of the target line. */
  readonly side?: Length;
  /** Sideways distance of the landing point from the initial launch line [m], + right. */
  readonly curve?: Length;
  /** Time in the air [s]. */
  readonly hangTime?: Duration;
  /** Name of the group the shot belongs to, for example a speed band. */
  readonly label?: string;
  /** Name of the session. */
  readonly session?: string;
  /** Day of the shot, as written in the source. */
  readonly date?: string;
  /** Club, as written in the source. */
  readonly club?: string;
  /** Line of the source the shot was read from, counted from 1. */
  readonly line?: number;
}
