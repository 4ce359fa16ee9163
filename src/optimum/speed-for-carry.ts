import { between, orBetween, type QuantityRange } from '../inputs/between.js';
import { deliveryFields } from '../inputs/delivery.js';
import { type Declared, optional, type QuantityField, quantity } from '../inputs/field.js';
import { frozen } from '../inputs/frozen.js';
import { readOptions, readQuantity } from '../inputs/read.js';
import { brent } from '../numerics/index.js';
import { resolveScene, type Scene } from '../scene/scene.js';
import type { Shot, ShotOptions } from '../shot/index.js';
import { shotOptionFields } from '../shot/shot-options.js';
import { type Angle, type Length, METRES_PER_SECOND_PER_MPH, mph, type Speed, si } from '../units/index.js';
import { YARDS } from '../units/unit.js';
import { createSearch, requireComputed } from './deliverer.js';
import { bestLoftAt } from './over-loft.js';

/** How the club comes to the ball while its speed is looked for. */
export interface SpeedOptions extends ShotOptions {
  /** Attack angle [rad], + up, −0.6 to 0.6; default level. */
  readonly attackAngle?: Angle;
  /** Dynamic loft [rad], −0.4 to 1.4, or a range to choose the best from at each speed; default the best of 2° to 60°. */
  readonly dynamicLoft?: Angle | QuantityRange<Angle>;
  /** Club speeds looked at [m/s], 1 to 90 each end; default 10 to 150 mph. */
  readonly clubSpeed?: QuantityRange<Speed>;
}

/** Declaration of {@link SpeedOptions}. @internal */
export const speedOptionFields: Declared<SpeedOptions> = /* @__PURE__ */ frozen(() => ({
  ...shotOptionFields,
  attackAngle: optional(deliveryFields.attackAngle),
  dynamicLoft: optional(orBetween(deliveryFields.dynamicLoft, 'dynamic loft')),
  clubSpeed: optional(between(deliveryFields.clubSpeed, 'club speed')),
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
      /** Carry wanted less carry reached [m]: positive when out of reach, negative when too close. */
      readonly missing: Length;
    };

/** Step of the search [m/s]: 5 mph. */
const STEP = 5 * METRES_PER_SECOND_PER_MPH;
const SPEEDS: QuantityRange<Speed> = /* @__PURE__ */ frozen(() => ({ min: mph(10), max: mph(150) }));

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
  const wanted = readQuantity(carryField, carry, 'carry');
  const {
    attackAngle = si<Angle>(0),
    dynamicLoft,
    clubSpeed = SPEEDS,
    ...rest
  } = readOptions(speedOptionFields, options);
  const fixed = typeof dynamicLoft === 'number' ? dynamicLoft : undefined;
  const range = typeof dynamicLoft === 'object' ? { dynamicLoft } : {};
  const { deliverer, player, lofts } = createSearch(resolveScene(scene), { ...rest, ...range });
  const { min: slowest, max: fastest } = clubSpeed;
  const attack = attackAngle;
  requireComputed(deliverer, fastest, attack, fixed ?? lofts.min, 'options.clubSpeed.max');
  const loftAt = (speed: number): number => fixed ?? bestLoftAt(deliverer, speed, attack, lofts).x;
  const carryAt = (speed: number): number =>
    deliverer.distance(deliverer.strike(speed, attack, loftAt(speed)));
  // A ball that does not land carries nothing.
  const spare = (speed: number): number => Math.max(0, carryAt(speed)) - wanted;
  const at = (speed: number): { clubSpeed: Speed; dynamicLoft: Angle; shot: Shot } => {
    const loft = si<Angle>(loftAt(speed));
    const delivery = { clubSpeed: si<Speed>(speed), attackAngle, dynamicLoft: loft };
    return { clubSpeed: delivery.clubSpeed, dynamicLoft: loft, shot: player.fromDelivery(delivery) };
  };
  const missed = (outcome: 'out-of-reach' | 'too-close', speed: number): SpeedAnswer => {
    const nearest = at(speed);
    return { outcome, ...nearest, missing: si(wanted - nearest.shot.carry) };
  };

  if (spare(slowest) > 0) return missed('too-close', slowest);
  let from: number = slowest;
  let furthest: number = slowest;
  let most = spare(slowest);
  while (from < fastest) {
    const to = Math.min(fastest, from + STEP);
    const spareHere = spare(to);
    if (spareHere >= 0) return { outcome: 'found', ...at(brent(spare, from, to, { tolerance: 1e-9 }).x) };
    if (spareHere > most) {
      most = spareHere;
      furthest = to;
    }
    from = to;
  }
  return missed('out-of-reach', furthest);
}
