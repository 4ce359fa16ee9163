import type { Angle, AngularSpeed, Duration, Length, Speed } from '../units/index.js';
import { DEGREES, FEET, SECONDS, YARDS } from '../units/unit.js';
import { clubheadFields } from './clubhead.js';
import { deliveryFields, type PlayerHand } from './delivery.js';
import { count, type Declared, optional, quantity, record, text } from './field.js';
import { frozen } from './frozen.js';
import { launchFields } from './launch.js';
import { readList } from './read.js';

/**
 * One shot as a measuring device reports it. Every field is optional: a device measures what it can. Directions are
 * in the world frame for either hand: + is right of the target line.
 */
export interface MeasuredShot {
  /** Speed of the clubhead just before contact [m/s], 1 to 90. */
  readonly clubSpeed?: Speed;
  /** Vertical direction of head travel [rad], + up, −0.6 to 0.6. */
  readonly attackAngle?: Angle;
  /** Horizontal direction of head travel [rad], + right, −0.8 to 0.8. */
  readonly clubPath?: Angle;
  /** Horizontal direction the face points [rad], + right, −0.8 to 0.8. */
  readonly faceAngle?: Angle;
  /** Vertical direction the face points at impact [rad], + up, −0.4 to 1.4. */
  readonly dynamicLoft?: Angle;
  /** Loft the club was built or set with [rad], −0.2 to 1.4. */
  readonly nominalLoft?: Angle;
  /** Speed of the ball just after separation [m/s], 1 to 110. */
  readonly ballSpeed?: Speed;
  /** Vertical launch angle [rad], + up, −π/2 to π/2. */
  readonly launchAngle?: Angle;
  /** Horizontal launch direction [rad], + right, −π to π. */
  readonly launchDirection?: Angle;
  /** Total spin rate [rad/s], 0 to 2,100. */
  readonly spinRate?: AngularSpeed;
  /** Tilt of the spin axis [rad], + right (curves right), −π to π. */
  readonly spinAxisTilt?: Angle;
  /** Horizontal distance to the first contact with the ground [m], 0 to 600. */
  readonly carry?: Length;
  /** Horizontal distance to rest [m], 0 to 1,000. */
  readonly total?: Length;
  /** Greatest height above the start [m], 0 to 200. */
  readonly apex?: Length;
  /** Steepness of the path below the horizontal at landing [rad], 0 to π/2. */
  readonly descentAngle?: Angle;
  /** Sideways position where the ball came down [m], + right of the target line, −600 to 600. */
  readonly side?: Length;
  /** Sideways distance of the landing point from the initial launch line [m], + right, −600 to 600. */
  readonly curve?: Length;
  /** Time in the air [s], 0 to 60. */
  readonly hangTime?: Duration;
  /** Name of the group the shot belongs to, for example a speed band. */
  readonly label?: string;
  /** Name of the session. */
  readonly session?: string;
  /** Day of the shot, best as YYYY-MM-DD. */
  readonly date?: string;
  /** Club. */
  readonly club?: string;
  /** Hand the player plays with. */
  readonly hand?: PlayerHand;
  /** Line of the source the shot was read from, counted from 1: 1 to 2³¹. */
  readonly line?: number;
}

/** Declaration of {@link MeasuredShot}. @internal */
export const measuredShotFields: Declared<MeasuredShot> = /* @__PURE__ */ frozen(() => ({
  clubSpeed: optional(deliveryFields.clubSpeed),
  attackAngle: optional(deliveryFields.attackAngle),
  clubPath: deliveryFields.clubPath,
  faceAngle: deliveryFields.faceAngle,
  dynamicLoft: optional(deliveryFields.dynamicLoft),
  nominalLoft: optional({ ...clubheadFields.staticLoft, label: 'nominal loft' }),
  ballSpeed: optional(launchFields.ballSpeed),
  launchAngle: optional(launchFields.launchAngle),
  launchDirection: launchFields.launchDirection,
  spinRate: optional(launchFields.spinRate),
  spinAxisTilt: launchFields.spinAxisTilt,
  carry: optional(quantity(YARDS, 0, 600, 210, 'carry')),
  total: optional(quantity(YARDS, 0, 1000, 230, 'total')),
  apex: optional(quantity(FEET, 0, 200, 27, 'apex')),
  descentAngle: optional(quantity(DEGREES, 0, Math.PI / 2, 0.65, 'descent angle')),
  side: optional(quantity(YARDS, -600, 600, 5, 'side')),
  curve: optional(quantity(YARDS, -600, 600, 5, 'curve')),
  hangTime: optional(quantity(SECONDS, 0, 60, 6, 'hang time')),
  label: optional(text('100 mph', 'label')),
  session: optional(text('spring', 'session')),
  date: optional(text('2026-04-01', 'date')),
  club: optional(text('driver', 'club')),
  hand: deliveryFields.hand,
  line: optional(count(1, 2 ** 31, 2, 'line of the source')),
}));

/** Most shots that one question takes. */
const MOST_SHOTS = 1_000_000;

/** Reads a list of measured shots. @throws FairflightError naming shot and field, as `shots[3].carry` @internal */
export function readMeasuredShots(value: unknown, path = 'shots', least = 0): readonly MeasuredShot[] {
  const of = record(measuredShotFields, 'measured shot');
  return readList({ of, least, most: MOST_SHOTS }, value, path) as readonly MeasuredShot[];
}
