import { type Ball, conformingBall } from '../ball/index.js';
import { checkClubhead } from '../clubhead/check.js';
import { type Clubhead, clubheads } from '../clubhead/index.js';
import { FairflightError, requireRecord, requireWithin } from '../errors.js';
import type { Launch } from '../scene/index.js';
import type { ModelWarning } from '../source.js';
import { type Angle, type AngularSpeed, type Speed, si } from '../units/index.js';
import { checkDelivery, type Delivery } from './delivery.js';
import type { StrikeFailure, StrikeResult } from './impact.js';
import { type ImpactConstants, impactConstants } from './kernel/constants.js';
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
  /** Ball; default the conforming ball. */
  readonly ball?: Ball;
  /**
   * Extra elasticity of the coupling through which the turning head drags the face across the ball, −1 to 1. Scales
   * the gear effect by 1 + this without touching the spin from loft; default 0, which fits the only quoted test of
   * strike height (15 mm higher: about 800 rpm less).
   */
  readonly gearElasticity?: number;
}

/**
 * What happens when a clubhead meets a ball: the full three-dimensional impulse of two rigid bodies, with off-centre
 * contact, bulge and roll, depth of the centre of gravity, normal and tangential restitution and a friction cap.
 *
 * Model: Winfield and Tan 1994, Comput. Struct. 53, 19; McNally, McPhee and Henrikson 2020, Proceedings (ISEA) 49(1),
 * 47. Spin predicted from a delivery is good to about ±20 % (one standard deviation; the tangential restitution is the
 * dominant unknown), ball speed to about 1.5 % (definitions of club speed differ by that much).
 *
 * Not in it: flexing faces, wet faces, turf contact, differences between balls.
 *
 * @param delivery - How the head comes to the ball. SI and radians; + is up, right of target, toward the toe, high.
 * @param clubhead - The head; default the generic driver.
 * @throws {@link FairflightError} `invalid-input` or `outside-range` naming the field, also when the face does not
 *   approach the ball, the head's restitution law leaves 0 to 1 at this speed, or its laws would make energy.
 */
export function strike(
  delivery: Delivery,
  clubhead: Clubhead = clubheads.driver,
  options: StrikeOptions = {},
): Strike {
  const d = checkDelivery(delivery);
  checkClubhead(clubhead);
  requireRecord('options', options, ['ball', 'gearElasticity']);
  const elasticity = options.gearElasticity ?? 0;
  requireWithin('options.gearElasticity', elasticity, -1, 1, '');
  const ball = options.ball ?? conformingBall;
  requireWithin('options.ball.mass', ball.mass, 0.01, 0.1, 'kg', 'use grams(45.93)');
  requireWithin('options.ball.radius', ball.radius, 0.01, 0.04, 'm', 'use millimetres(21.335)');
  requireWithin(
    'options.ball.inertia',
    ball.inertia,
    1e-7,
    1e-4,
    'kg m²',
    'use kilogramSquareMetres(8.36e-6)',
  );

  const constants = impactConstants(clubhead, ball, elasticity);
  const hit = (c: ImpactConstants): StrikeResult => {
    const struck = strikerOf(c).strike(d);
    if (typeof struck === 'string') throw refusal(struck, d.clubSpeed);
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
    backspin: si(backspin),
    sidespin: si(sidespin),
    gearEffect: { backspin: si(backspin - ungeared.backspin), sidespin: si(sidespin - ungeared.sidespin) },
    restitution: struck.restitution,
    tangentialRestitution: struck.tangentialRestitution,
    slid: struck.slid,
    frictionUsed: struck.frictionUsed,
    clubSpeedAfter: si(struck.clubSpeedAfter),
    warnings: strikeWarnings(d, clubhead, spinLoft),
  };
}

function refusal(failure: StrikeFailure, clubSpeed: number): FairflightError {
  if (failure === 'no-approach') {
    return new FairflightError(
      'outside-range',
      'the face of the delivery must approach the ball: face angle and dynamic loft point too far from the direction of travel (attack angle, club path)',
      { field: 'delivery.dynamicLoft', hint: 'check the signs and units of the four angles' },
    );
  }
  if (failure === 'impossible-restitution') {
    return new FairflightError(
      'outside-range',
      `clubhead.restitution leaves the range 0 to 1 at a club speed of ${clubSpeed} m/s`,
      { field: 'clubhead.restitution', value: clubSpeed, hint: 'reduce clubhead.restitution.slope' },
    );
  }
  return new FairflightError(
    'outside-range',
    'clubhead.tangentialRestitution, friction and depth of the centre of gravity together would give this strike energy from nothing',
    {
      field: 'clubhead.tangentialRestitution',
      hint: 'a face that hardly stops the slip has low friction: raise the tangential restitution or reduce clubhead.friction',
    },
  );
}
