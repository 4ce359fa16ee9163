import { ballField } from '../ball/ball.js';
import { type Ball, type BallName, balls } from '../ball/index.js';
import { type Clubhead, type ClubheadName, clubheads } from '../clubhead/index.js';
import { clubheadField } from '../clubhead/presets.js';
import type { FairflightError } from '../errors.js';
import { type Delivery, deliveryFields } from '../inputs/delivery.js';
import { type Declared, optional, quantity } from '../inputs/field.js';
import { frozen } from '../inputs/frozen.js';
import type { Launch } from '../inputs/launch.js';
import { readOptions, readRecord } from '../inputs/read.js';
import { refusal } from '../inputs/refuse.js';
import { type Angle, type AngularSpeed, type Speed, si } from '../units/index.js';
import { RATIO } from '../units/unit.js';
import type { ModelWarning } from '../warnings/index.js';
import { numbersOf } from './delivery.js';
import type { StrikeFailure, StrikeResult } from './impact.js';
import { type ImpactConstants, impactConstants } from './kernel/constants.js';
import { spinShare } from './spin-share.js';
import { strikerOf } from './striker.js';
import { strikeWarnings } from './warnings.js';

/** What an impact does. */
export interface Strike {
  /** How the ball leaves. */
  readonly launch: Launch;
  /** Ball speed over club speed. */
  readonly smashFactor: number;
  /** Angle between head travel and the face normal at the point of contact [rad]. */
  readonly spinLoft: Angle;
  /** Face angle at the point of contact less club path [rad]. */
  readonly faceToPath: Angle;
  /**
   * Standard error of the spin rate [rad/s], plus or minus: 13 % of it where the grip follows the club speed, as with the
   * generic driver, whose law misses drives it was not fitted to by that much; else 20 %, an assumption. Of means of many
   * strikes; about two thirds of them lie inside, 95 % inside twice as much.
   */
  readonly spinBand: AngularSpeed;
  /** Backspin [rad/s]. */
  readonly backspin: AngularSpeed;
  /** Sidespin [rad/s], + curves right. */
  readonly sidespin: AngularSpeed;
  /**
   * Spin that the turning head adds by gearing: this strike less the same contact without the coupling through which
   * the normal impulse turns the head and so drags the face across the ball. Exactly zero for a strike in line with
   * the centre of gravity.
   */
  readonly gearEffect: { readonly backspin: AngularSpeed; readonly sidespin: AngularSpeed };
  /** Coefficient of restitution used at this speed and point of the face. */
  readonly restitution: number;
  /** Tangential restitution used. */
  readonly tangentialRestitution: number;
  /** True when friction was exhausted and the ball slid throughout. */
  readonly slid: boolean;
  /** Tangential over normal impulse: the friction coefficient the contact needed. */
  readonly frictionUsed: number;
  /** Speed of the head after impact [m/s]. */
  readonly clubSpeedAfter: Speed;
  /** Inputs outside the range the model was calibrated for. */
  readonly warnings: readonly ModelWarning[];
}

/** Options of {@link strike}. */
export interface StrikeOptions {
  /** Clubhead, or the name of a preset; default the generic driver. */
  readonly clubhead?: Clubhead | ClubheadName;
  /** Ball, or the name of a preset; default the conforming ball. */
  readonly ball?: Ball | BallName;
  /**
   * Extra elasticity of the coupling through which the turning head drags the face across the ball, −1 to 1. Scales
   * the gear effect by 1 + this without touching the spin from loft; default 0, which fits the only quoted test of
   * strike height (15 mm higher: about 800 rpm less).
   */
  readonly gearElasticity?: number;
}

/** Declaration of {@link StrikeOptions}. @internal */
export const strikeOptionFields: Declared<StrikeOptions> = /* @__PURE__ */ frozen(() => ({
  clubhead: optional(clubheadField),
  ball: optional(ballField),
  gearElasticity: optional(quantity(RATIO, -1, 1, 0, 'elasticity of the gear coupling')),
}));

