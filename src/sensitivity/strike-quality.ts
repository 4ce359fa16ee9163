import { type Ball, balls } from '../ball/index.js';
import { checkClubhead } from '../clubhead/check.js';
import { type Clubhead, clubheads } from '../clubhead/index.js';
import { FairflightError, requireRecord, requireWithin } from '../errors.js';
import { fly } from '../flight/index.js';
import { bestLoft, inferDynamicLoft } from '../optimum/index.js';
import type { Launch, Scene } from '../scene/index.js';
import { type StrikeInput, type StrikeResult, squareStrike } from '../strike/impact.js';
import { type ReadingErrors, resolveReadingErrors } from '../strike/measurement.js';
import { createStriker } from '../strike/striker.js';
import {
  type Angle,
  type AngularSpeed,
  degrees,
  grams,
  type Length,
  millimetres,
  type Speed,
  si,
} from '../units/index.js';
import { type Misread, misreadOf } from './misread.js';

/** What {@link strikeQuality} is asked about. */
export interface StrikeQualityQuestion {
  /** Club speed [m/s]. */
  readonly clubSpeed: Speed;
  /** Ball speed [m/s]. */
  readonly ballSpeed: Speed;
  /** Angle between head travel and face [rad]; or leave it to attack angle and dynamic loft, or to the launch angle. */
  readonly spinLoft?: Angle;
  /** Attack angle [rad], + up. */
  readonly attackAngle?: Angle;
  /** Dynamic loft [rad]. */
  readonly dynamicLoft?: Angle;
  /** Launch angle [rad]. */
  readonly launchAngle?: Angle;
  /** Spin rate [rad/s]. */
  readonly spinRate?: AngularSpeed;
  /** Carry measured in still, standard conditions or those of `scene` [m]; helps to tell which speed was misread. */
  readonly carry?: Length;
  /** The head; default the generic driver. */
  readonly clubhead?: Clubhead;
  /** Scene for the carries; default as its fields say. */
  readonly scene?: Scene;
  /** Standard deviations of the readings; defaults as in `defaultReadingErrors`. */
  readonly readingErrors?: Partial<ReadingErrors>;
}

/** How much of what the head can give the ball got: 98.5 % or more, 96 % or more, 92 % or more, or less. */
export type StrikeVerdict = 'full' | 'nearly-full' | 'partial' | 'little';
/** What the launch costs of the distance this club speed allows: up to 1.5 %, up to 5 %, or more. */
export type LaunchVerdict = 'costs-nothing' | 'costs-some' | 'costs-much';
/**
 * Where a spin loft comes from: given as such; dynamic loft less attack angle; launch angle with the attack angle
 * measured, or with a level attack assumed.
 */
export type SpinLoftOrigin =
  | 'spin-loft'
  | 'loft-and-attack-angle'
  | 'launch-and-attack-angle'
  | 'launch-angle';

/** The launch against the best one for this club speed and attack angle. */
export interface LaunchQuality {
  /** Carry of the measured launch [m]. */
  readonly carry: Length;
  /** Carry of a centred strike with the best loft at this club speed and attack angle [m]. */
  readonly bestCarry: Length;
  /** The loft that gives it [rad]. */
  readonly bestDynamicLoft: Angle;
  /** Carry lost by launch angle and spin, apart from the strike [m]. */
  readonly carryLost: Length;
  /** What it costs, in one code. */
  readonly verdict: LaunchVerdict;
}

/** What {@link strikeQuality} returns. */
export interface StrikeQuality {
  /** Ball speed over club speed. */
  readonly smashFactor: number;
  /** The smash factor of a centred strike with this head at this spin loft. */
  readonly achievable: number;
  /** One over the other; above 1 within the error when the strike was centred. */
  readonly share: number;
  /** Standard deviation of `share` from the reading errors. */
  readonly shareError: number;
  /** Spin loft used [rad]. */
  readonly spinLoft: Angle;
  /** Where the spin loft comes from. */
  readonly spinLoftFrom: SpinLoftOrigin;
  /** Ball speed lost by the strike [m/s]; negative when the readings say more than possible. */
  readonly ballSpeedLost: Speed;
  /** Carry lost by the strike at the same launch angle and spin [m]. */
  readonly carryLost: Length;
  /** How good it was, in one code; absent when the readings cannot be right. */
  readonly verdict?: StrikeVerdict;
  /** Present when launch angle and spin rate were given. */
  readonly launch?: LaunchQuality;
  /** Present when the readings cannot be right. */
  readonly misread?: Misread;
}

