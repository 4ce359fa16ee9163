import { between, orBetween, type QuantityRange } from '../inputs/between.js';
import { deliveryFields } from '../inputs/delivery.js';
import { type Declared, optional, type QuantityField, quantity, type RecordField } from '../inputs/field.js';
import { frozen } from '../inputs/frozen.js';
import { readOptions, readQuantity } from '../inputs/read.js';
import { brent } from '../numerics/index.js';
import { resolveScene, type Scene } from '../scene/scene.js';
import type { Shot, ShotOptions } from '../shot/index.js';
import { shotOptionFields } from '../shot/shot-options.js';
import { type Angle, degrees, type Length, mph, type Speed, si } from '../units/index.js';
import { YARDS } from '../units/unit.js';
import { createSearch, type Deliverer, requireComputed } from './deliverer.js';
import { leastSpeed, SPEED_STEP } from './least-speed.js';
import { bestLoftAt } from './over-loft.js';

/** How the club comes to the ball while its speed is looked for. */
export interface SpeedOptions extends ShotOptions {
  /** Attack angle [rad], + up, −0.6 to 0.6; default level. */
  readonly attackAngle?: Angle;
  /** Dynamic loft [rad], −0.4 to 1.4, or a range to choose the best from at each speed; default the best of 2° to 60°. */
  readonly dynamicLoft?: Angle | QuantityRange<Angle>;
  /** Club speeds looked at [m/s], 1 to 90 each end; default 10 to 150 mph. */
  readonly clubSpeed?: QuantityRange<Speed>;
  /** How far beyond the carry asked for the ball is to come down [m], 0 to 100; default 0. */
  readonly margin?: Length;
}

/** Declaration of a range of club speeds. @internal */
export const speedRangeField: RecordField = /* @__PURE__ */ frozen(() =>
  between(deliveryFields.clubSpeed, 'club speed'),
);

/** Declaration of a distance to be carried beyond what is asked for. @internal */
export const marginField: QuantityField<'m'> = /* @__PURE__ */ frozen(() =>
  quantity(YARDS, 0, 100, 5, 'margin'),
);

/** Declaration of {@link SpeedOptions}. @internal */
export const speedOptionFields: Declared<SpeedOptions> = /* @__PURE__ */ frozen(() => ({
  ...shotOptionFields,
  attackAngle: optional(deliveryFields.attackAngle),
  dynamicLoft: optional(orBetween(deliveryFields.dynamicLoft, 'dynamic loft')),
  clubSpeed: optional(speedRangeField),
  margin: optional(marginField),
}));

/** Declaration of the carry asked for. @internal */
export const carryField: QuantityField<'m'> = /* @__PURE__ */ frozen(() =>
  quantity(YARDS, 1, 1000, 180, 'carry'),
);

/** What {@link speedForCarry} found. */
export type SpeedAnswer =
  | {
      /** Some speed in the range carries that far. */
      readonly outcome: 'found';
      /** The least speed that does [m/s]. */
      readonly clubSpeed: Speed;
      /** Dynamic loft it takes [rad]: the one given, or the best. */
      readonly dynamicLoft: Angle;
      /** The shot. */
      readonly shot: Shot;
    }
  | {
      /** `out-of-reach`: no speed in the range carries so far. `too-close`: even the slowest carries further. */
      readonly outcome: 'out-of-reach' | 'too-close';
      /** The speed that comes nearest [m/s]. */
      readonly clubSpeed: Speed;
      /** Dynamic loft at that speed [rad]. */
      readonly dynamicLoft: Angle;
      /** The shot at that speed. */
      readonly shot: Shot;
      /** Carry wanted, the margin included, less carry reached [m]: positive when out of reach, negative when too close. */
      readonly missing: Length;
    };

const SPEEDS: QuantityRange<Speed> = /* @__PURE__ */ frozen(() => ({ min: mph(10), max: mph(150) }));

/** Of the speed [m/s]. */
const TOLERANCE = 1e-7;
/** Step of the search with the best loft [m/s], 20 mph: its carry rises with speed in every wind tried. */
const BEST_LOFT_STEP = mph(20);
/** How far from the best loft at one speed that at another is looked for first [rad]. */
const NEAR = degrees(8);

/** The best loft at each of several speeds, looked for near the one before. */
function bestLofts(
  deliverer: Deliverer,
  attack: number,
  lofts: QuantityRange<Angle>,
): (speed: number) => number {
  let last: number | undefined;
  const lookFor = (speed: number): number => {
    if (last !== undefined) {
      const near = {
        min: si<Angle>(Math.max(lofts.min, last - NEAR)),
        max: si<Angle>(Math.min(lofts.max, last + NEAR)),
      };
      const { x } = bestLoftAt(deliverer, speed, attack, near);
      const within = (x > near.min || near.min === lofts.min) && (x < near.max || near.max === lofts.max);
      if (within) return x;
    }
    return bestLoftAt(deliverer, speed, attack, lofts).x;
  };
  return (speed) => {
    last = lookFor(speed);
    return last;
  };
}

/**
 * The least club speed that carries a distance with a level-faced, square, centred strike: at the dynamic loft given, or
 * at the best one for each speed.
 *
 * Out of reach is an answer, not an error. Speed is trained slowly and within one's health: warm up, build up over
 * weeks, stop at pain, and ask qualified help.
 * @throws `FairflightError` `invalid-input` or `outside-range` naming the field
 * @example speedForCarry(yards(180), {}, { dynamicLoft: degrees(15) })
 */
export function speedForCarry(carry: Length, scene: Scene = {}, options: SpeedOptions = {}): SpeedAnswer {
  const asked = readQuantity(carryField, carry, 'carry');
  const {
    attackAngle = si<Angle>(0),
    dynamicLoft,
    clubSpeed: speeds = SPEEDS,
    margin = 0,
    ...rest
  } = readOptions(speedOptionFields, options);
  const fixed = typeof dynamicLoft === 'number' ? dynamicLoft : undefined;
  const range = typeof dynamicLoft === 'object' ? { dynamicLoft } : {};
  const { deliverer, player, lofts } = createSearch(resolveScene(scene), { ...rest, ...range });
  const attack = attackAngle;
  requireComputed(deliverer, speeds.max, attack, fixed ?? lofts.min, 'options.clubSpeed.max');
  const loftAt = fixed === undefined ? bestLofts(deliverer, attack, lofts) : () => fixed;
  const wanted = asked + margin;
  // A ball that does not land carries nothing.
  const spare = (speed: number, loft = loftAt(speed)): number =>
    Math.max(0, deliverer.distance(deliverer.strike(speed, attack, loft))) - wanted;
  /** Loft and speed in turn, each the best for the other: carry hardly changes with loft about its best. */
  const enough = (from: number, to: number): number => {
    const loft = loftAt(to);
    const speed = brent((at) => spare(at, loft), from, to, { tolerance: TOLERANCE }).x;
    return fixed !== undefined || to - speed < TOLERANCE ? speed : enough(from, speed + TOLERANCE);
  };
  const step = fixed === undefined ? BEST_LOFT_STEP : SPEED_STEP;
  const { outcome, clubSpeed } = leastSpeed((speed) => spare(speed), speeds, enough, step);
  const loft = si<Angle>(loftAt(clubSpeed));
  const shot = player.fromDelivery({ clubSpeed, attackAngle, dynamicLoft: loft });
  const answer = { clubSpeed, dynamicLoft: loft, shot };
  return outcome === 'found'
    ? { outcome, ...answer }
    : { outcome, ...answer, missing: si(wanted - shot.carry) };
}