/**
 * What happens when a clubhead meets a ball: the full three-dimensional impulse of two rigid bodies, with off-centre
 * contact, bulge and roll, depth of the centre of gravity, normal and tangential restitution and a friction cap.
 *
 * Model: Winfield and Tan 1994, Comput. Struct. 53, 19; McNally, McPhee and Henrikson 2020, Proceedings (ISEA) 49(1),
 * 47. Spin predicted from a delivery is known to ±13 % for the driver and ±20 % for other heads (`spinBand`, one standard
 * error; the tangential restitution is the dominant unknown), ball speed to about 1.5 % (definitions of club speed differ by that much).
 *
 * Not in it: flexing faces, wet faces, turf contact, differences between balls.
 *
 * @param delivery - How the head comes to the ball. SI and radians; + is up, right of target, toward the toe, high.
 * @param options - clubhead, default the generic driver; ball, default the conforming ball
 * @throws `FairflightError` `invalid-input` or `outside-range` naming the field, also when the face does not
 *   approach the ball, the head's restitution law leaves 0 to 1 at this speed, or its laws would make energy.
 */
export function strike(delivery: Delivery, options: StrikeOptions = {}): Strike {
  const {
    clubhead = clubheads.driver,
    ball = balls.conforming,
    gearElasticity,
  } = readOptions(strikeOptionFields, options);
  const read = readRecord(deliveryFields, delivery, 'delivery');
  // Reading has put the record in the place of a preset's name.
  return strikeOf(read, clubhead as Clubhead, ball as Ball, gearElasticity);
}

/** {@link strike} with inputs already read. @throws FairflightError where no impact can be computed @internal */
export function strikeOf(delivery: Delivery, clubhead: Clubhead, ball: Ball, elasticity = 0): Strike {
  const d = numbersOf(delivery);
  const constants = impactConstants(clubhead, ball, elasticity);
  const hit = (c: ImpactConstants): StrikeResult => {
    const struck = strikerOf(c).strike(d);
    if (typeof struck === 'string') throw refusalOf(struck, d.clubSpeed);
    return struck;
  };
  const struck = hit(constants);
  const ungeared = hit({ ...constants, coupling: 0 });
  const { launch, backspin, sidespin, spinLoft } = struck;
  return {
    launch,
    smashFactor: launch.ballSpeed / d.clubSpeed,
    spinLoft: si(spinLoft),
    faceToPath: si(struck.faceToPath),
    spinBand: si(spinShare(clubhead) * launch.spinRate),
    backspin: si(backspin),
    sidespin: si(sidespin),
    gearEffect: { backspin: si(backspin - ungeared.backspin), sidespin: si(sidespin - ungeared.sidespin) },
    restitution: struck.restitution,
    tangentialRestitution: struck.tangentialRestitution,
    slid: struck.slid,
    frictionUsed: struck.frictionUsed,
    clubSpeedAfter: si(struck.clubSpeedAfter),
    warnings: strikeWarnings(d, clubhead, ball, spinLoft),
  };
}

function refusalOf(failure: StrikeFailure, clubSpeed: number): FairflightError {
  if (failure === 'no-approach') {
    return refusal(
      'delivery.dynamicLoft',
      'the face of the delivery must approach the ball: face angle and dynamic loft point too far from the direction of travel (attack angle, club path)',
      { hint: 'check the signs and units of the four angles' },
      'outside-range',
    );
  }
  if (failure === 'impossible-restitution') {
    return refusal(
      'options.clubhead.restitution',
      `options.clubhead.restitution leaves the range 0 to 1 at a club speed of ${clubSpeed} m/s`,
      { value: clubSpeed, hint: 'reduce options.clubhead.restitution.slope' },
      'outside-range',
    );
  }
  return refusal(
    'options.clubhead.tangentialRestitution',
    'options.clubhead.tangentialRestitution, friction and depth of the centre of gravity together would give this strike energy from nothing',
    {
      hint: 'a face that hardly stops the slip has low friction: raise the tangential restitution or reduce options.clubhead.friction',
    },
    'outside-range',
  );
}