/**
 * The most lively head the rules allow: restitution 0.845 (the upper end of what 257 µs of characteristic time is taken
 * to mean, R&A and USGA 2019, part 2 section 4c, with the tolerance of the superseded test), 206 g with the shaft's 3 g.
 */
const LIMIT = { restitution: 0.845, mass: grams(206) };
/** Farthest points of a face that still count as struck [m]. */
const RIM = { toe: millimetres(40), high: millimetres(20) };

/**
 * How good was the strike? The smash factor against what a centred strike with this head gives **at this spin loft**, so
 * that little loft does not pass for a good strike: taking loft off raises the smash factor of every head. With launch
 * angle and spin it also says what the launch costs, since a high smash factor with a poor launch is not a good drive.
 *
 * A smash factor above what the most lively head allowed can give plus twice the reading error is called a misread, and
 * so is one below what a strike on the rim gives; all readings given help to say which one is most likely wrong.
 *
 * @throws {@link FairflightError} `invalid-input` or `outside-range` naming the field; `invalid-input` when neither spin
 *   loft, nor attack angle and dynamic loft, nor a launch angle is given.
 */
export function strikeQuality(question: StrikeQualityQuestion): StrikeQuality {
  requireRecord('question', question, [
    'clubSpeed',
    'ballSpeed',
    'spinLoft',
    'attackAngle',
    'dynamicLoft',
    'launchAngle',
    'spinRate',
    'carry',
    'clubhead',
    'scene',
    'readingErrors',
  ]);
  const clubSpeed = requireWithin(
    'clubSpeed',
    question.clubSpeed,
    1,
    90,
    'm/s',
    'if that was mph, use mph(100)',
  );
  const ballSpeed = requireWithin(
    'ballSpeed',
    question.ballSpeed,
    1,
    110,
    'm/s',
    'if that was mph, use mph(150)',
  );
  if (question.carry !== undefined) requireWithin('carry', question.carry, 1, 500, 'm', 'use yards(250)');
  const head = question.clubhead ?? clubheads.driver;
  checkClubhead(head);
  const errors = resolveReadingErrors(question.readingErrors ?? {}, 'readingErrors');
  const { spinLoft, from, error } = spinLoftOf(question, head, errors);

  const smashFactor = ballSpeed / clubSpeed;
  const ball = question.scene?.ball ?? balls.conforming;
  const smash = (of: Clubhead, loft: number, toe = 0, high = 0): number => {
    const { launch } = struckBy(of, ball, { ...squareStrike(clubSpeed, 0, loft), toe, high });
    return launch.ballSpeed / clubSpeed;
  };
  const achievable = smash(head, spinLoft);
  const share = smashFactor / achievable;
  const slope = (smash(head, spinLoft + 0.01) - achievable) / (0.01 * achievable);
  const shareError = share * Math.hypot(errors.clubSpeed, errors.ballSpeed, slope * error);

  const possible = {
    min: Math.min(
      ...[-1, 1].flatMap((side) => [-1, 1].map((up) => smash(head, spinLoft, side * RIM.toe, up * RIM.high))),
    ),
    max: smash(livelier(head), spinLoft),
  };
  const launch = launchOf(question, head, ball, spinLoft);
  const carryOf = (speed: number): number =>
    fly({ ...launch, ballSpeed: si(Math.min(110, speed)) }, question.scene).carry;
  const carryNow = carryOf(ballSpeed);
  const carryFull = carryOf(achievable * clubSpeed);
  const misread = misreadOf({
    shot: question,
    head,
    ball,
    errors,
    smash: smashFactor,
    achievable,
    possible,
    error: shareError / share,
    carryModel: carryNow,
  });
  const measuredLaunch = question.launchAngle !== undefined && question.spinRate !== undefined;
  return {
    smashFactor,
    achievable,
    share,
    shareError,
    spinLoft: si(spinLoft),
    spinLoftFrom: from,
    ballSpeedLost: si((achievable - smashFactor) * clubSpeed),
    carryLost: si(carryFull - carryNow),
    ...(misread === undefined ? { verdict: verdictOf(share) } : { misread }),
    ...(measuredLaunch && { launch: launchQuality(question, head, carryNow, carryFull) }),
  };
}

