import { ballField } from '../ball/ball.js';
import { type Ball, type BallName, balls } from '../ball/index.js';
import { type Clubhead, type ClubheadName, clubheads } from '../clubhead/index.js';
import { clubheadField } from '../clubhead/presets.js';
import type { FairflightError } from '../errors.js';
import { deliveryFields } from '../inputs/delivery.js';
import { type Declared, optional } from '../inputs/field.js';
import { frozen } from '../inputs/frozen.js';
import { launchFields } from '../inputs/launch.js';
import { readOptions, readRecord } from '../inputs/read.js';
import { refusal, refuseType } from '../inputs/refuse.js';
import { brent, brentMinimum } from '../numerics/index.js';
import { type StrikeResult, squareStrike } from '../strike/impact.js';
import { spinShare } from '../strike/spin-share.js';
import { createStriker } from '../strike/striker.js';
import {
  type Angle,
  type AngularSpeed,
  type Length,
  METRES_PER_SECOND_PER_MPH,
  RADIANS_PER_DEGREE,
  type Speed,
  si,
} from '../units/index.js';

/** What was measured of a launch. */
export interface MeasuredLaunch {
  /** Launch angle [rad], + up, −π/2 to π/2. */
  readonly launchAngle: Angle;
  /** Attack angle [rad], + up, −0.6 to 0.6. */
  readonly attackAngle: Angle;
  /** Club speed [m/s], 1 to 90; without it the loft is that at 100 mph, which moves it by less than 0.1° from 60 to 130 mph. */
  readonly clubSpeed?: Speed;
  /** Backspin [rad/s], 0 to 2,100, which tells a high strike from more loft; needs `clubSpeed`. */
  readonly spinRate?: AngularSpeed;
}

/** The loft a launch was delivered with. */
export interface DeliveredLoft {
  /** Dynamic loft at impact [rad]: of the face centre. */
  readonly dynamicLoft: Angle;
  /** What the delivery added to the head's design loft [rad]. */
  readonly addedLoft: Angle;
  /** Angle between head travel and face at the point of contact [rad]. */
  readonly spinLoft: Angle;
  /** Dynamic loft had the strike been centred [rad]: from the launch angle alone. */
  readonly dynamicLoftIfCentred: Angle;
  /** Likeliest height of the strike on the face [m], + above centre; present when the spin was given and tells it: see `spinRatio`. */
  readonly strikeHeight?: Length;
  /** Measured spin over that expected of a centred strike; present when the spin was given and neither is 0. */
  readonly spinRatio?: number;
}

/** Options of {@link inferDynamicLoft}. */
export interface InferOptions {
  /** Clubhead, or the name of a preset; default the generic driver. */
  readonly clubhead?: Clubhead | ClubheadName;
  /** Ball, or the name of a preset; default the conforming ball. */
  readonly ball?: Ball | BallName;
}

/** Declaration of {@link MeasuredLaunch}. @internal */
export const measuredLaunchFields: Declared<MeasuredLaunch> = /* @__PURE__ */ frozen(() => ({
  launchAngle: launchFields.launchAngle,
  attackAngle: deliveryFields.attackAngle,
  clubSpeed: optional(deliveryFields.clubSpeed),
  spinRate: optional(launchFields.spinRate),
}));

/** Declaration of {@link InferOptions}. @internal */
export const inferOptionFields: Declared<InferOptions> = /* @__PURE__ */ frozen(() => ({
  clubhead: optional(clubheadField),
  ball: optional(ballField),
}));

/** Club speed taken where it was not measured [m/s]: 100 mph. */
const USUAL_SPEED = 100 * METRES_PER_SECOND_PER_MPH;
/** Lofts looked at, from the direction of travel [rad]. */
const BELOW = 20 * RADIANS_PER_DEGREE;
const ABOVE = 70 * RADIANS_PER_DEGREE;
/** Spread of strike heights [m]. Assumption: no published spread by skill could be read. */
const HEIGHT_SPREAD = 0.008;
const HIGHEST = 0.025;

