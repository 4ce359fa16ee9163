import { type Ball, balls } from '../ball/index.js';
import { checkClubhead } from '../clubhead/check.js';
import { type Clubhead, clubheads } from '../clubhead/index.js';
import { FairflightError, requireRecord } from '../errors.js';
import { brent, brentMinimum } from '../numerics/index.js';
import { type StrikeResult, squareStrike } from '../strike/impact.js';
import { createStriker } from '../strike/striker.js';
import { type Angle, type AngularSpeed, degrees, type Length, mph, type Speed, si } from '../units/index.js';
import { LIMITS, requireLimit } from './deliverer.js';

/** What was measured of a launch. */
export interface MeasuredLaunch {
  /** Launch angle [rad]. */
  readonly launchAngle: Angle;
  /** Attack angle [rad], + up. */
  readonly attackAngle: Angle;
  /** Club speed [m/s]; without it the loft is that at 100 mph, which moves it by less than 0.1° from 60 to 130 mph. */
  readonly clubSpeed?: Speed;
  /** Backspin [rad/s], which tells a high strike from more loft; needs `clubSpeed`. */
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
  /** Likeliest height of the strike on the face [m], + above centre; present when the spin was given. */
  readonly strikeHeight?: Length;
  /** Measured spin over that expected of a centred strike; present when the spin was given. */
  readonly spinRatio?: number;
}

const USUAL_SPEED = mph(100);
/** Lofts looked at, from the direction of travel [rad]. */
const BELOW = degrees(20);
const ABOVE = degrees(70);
/** Spread of spin about the strike model's, natural logarithm: ±20 %. */
const SPIN_SPREAD = 0.2;
/** Spread of strike heights [m]. Assumption: no published spread by skill could be read. */
const HEIGHT_SPREAD = 0.008;
const HIGHEST = 0.025;

/**
 * The dynamic loft a measured launch was delivered with, for a level, square strike through the strike model.
 *
 * From the launch angle alone the strike is taken as centred: a driver's launch is about 0.86 of the dynamic loft and
 * 0.14 of the attack angle, so ±1° of launch is ±1.2° of loft. But a strike 10 mm high launches 2° higher with less
 * spin. With the spin given, loft and strike height are estimated together: the launch angle is met exactly, and the
 * height is the likeliest for spin known to ±20 % and heights spread by ±8 mm (an assumption).
 * @param clubhead - the head used; default the generic driver
 * @param ball - default the conforming ball
 * @throws {@link FairflightError} `invalid-input` or `outside-range`, also when no loft launches the ball so
 */
export function inferDynamicLoft(
  measured: MeasuredLaunch,
  clubhead: Clubhead = clubheads.driver,
  ball: Ball = balls.conforming,
): DeliveredLoft {
  requireRecord('measured', measured, ['launchAngle', 'attackAngle', 'clubSpeed', 'spinRate']);
  checkClubhead(clubhead);
  const launchAngle = requireLimit('launchAngle', measured.launchAngle);
  const attack = requireLimit('attackAngle', measured.attackAngle);
  const speed =
    measured.clubSpeed === undefined ? USUAL_SPEED : requireLimit('clubSpeed', measured.clubSpeed);
  const spin = measured.spinRate === undefined ? undefined : requireLimit('spinRate', measured.spinRate);
  if (spin !== undefined && measured.clubSpeed === undefined) {
    throw new FairflightError('invalid-input', 'spinRate needs clubSpeed to be compared with', {
      field: 'clubSpeed',
      value: undefined,
    });
  }

  const striker = createStriker({ clubhead, ball });
  const input = squareStrike(speed, attack, 0);
  const strikeWith = (loft: number, high: number): StrikeResult => {
    input.dynamicLoft = loft;
    input.high = high;
    const struck = striker.strike(input);
    if (typeof struck === 'string') {
      throw new FairflightError('outside-range', `clubhead allows no strike at ${speed} m/s`, {
        field: 'clubhead',
      });
    }
    return struck;
  };
  const launchOf = (loft: number, high: number): number => strikeWith(loft, high).launch.launchAngle;
  const lowest = Math.max(LIMITS.dynamicLoft[0], attack - BELOW);
  const highest = Math.min(LIMITS.dynamicLoft[1], attack + ABOVE);
  /** The loft that meets the launch at a strike height. */
  const loftAt = (high: number): number => {
    const range = [launchOf(lowest, high), launchOf(highest, high)] as const;
    if (launchAngle < range[0] || launchAngle > range[1]) throw outOfReach(launchAngle, attack, range);
    return brent((x) => launchOf(x, high) - launchAngle, lowest, highest).x;
  };

  const centred = loftAt(0);
  const expected = strikeWith(centred, 0).backspin;
  let height: number | undefined;
  if (spin !== undefined && spin > 0 && expected > 0) {
    const unlikeliness = (high: number): number => {
      const { backspin } = strikeWith(loftAt(high), high);
      if (backspin <= 0) return Number.POSITIVE_INFINITY;
      return (Math.log(spin / backspin) / SPIN_SPREAD) ** 2 + (high / HEIGHT_SPREAD) ** 2;
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
    ...(height !== undefined &&
      spin !== undefined && { strikeHeight: si<Length>(height), spinRatio: spin / expected }),
  };
}

function outOfReach(launchAngle: number, attack: number, range: readonly [number, number]): FairflightError {
  const degree = (angle: number): string => `${((angle * 180) / Math.PI).toFixed(1)}°`;
  return new FairflightError(
    'outside-range',
    `no loft launches the ball at ${degree(launchAngle)} with an attack angle of ${degree(attack)}; between ${degree(range[0])} and ${degree(range[1])} it can be`,
    { field: 'launchAngle', value: launchAngle, unit: 'rad', range },
  );
}