function verdictOf(share: number): StrikeVerdict {
  if (share >= 0.985) return 'full';
  if (share >= 0.96) return 'nearly-full';
  return share >= 0.92 ? 'partial' : 'little';
}

function spinLoftOf(
  q: StrikeQualityQuestion,
  head: Clubhead,
  errors: ReadingErrors,
): { readonly spinLoft: number; readonly from: SpinLoftOrigin; readonly error: number } {
  const hint = 'angles are in radians: use degrees(12)';
  const check = (spinLoft: number): number => requireWithin('spinLoft', spinLoft, 0, 1.3, 'rad', hint);
  const attack =
    q.attackAngle === undefined
      ? undefined
      : requireWithin('attackAngle', q.attackAngle, -0.6, 0.6, 'rad', hint);
  const two = Math.hypot(errors.attackAngle, errors.dynamicLoft);
  if (q.spinLoft !== undefined) return { spinLoft: check(q.spinLoft), from: 'spin-loft', error: two };
  if (q.dynamicLoft !== undefined && attack !== undefined) {
    const loft = requireWithin('dynamicLoft', q.dynamicLoft, -0.4, 1.4, 'rad', hint);
    return { spinLoft: check(loft - attack), from: 'loft-and-attack-angle', error: two };
  }
  if (q.launchAngle !== undefined) {
    const launchAngle = requireWithin('launchAngle', q.launchAngle, -0.5, 1.4, 'rad', hint);
    const { dynamicLoftIfCentred } = inferDynamicLoft(
      { launchAngle: si(launchAngle), attackAngle: si(attack ?? 0), clubSpeed: q.clubSpeed },
      head,
      q.scene?.ball,
    );
    return {
      spinLoft: check(Math.abs(dynamicLoftIfCentred - (attack ?? 0))),
      from: attack === undefined ? 'launch-angle' : 'launch-and-attack-angle',
      // Launch moves by 0.86 of the loft; a strike off centre moves it by up to 2°, and so does an unknown attack angle.
      error: Math.hypot(
        errors.launchAngle / 0.86,
        degrees(2),
        attack === undefined ? degrees(3) : errors.attackAngle,
      ),
    };
  }
  throw new FairflightError(
    'invalid-input',
    'spinLoft is needed, or attackAngle and dynamicLoft, or launchAngle: without it a smash factor says nothing about the strike',
    { field: 'spinLoft', value: undefined },
  );
}

function livelier(head: Clubhead): Clubhead {
  const { restitution } = head;
  return {
    ...head,
    mass: si(Math.max(head.mass, LIMIT.mass)),
    restitution: { ...restitution, atReference: Math.max(restitution.atReference, LIMIT.restitution) },
  };
}

/** @throws FairflightError where the head gives no strike */
function struckBy(clubhead: Clubhead, ball: Ball, input: StrikeInput): StrikeResult {
  const struck = createStriker({ clubhead, ball }).strike(input);
  if (typeof struck !== 'string') return struck;
  throw new FairflightError('outside-range', 'the head gives no strike at this speed and spin loft', {
    field: 'spinLoft',
    value: input.dynamicLoft - input.attackAngle,
  });
}

/** The measured launch, completed by the centred strike where something was not measured. */
function launchOf(q: StrikeQualityQuestion, head: Clubhead, ball: Ball, spinLoft: number): Launch {
  const attack = q.attackAngle ?? 0;
  const { launch } = struckBy(head, ball, squareStrike(q.clubSpeed, attack, attack + spinLoft));
  return {
    ballSpeed: q.ballSpeed,
    launchAngle: q.launchAngle ?? launch.launchAngle,
    spinRate: q.spinRate ?? launch.spinRate,
  };
}

function launchQuality(
  q: StrikeQualityQuestion,
  head: Clubhead,
  carryNow: number,
  carryFull: number,
): LaunchQuality {
  const best = bestLoft({
    clubSpeed: q.clubSpeed,
    attackAngle: q.attackAngle ?? si<Angle>(0),
    clubhead: head,
    maximise: 'carry',
    ...(q.scene && { scene: q.scene }),
  });
  const lost = best.distance - carryFull;
  const share = lost / best.distance;
  return {
    carry: si(carryNow),
    bestCarry: best.distance,
    bestDynamicLoft: best.dynamicLoft,
    carryLost: si(lost),
    verdict: share <= 0.015 ? 'costs-nothing' : share <= 0.05 ? 'costs-some' : 'costs-much',
  };
}
