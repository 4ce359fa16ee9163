import type { Ball } from '../ball/index.js';
import type { Clubhead } from '../clubhead/index.js';
import { flyIn } from '../flight/fly.js';
import { deliveryFields } from '../inputs/delivery.js';
import { type Declared, optional, partial, quantity, record } from '../inputs/field.js';
import { frozen } from '../inputs/frozen.js';
import { type Launch, launchFields } from '../inputs/launch.js';
import { measuredShotFields } from '../inputs/measured-shot.js';
import { readOptions, readQuantity, readRecord } from '../inputs/read.js';
import { type ReadingErrors, readingErrorFields } from '../inputs/readings.js';
import { refusal } from '../inputs/refuse.js';
import { createSearch, type Search } from '../optimum/deliverer.js';
import { inferLoft } from '../optimum/infer-loft.js';
import { bestLoftAt, requireLanded } from '../optimum/over-loft.js';
import { resolveScene, type Scene } from '../scene/scene.js';
import type { ShotOptions } from '../shot/index.js';
import { shotOptionFields, shotSettings } from '../shot/shot-options.js';
import { requireFlyable } from '../shot/struck-launch.js';
import { type StrikeInput, type StrikeResult, squareStrike } from '../strike/impact.js';
import { defaultReadingErrors } from '../strike/measurement.js';
import { createStriker } from '../strike/striker.js';
import { type Angle, type AngularSpeed, degrees, type Length, type Speed, si } from '../units/index.js';
import { DEGREES } from '../units/unit.js';
import { misreadOf, type SmashMisread } from './misread.js';

/** Readings of one strike that {@link strikeQuality} judges. */
export interface StrikeReadings {
  /** Club speed [m/s], 1 to 90. */
  readonly clubSpeed: Speed;
  /** Ball speed [m/s], 1 to 110. */
  readonly ballSpeed: Speed;
  /**
   * Angle between head travel and face [rad], 0 to 1.3; or leave it to attack angle and dynamic loft, or to the launch
   * angle.
   */
  readonly spinLoft?: Angle;
  /** Attack angle [rad], + up, −0.6 to 0.6. */
  readonly attackAngle?: Angle;
  /** Dynamic loft [rad], −0.4 to 1.4. */
  readonly dynamicLoft?: Angle;
  /** Launch angle [rad], + up, −π/2 to π/2. */
  readonly launchAngle?: Angle;
  /** Spin rate [rad/s], 0 to 2,100. */
  readonly spinRate?: AngularSpeed;
  /** Carry measured in the scene [m], 0 to 600; helps to tell which speed was misread. */
  readonly carry?: Length;
}

/** Options of {@link strikeQuality}. */
export interface StrikeQualityOptions extends ShotOptions {
  /** Standard deviations of the readings; defaults as in `defaultReadingErrors`. */
  readonly readingErrors?: Partial<ReadingErrors>;
}

/** Declaration of {@link StrikeReadings}. @internal */
export const strikeReadingFields: Declared<StrikeReadings> = /* @__PURE__ */ frozen(() => ({
  clubSpeed: deliveryFields.clubSpeed,
  ballSpeed: launchFields.ballSpeed,
  spinLoft: optional(quantity(DEGREES, 0, 1.3, 0.22, 'spin loft')),
  attackAngle: optional(deliveryFields.attackAngle),
  dynamicLoft: optional(deliveryFields.dynamicLoft),
  launchAngle: optional(launchFields.launchAngle),
  spinRate: optional(launchFields.spinRate),
  carry: measuredShotFields.carry,
}));

/** Declaration of {@link StrikeQualityOptions}. @internal */
export const strikeQualityOptionFields: Declared<StrikeQualityOptions> = /* @__PURE__ */ frozen(() => ({
  ...shotOptionFields,
  readingErrors: optional(record(partial(readingErrorFields), 'reading errors')),
}));

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
  readonly misread?: SmashMisread;
}

/**
 * The most lively head the rules allow: restitution 0.845 (the upper end of what 257 µs of characteristic time is taken
 * to mean, R&A and USGA 2019, part 2 section 4c, with the tolerance of the superseded test), 206 g with the shaft's 3 g.
 */
const LIMIT = { restitution: 0.845, mass: 0.206 };
/** Farthest points of a face that still count as struck [m]. */
const RIM = { toe: 0.04, high: 0.02 };

/**
 * How good was the strike? The smash factor against what a centred strike with this head gives **at this spin loft**, so
 * that little loft does not pass for a good strike: taking loft off raises the smash factor of every head. With launch
 * angle and spin it also says what the launch costs, since a high smash factor with a poor launch is not a good drive.
 *
 * A smash factor above what the most lively head allowed can give plus twice the reading error is called a misread, and
 * so is one below what a strike on the rim gives; all readings given help to say which one is most likely wrong.
 *
 * @throws `FairflightError` `invalid-input` or `outside-range` naming the field; `invalid-input` when neither spin
 *   loft, nor attack angle and dynamic loft, nor a launch angle is given.
 */
