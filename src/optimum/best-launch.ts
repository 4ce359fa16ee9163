import { FairflightError, requireRecord } from '../errors.js';
import type { Launch } from '../scene/index.js';
import { playShot } from '../shot/index.js';
import { type Angle, type AngularSpeed, degrees, type Speed, si } from '../units/index.js';
import {
  bestLoftAt,
  descentWarnings,
  launchWindow,
  requireLanded,
  SETUP_FIELDS,
  shotSetup,
  windowsFor,
} from './best-loft.js';
import { type Deliverer, LIMITS, plainLaunch, prepare, requireBetween, requireLimit } from './deliverer.js';
import type { Between, Bound, LaunchWindow, Optimum, OptimumSetup } from './optimum.js';
import { type Maximum, maximise } from './search.js';

/** Which launch is best at this ball speed? */
export interface LaunchQuestion extends OptimumSetup {
  /** Ball speed [m/s], 1 to 110. */
  readonly ballSpeed: Speed;
  /**
   * Attack angle [rad], or a range to choose from, + up; default level. The best of a range is nearly always its upper
   * end: see `heldBy`.
   */
  readonly attackAngle?: Angle | Between<Angle>;
  /**
   * Launch angles and spin rates to choose from freely, in place of what the clubhead can deliver. The best is then
   * usually a corner of the box: see `heldBy`.
   */
  readonly freely?: { readonly launchAngle: Between<Angle>; readonly spinRate: Between<AngularSpeed> };
}

/** The launch that goes furthest. */
export interface LaunchOptimum extends Optimum {
  /** Best launch. */
  readonly launch: Launch;
  /** What the search was confined to: launches that the clubhead delivers, or the box given as `freely`. */
  readonly confinedTo: 'deliverable' | 'box';
  /** How the clubhead delivers it; absent for a box. */
  readonly delivery?: {
    readonly clubSpeed: Speed;
    readonly attackAngle: Angle;
    readonly dynamicLoft: Angle;
  };
  /** How far each input may drift. More speed never loses distance. */
  readonly window: LaunchWindow;
}

const CELL = degrees(1);
const ATTACK_CELL = degrees(2);
const SPIN_CELLS = 16;

/**
 * The launch angle and spin that carry, or go in total, furthest at a ball speed: by default among those that the
 * clubhead can deliver with a level, square, centred strike at the attack angle given, as loft changes.
 *
 * The ball speed is held: more loft then takes more club speed, which `delivery` gives. For a given club speed ask
 * {@link bestLoft}, since there loft costs ball speed.
 *
 * Free launch and spin have no useful optimum: it is flat and runs off to high launch with little spin, where no
 * coefficient model has data. Whoever wants it all the same gives `freely`, for example the 7.5° to 15° and 2,200 to
 * 3,000 rpm that R&A and USGA once proposed for optimising each ball in the distance test (second-hand).
 *
 * For total, `minimumDescentAngle`, the window and the uncertainty, see {@link bestLoft}.
 * @throws {@link FairflightError} `invalid-input` or `outside-range` naming the field; `outside-range` for
 *   `scene.ground` when nothing in the range lands
 * @example bestLaunch({ ballSpeed: mph(150), maximise: 'carry' }).launch
 */
export function bestLaunch(question: LaunchQuestion): LaunchOptimum {
  requireRecord('question', question, [...SETUP_FIELDS, 'ballSpeed', 'attackAngle', 'freely']);
  return question.freely === undefined ? amongDeliverable(question) : amongFree(question, question.freely);
}

function amongDeliverable(question: LaunchQuestion): LaunchOptimum {
  const ballSpeed = requireLimit('ballSpeed', question.ballSpeed);
  const asked = question.attackAngle ?? 0;
  const [lowest, highest] =
    typeof asked === 'object'
      ? requireBetween('attackAngle', asked)
      : ([requireLimit('attackAngle', asked), asked] as const);
  const { deliverer, lofts, minimumDescent } = prepare(question);
  const striker = atBallSpeed(deliverer, ballSpeed);
  const loftsAt = (attack: number): Maximum => bestLoftAt(striker, ballSpeed, attack, lofts);

  const [attack, ofAttack] =
    lowest === highest ? [lowest, undefined] : over(loftsAt, lowest, highest, ATTACK_CELL);
  const best = loftsAt(attack);
  requireLanded(best);
  const clubSpeed = striker.clubSpeed(attack, best.x) ?? ballSpeed;
  const delivery = {
    clubSpeed: si<Speed>(clubSpeed),
    attackAngle: si<Angle>(attack),
    dynamicLoft: si<Angle>(best.x),
  };
  const shot = playShot(delivery, shotSetup(question));
  return {
    maximised: question.maximise,
    distance: si(best.value),
    launch: shot.launch,
    confinedTo: 'deliverable',
    delivery,
    shot,
    heldBy: heldBy(ofAttack, 'attack-angle', best, 'dynamic-loft'),
    steepEnough: best.met,
    window: launchWindow(deliverer, windowsFor(best), shot.launch),
    warnings: [...shot.warnings, ...descentWarnings(best, minimumDescent, shot.flight.descentAngle)],
  };
}

