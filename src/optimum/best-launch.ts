import { between, orBetween, type QuantityRange } from '../inputs/between.js';
import { deliveryFields } from '../inputs/delivery.js';
import { type Declared, optional, record } from '../inputs/field.js';
import { frozen } from '../inputs/frozen.js';
import { type Launch, launchFields } from '../inputs/launch.js';
import { readOptions, readRecord } from '../inputs/read.js';
import { refusal } from '../inputs/refuse.js';
import { resolveScene, type Scene } from '../scene/scene.js';
import { type Angle, type AngularSpeed, RADIANS_PER_DEGREE, type Speed, si } from '../units/index.js';
import { createSearch, type Deliverer, plainLaunch, type Search } from './deliverer.js';
import {
  type DistanceOptimum,
  type LaunchWindow,
  type OptimumBound,
  type OptimumOptions,
  optimumOptionFields,
} from './optimum.js';
import { bestLoftAt, descentWarnings, requireLanded } from './over-loft.js';
import { type Maximum, maximise } from './search.js';
import { launchWindow, windowsFor } from './window.js';

/** The ball speed a launch is wanted for, and what there is to choose from. */
export interface LaunchQuestion {
  /** Ball speed [m/s], 1 to 110. */
  readonly ballSpeed: Speed;
  /**
   * Attack angle [rad], or a range to choose from, + up, −0.6 to 0.6; default level. The best of a range is nearly always its upper
   * end: see `heldBy`.
   */
  readonly attackAngle?: Angle | QuantityRange<Angle>;
  /**
   * Launch angles and spin rates to choose from freely, in place of what the clubhead can deliver. The best is then
   * usually a corner of the box: see `heldBy`.
   */
  readonly freely?: LaunchBox;
}

/** A box of launches. */
export interface LaunchBox {
  /** Launch angles [rad], −π/2 to π/2 each end. */
  readonly launchAngle: QuantityRange<Angle>;
  /** Spin rates [rad/s], 0 to 2,100 each end. */
  readonly spinRate: QuantityRange<AngularSpeed>;
}

/** The launch that goes furthest. */
export interface LaunchOptimum extends DistanceOptimum {
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

/** Declaration of {@link LaunchQuestion}. @internal */
export const launchQuestionFields: Declared<LaunchQuestion> = /* @__PURE__ */ frozen(() => ({
  ballSpeed: launchFields.ballSpeed,
  attackAngle: optional(orBetween(deliveryFields.attackAngle, 'attack angle')),
  freely: optional(
    record<LaunchBox>(
      {
        launchAngle: between(launchFields.launchAngle, 'launch angle'),
        spinRate: between(launchFields.spinRate, 'spin rate'),
      },
      'box of launches',
    ),
  ),
}));

const CELL = RADIANS_PER_DEGREE;
const ATTACK_CELL = 2 * RADIANS_PER_DEGREE;
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
 * @throws `FairflightError` `invalid-input` or `outside-range` naming the field; `outside-range` for
 *   `scene.ground` when nothing in the range lands
 * @example bestLaunch({ ballSpeed: mph(150) }).launch
 */
export function bestLaunch(
  question: LaunchQuestion,
  scene: Scene = {},
  options: OptimumOptions = {},
): LaunchOptimum {
  const { ballSpeed, attackAngle, freely } = readRecord(launchQuestionFields, question, 'launch');
  const given = readOptions(optimumOptionFields, options);
  const search = createSearch(resolveScene(scene), given);
  if (freely === undefined) return amongDeliverable(search, ballSpeed, attackAngle ?? si(0));
  const senseless = [
    ['launch.attackAngle', attackAngle],
    ['options.clubhead', given.clubhead],
    ['options.dynamicLoft', given.dynamicLoft],
  ].find(([, value]) => value !== undefined);
  if (senseless !== undefined) {
    const field = String(senseless[0]);
    throw refusal(field, `${field} has no meaning when launch and spin are chosen freely`);
  }
  return amongFree(search, ballSpeed, freely);
}

function amongDeliverable(
  search: Search,
  ballSpeed: Speed,
  attackAngle: Angle | QuantityRange<Angle>,
): LaunchOptimum {
  const { deliverer, player, lofts, minimumDescent } = search;
  const { min, max } = typeof attackAngle === 'object' ? attackAngle : { min: attackAngle, max: attackAngle };
  const striker = atBallSpeed(deliverer, ballSpeed);
  const loftsAt = (attack: number): Maximum => bestLoftAt(striker, ballSpeed, attack, lofts);

  const [attack, ofAttack] = min === max ? [min, undefined] : over(loftsAt, min, max, ATTACK_CELL);
  const best = loftsAt(attack);
  requireLanded(best);
  const clubSpeed = striker.clubSpeed(attack, best.x) ?? ballSpeed;
  const delivery = {
    clubSpeed: si<Speed>(clubSpeed),
    attackAngle: si<Angle>(attack),
    dynamicLoft: si<Angle>(best.x),
  };
  const shot = player.fromDelivery(delivery);
  return {
    maximised: search.maximise,
    distance: si(best.value),
    launch: shot.launch,
    confinedTo: 'deliverable',
    delivery,
    shot,
    heldBy: heldBy(ofAttack, 'attack-angle', best, 'dynamic-loft'),
    steepEnough: best.met,
    window: launchWindow(deliverer, windowsFor(best, deliverer), shot.launch),
    warnings: [...shot.warnings, ...descentWarnings(best, minimumDescent, shot.flight.descentAngle)],
  };
}

function amongFree(search: Search, ballSpeed: Speed, { launchAngle, spinRate }: LaunchBox): LaunchOptimum {
  const { deliverer, player, minimumDescent } = search;
  const spinsAt = (angle: number): Maximum =>
    maximise(
      (spin) => deliverer.trial(plainLaunch(ballSpeed, angle, spin)),
      spinRate.min,
      spinRate.max,
      SPIN_CELLS,
    );

  const [angle, ofAngle] = over(spinsAt, launchAngle.min, launchAngle.max, CELL);
  const best = spinsAt(angle);
  requireLanded(best);
  const launch = plainLaunch(ballSpeed, angle, best.x);
  const shot = player.fromLaunch(launch);
  return {
    maximised: search.maximise,
    distance: si(best.value),
    launch: shot.launch,
    confinedTo: 'box',
    shot,
    heldBy: heldBy(ofAngle, 'launch-angle', best, 'spin-rate'),
    steepEnough: best.met,
    window: launchWindow(deliverer, windowsFor(best, deliverer), launch),
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
  outerName: OptimumBound,
  inner: Maximum,
  innerName: OptimumBound,
): readonly OptimumBound[] {
  const bounds: OptimumBound[] = [];
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
  const { min: slowest, max: fastest } = deliveryFields.clubSpeed;
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