/**
 * The dynamic loft a measured launch was delivered with, for a level, square strike through the strike model.
 *
 * From the launch angle alone the strike is taken as centred: a driver's launch is about 0.86 of the dynamic loft and
 * 0.14 of the attack angle, so ±1° of launch is ±1.2° of loft. But a strike 10 mm high launches 2° higher with less
 * spin. With the spin given, loft and strike height are estimated together: the launch angle is met exactly, and the
 * height is the likeliest for spin known to its `spinBand` and heights spread by ±8 mm (an assumption).
 * @param options - the clubhead used, default the generic driver; the ball, default the conforming ball
 * @throws `FairflightError` `invalid-input` or `outside-range`, also when no loft launches the ball so
 */
export function inferDynamicLoft(measured: MeasuredLaunch, options: InferOptions = {}): DeliveredLoft {
  const given = readRecord(measuredLaunchFields, measured, 'measured');
  const { clubhead = clubheads.driver, ball = balls.conforming } = readOptions(inferOptionFields, options);
  // Reading has put the record in the place of a preset's name.
  return inferLoft(given, clubhead as Clubhead, ball as Ball);
}

/** {@link inferDynamicLoft} with inputs already read. @throws FairflightError when no loft launches the ball so @internal */
export function inferLoft(measured: MeasuredLaunch, clubhead: Clubhead, ball: Ball): DeliveredLoft {
  const { launchAngle, attackAngle: attack, clubSpeed, spinRate: spin } = measured;
  if (spin !== undefined && clubSpeed === undefined) {
    throw refuseType('measured.clubSpeed', 'given where the spin rate is, to compare it with', undefined);
  }
  const speed = clubSpeed ?? USUAL_SPEED;

  const striker = createStriker({ clubhead, ball });
  const input = squareStrike(speed, attack, 0);
  const strikeWith = (loft: number, high: number): StrikeResult => {
    input.dynamicLoft = loft;
    input.high = high;
    const struck = striker.strike(input);
    if (typeof struck === 'string') {
      throw refusal(
        'options.clubhead',
        `options.clubhead allows no strike at ${speed} m/s`,
        {},
        'outside-range',
      );
    }
    return struck;
  };
  const launchOf = (loft: number, high: number): number => strikeWith(loft, high).launch.launchAngle;
  const lowest = Math.max(deliveryFields.dynamicLoft.min, attack - BELOW);
  const highest = Math.min(deliveryFields.dynamicLoft.max, attack + ABOVE);
  /** The loft that meets the launch at a strike height. */
  const loftAt = (high: number): number => {
    const range = [launchOf(lowest, high), launchOf(highest, high)] as const;
    if (launchAngle < range[0] || launchAngle > range[1]) throw outOfReach(launchAngle, attack, range);
    return brent((x) => launchOf(x, high) - launchAngle, lowest, highest).x;
  };

  const centred = loftAt(0);
  const expected = strikeWith(centred, 0).backspin;
  const spread = spinShare(clubhead);
  let height: number | undefined;
  // Without spin, measured or expected, nothing is told of the height; a friction next to 0 makes the ratio overflow.
  const spinRatio = spin === undefined ? 0 : spin / expected;
  if (spin !== undefined && spinRatio > 0 && Number.isFinite(spinRatio)) {
    const unlikeliness = (high: number): number => {
      const { backspin } = strikeWith(loftAt(high), high);
      if (backspin <= 0) return Number.POSITIVE_INFINITY;
      return (Math.log(spin / backspin) / spread) ** 2 + (high / HEIGHT_SPREAD) ** 2;
    };
    height = brentMinimum(unlikeliness, -HIGHEST, HIGHEST, { tolerance: 1e-6 }).x;
  }
  const loft = loftAt(height ?? 0);
  const { spinLoft } = strikeWith(loft, height ?? 0);
  return {
    dynamicLoft: si(loft),
    addedLoft: si(loft - clubhead.staticLoft),
    spinLoft: si(spinLoft),
    dynamicLoftIfCentred: si(centred),
    ...(height !== undefined && { strikeHeight: si<Length>(height), spinRatio }),
  };
}

function outOfReach(launchAngle: number, attack: number, range: readonly [number, number]): FairflightError {
  const degree = (angle: number): string => `${((angle * 180) / Math.PI).toFixed(1)}°`;
  return refusal(
    'measured.launchAngle',
    `no loft launches the ball at ${degree(launchAngle)} with an attack angle of ${degree(attack)}; between ${degree(range[0])} and ${degree(range[1])} it can be`,
    { value: launchAngle, unit: 'rad', range },
    'outside-range',
  );
}