function amongFree(question: LaunchQuestion, box: NonNullable<LaunchQuestion['freely']>): LaunchOptimum {
  const ballSpeed = requireLimit('ballSpeed', question.ballSpeed);
  for (const field of ['attackAngle', 'clubhead', 'dynamicLoft'] as const) {
    if (question[field] === undefined) continue;
    throw new FairflightError(
      'invalid-input',
      `${field} has no meaning when launch and spin are chosen freely`,
      {
        field,
        value: question[field],
      },
    );
  }
  requireRecord('freely', box, ['launchAngle', 'spinRate']);
  const [lowest, highest] = requireBetween('launchAngle', box.launchAngle);
  const [least, most] = requireBetween('spinRate', box.spinRate);
  const { deliverer, minimumDescent } = prepare(question);
  const spinsAt = (angle: number): Maximum =>
    maximise((spin) => deliverer.trial(plainLaunch(ballSpeed, angle, spin)), least, most, SPIN_CELLS);

  const [angle, ofAngle] = over(spinsAt, lowest, highest, CELL);
  const best = spinsAt(angle);
  requireLanded(best);
  const launch = plainLaunch(ballSpeed, angle, best.x);
  const shot = playShot(launch, shotSetup(question));
  return {
    maximised: question.maximise,
    distance: si(best.value),
    launch,
    confinedTo: 'box',
    shot,
    heldBy: heldBy(ofAngle, 'launch-angle', best, 'spin-rate'),
    steepEnough: best.met,
    window: launchWindow(deliverer, windowsFor(best), launch),
    warnings: [...shot.warnings, ...descentWarnings(best, minimumDescent, shot.flight.descentAngle)],
  };
}

/** Searches an outer input whose value is itself a maximum over an inner one. */
function over(
  inner: (x: number) => Maximum,
  lower: number,
  upper: number,
  cell: number,
): readonly [x: number, found: Maximum] {
  const found = maximise(
    (x) => {
      const { value, met, margin } = inner(x);
      // Where the constraint can be met it is the inner search that meets it.
      return { value, margin: met ? Number.POSITIVE_INFINITY : margin };
    },
    lower,
    upper,
    Math.max(2, Math.ceil((upper - lower) / cell)),
  );
  return [found.x, found];
}

function heldBy(
  outer: Maximum | undefined,
  outerName: Bound,
  inner: Maximum,
  innerName: Bound,
): readonly Bound[] {
  const bounds: Bound[] = [];
  if (outer?.heldBy === 'range') bounds.push(outerName);
  if (inner.heldBy === 'range') bounds.push(innerName);
  if (inner.heldBy === 'constraint') bounds.push('minimum-descent-angle');
  return bounds;
}

interface AtBallSpeed extends Deliverer {
  readonly clubSpeed: (attack: number, loft: number) => number | undefined;
}

/** A deliverer that swings as fast as the ball speed wanted needs; its `strike` ignores the speed it is given. */
function atBallSpeed(deliverer: Deliverer, ballSpeed: number): AtBallSpeed {
  const [slowest, fastest] = LIMITS.clubSpeed;
  const clubSpeed = (attack: number, loft: number): number | undefined => {
    let speed = Math.min(fastest, ballSpeed / 1.4);
    // Smash factor changes little with speed, so that fixed-point iteration gains more than a figure a turn.
    for (let i = 0; i < 60; i++) {
      const reached = deliverer.strike(speed, attack, loft)?.ballSpeed;
      if (reached === undefined) return undefined;
      const next = (speed * ballSpeed) / reached;
      if (next < slowest || next > fastest) return undefined;
      if (Math.abs(next - speed) < 1e-13 * next) return next;
      speed = next;
    }
    return undefined;
  };
  return {
    ...deliverer,
    clubSpeed,
    strike: (_, attack, loft) => {
      const speed = clubSpeed(attack, loft);
      return speed === undefined ? undefined : deliverer.strike(speed, attack, loft);
    },
  };
}
