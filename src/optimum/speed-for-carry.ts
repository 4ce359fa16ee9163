import { requireRecord, requireWithin } from '../errors.js';
import { brent } from '../numerics/index.js';
import { playShot, type Shot, type ShotSetup } from '../shot/index.js';
import { type Angle, type Length, mph, type Speed, si } from '../units/index.js';
import { bestLoftAt, shotSetup } from './best-loft.js';
import { prepare, requireBetween, requireLimit } from './deliverer.js';
import type { Between, OptimumSetup } from './optimum.js';

/** What club speed does this carry take? */
export interface CarryQuestion extends Pick<ShotSetup, 'clubhead' | 'scene' | 'flight'> {
  /** Carry wanted [m], 1 to 1,000. */
  readonly carry: Length;
  /** Attack angle [rad], + up; default level. */
  readonly attackAngle?: Angle;
  /** Dynamic loft [rad], or a range to choose the best from at each speed; default the best of 2° to 60°. */
  readonly dynamicLoft?: Angle | Between<Angle>;
  /** Club speeds looked at [m/s]; default 10 to 150 mph. */
  readonly clubSpeed?: Between<Speed>;
}

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

const STEP = mph(5);
const RANGE = { min: mph(10), max: mph(150) };

/**
 * The least club speed that carries a distance with a level-faced, square, centred strike: at the dynamic loft given, or
 * at the best one for each speed.
 *
 * Out of reach is an answer, not an error. Speed is trained slowly and within one's health: warm up, build up over
 * weeks, stop at pain, and ask qualified help.
 * @throws {@link FairflightError} `invalid-input` or `outside-range` naming the field
 * @example speedForCarry({ carry: yards(180), dynamicLoft: degrees(15) })
 */
export function speedForCarry(question: CarryQuestion): SpeedAnswer {
  requireRecord('question', question, [
    'carry',
    'attackAngle',
    'dynamicLoft',
    'clubSpeed',
    'clubhead',
    'scene',
    'flight',
  ]);
  const wanted = requireWithin('carry', question.carry, 1, 1000, 'm', 'if that was yards, use yards(200)');
  const attack = requireLimit('attackAngle', question.attackAngle ?? 0);
  const [slowest, fastest] = requireBetween('clubSpeed', question.clubSpeed ?? RANGE);
  const { dynamicLoft } = question;
  const fixed = typeof dynamicLoft === 'number' ? requireLimit('dynamicLoft', dynamicLoft) : undefined;
  const setup: OptimumSetup = {
    ...shotSetup(question),
    maximise: 'carry',
    ...(typeof dynamicLoft === 'object' && { dynamicLoft }),
  };
  const { deliverer, lofts } = prepare(setup);
  const loftAt = (speed: number): number => fixed ?? bestLoftAt(deliverer, speed, attack, lofts).x;
  const carryAt = (speed: number): number =>
    deliverer.distance(deliverer.strike(speed, attack, loftAt(speed)));
  // A ball that does not land carries nothing.
  const spare = (speed: number): number => Math.max(0, carryAt(speed)) - wanted;
  const at = (speed: number): { clubSpeed: Speed; dynamicLoft: Angle; shot: Shot } => {
    const loft = si<Angle>(loftAt(speed));
    const clubSpeed = si<Speed>(speed);
    const delivery = { clubSpeed, attackAngle: si<Angle>(attack), dynamicLoft: loft };
    return { clubSpeed, dynamicLoft: loft, shot: playShot(delivery, shotSetup(question)) };
  };
  const missed = (outcome: 'out-of-reach' | 'too-close', speed: number): SpeedAnswer => {
    const nearest = at(speed);
    return { outcome, ...nearest, missing: si(wanted - nearest.shot.carry) };
  };

  if (spare(slowest) > 0) return missed('too-close', slowest);
  let from = slowest;
  let furthest = slowest;
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