export function strikeQuality(
  readings: StrikeReadings,
  scene: Scene = {},
  options: StrikeQualityOptions = {},
): StrikeQuality {
  const question = readRecord(strikeReadingFields, readings, 'readings');
  const resolved = resolveScene(scene);
  const { readingErrors = {}, ...rest } = readOptions(strikeQualityOptionFields, options);
  const settings = shotSettings(rest);
  const { clubhead: head } = settings;
  const { ball } = resolved;
  const { clubSpeed, ballSpeed } = question;
  const errors = { ...defaultReadingErrors, ...readingErrors };
  const { spinLoft, from, error } = spinLoftOf(question, head, ball, errors);

  const smashFactor = ballSpeed / clubSpeed;
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
    flyIn(resolved, { ...launch, ballSpeed: si(speed) }, settings).carry;
  const carryNow = carryOf(ballSpeed);
  const fullSpeed = si<Speed>(achievable * clubSpeed);
  const full = requireFlyable({ ...launch, ballSpeed: fullSpeed }, clubSpeed, 'readings.clubSpeed');
  const carryFull = carryOf(full.ballSpeed);
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
    ...(measuredLaunch && {
      launch: launchQuality(question, createSearch(resolved, rest), carryNow, carryFull),
    }),
  };
}

function verdictOf(share: number): StrikeVerdict {
  if (share >= 0.985) return 'full';
  if (share >= 0.96) return 'nearly-full';
  return share >= 0.92 ? 'partial' : 'little';
}

function spinLoftOf(
  q: StrikeReadings,
  head: Clubhead,
  ball: Ball,
  errors: ReadingErrors,
): { readonly spinLoft: number; readonly from: SpinLoftOrigin; readonly error: number } {
  // The spin loft read or worked out has one range.
  const check = (spinLoft: number): number =>
    readQuantity(strikeReadingFields.spinLoft, spinLoft, 'readings.spinLoft');
  const { attackAngle: attack, dynamicLoft, launchAngle, clubSpeed } = q;
  const two = Math.hypot(errors.attackAngle, errors.dynamicLoft);
  if (q.spinLoft !== undefined) return { spinLoft: q.spinLoft, from: 'spin-loft', error: two };
  if (dynamicLoft !== undefined && attack !== undefined) {
    return { spinLoft: check(dynamicLoft - attack), from: 'loft-and-attack-angle', error: two };
  }
  if (launchAngle !== undefined) {
    const attackAngle = attack ?? si<Angle>(0);
    const { dynamicLoftIfCentred } = inferLoft({ launchAngle, attackAngle, clubSpeed }, head, ball);
    return {
      spinLoft: check(Math.abs(dynamicLoftIfCentred - attackAngle)),
      from: attack === undefined ? 'launch-angle' : 'launch-and-attack-angle',
      // Launch moves by 0.86 of the loft; a strike off centre moves it by up to 2°, and so does an unknown attack angle.
      error: Math.hypot(
        errors.launchAngle / 0.86,
        degrees(2),
        attack === undefined ? degrees(3) : errors.attackAngle,
      ),
    };
  }
  throw refusal(
    'readings.spinLoft',
    'readings.spinLoft is needed, or attackAngle and dynamicLoft, or launchAngle: without it a smash factor says nothing about the strike',
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
  throw refusal(
    'readings.spinLoft',
    'the head gives no strike at this speed and spin loft',
    { value: input.dynamicLoft - input.attackAngle },
    'outside-range',
  );
}

/** The measured launch, completed by the centred strike where something was not measured. */
function launchOf(q: StrikeReadings, head: Clubhead, ball: Ball, spinLoft: number): Launch {
  const attack = q.attackAngle ?? 0;
  const { launch } = struckBy(head, ball, squareStrike(q.clubSpeed, attack, attack + spinLoft));
  return {
    ballSpeed: q.ballSpeed,
    launchAngle: q.launchAngle ?? launch.launchAngle,
    spinRate: q.spinRate ?? launch.spinRate,
  };
}

function launchQuality(
  { clubSpeed, attackAngle = si(0) }: StrikeReadings,
  { deliverer, lofts }: Search,
  carryNow: number,
  carryFull: number,
): LaunchQuality {
  const best = bestLoftAt(deliverer, clubSpeed, attackAngle, lofts);
  requireLanded(best);
  const lost = best.value - carryFull;
  const share = lost / best.value;
  return {
    carry: si(carryNow),
    bestCarry: si(best.value),
    bestDynamicLoft: si(best.x),
    carryLost: si(lost),
    verdict: share <= 0.015 ? 'costs-nothing' : share <= 0.05 ? 'costs-some' : 'costs-much',
  };
}
