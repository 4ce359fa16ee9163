import type { FairflightError } from '../errors.js';
import type { QuantityRange } from '../inputs/between.js';
import { type Delivery, deliveryFields } from '../inputs/delivery.js';
import { type Declared, optional, quantity, record } from '../inputs/field.js';
import { frozen } from '../inputs/frozen.js';
import { readOptions } from '../inputs/read.js';
import { refusal } from '../inputs/refuse.js';
import { binomialQuantile, brent } from '../numerics/index.js';
import { type LeastSpeed, leastSpeed } from '../optimum/least-speed.js';
import { carryField, marginField, speedRangeField } from '../optimum/speed-for-carry.js';
import { resolveScene, type Scene } from '../scene/scene.js';
import type { Shot } from '../shot/index.js';
import { createPlayer } from '../shot/player.js';
import { type ShotOptions, shotOptionFields, shotSettings } from '../shot/shot-options.js';
import { type Length, mph, type Speed, si } from '../units/index.js';
import { RATIO } from '../units/unit.js';
import { type CloudOptions, cloudOptionFields } from './cloud.js';
import { drawnShots, wholeSets } from './drawn-shots.js';
import { replicatesOf, type ShareOfShots, shareOf } from './monte-carlo.js';
import { readSubject } from './scattered.js';
import { deliverySpreadField, type Spread } from './spread.js';

/** What is to be carried, how often, and by whom. */
export interface ClearQuestion {
  /** The player's usual delivery now. */
  readonly delivery: Delivery;
  /** How deliveries differ from it. */
  readonly spread: Spread;
  /** Distance to be carried [m], 1 to 1,000, along each shot's own line. */
  readonly carry: Length;
  /** Share of shots that are to carry it, 0.01 to 0.999. */
  readonly share: number;
}

/** Options of {@link speedToClear}. */
export interface ClearOptions extends ShotOptions, CloudOptions {
  /** How far beyond the carry asked for those shots are to come down [m], 0 to 100; default 0. */
  readonly margin?: Length;
  /** Club speeds looked at [m/s], 1 to 90 each end; default half to one and a half times now, at most 150 mph. */
  readonly clubSpeed?: QuantityRange<Speed>;
}

/** Declaration of {@link ClearQuestion}. @internal */
export const clearQuestionFields: Declared<ClearQuestion> = /* @__PURE__ */ frozen(() => ({
  delivery: record(deliveryFields, 'delivery'),
  spread: deliverySpreadField,
  carry: carryField,
  share: quantity(RATIO, 0.01, 0.999, 0.9, 'share of shots'),
}));

/** Declaration of {@link ClearOptions}. @internal */
export const clearOptionFields: Declared<ClearOptions> = /* @__PURE__ */ frozen(() => ({
  ...shotOptionFields,
  ...cloudOptionFields,
  margin: optional(marginField),
  clubSpeed: optional(speedRangeField),
}));

/** What {@link speedToClear} found. */
export type ClearAnswer = {
  /** Share of shots that carry it at the speed the player has now. */
  readonly now: ShareOfShots;
} & (
  | {
      /** At some speed in the range that share carries it. */
      readonly outcome: 'found';
      /** The least speed at which it does [m/s]. */
      readonly clubSpeed: Speed;
      /**
       * 95 % interval that the finite number of shots leaves [m/s]. An end is absent where it lies beyond the range:
       * without `low` the slowest may be enough, without `high` the fastest may not.
       */
      readonly interval: { readonly low?: Speed; readonly high?: Speed };
      /** The usual shot at that speed, without scatter. */
      readonly shot: Shot;
    }
  | {
      /** `out-of-reach`: at no speed in the range so many shots carry it. `too-close`: at the slowest more do. */
      readonly outcome: 'out-of-reach' | 'too-close';
      /** The speed that comes nearest [m/s]. */
      readonly clubSpeed: Speed;
      /** Share of shots that carry it at that speed. */
      readonly share: ShareOfShots;
      /** Carry wanted, the margin included, less what the share asked for carries [m]; negative when too close. */
      readonly missing: Length;
    }
);

/** Of the speed [m/s]; the finite number of shots leaves a thousand times as much. */
const TOLERANCE = 1e-5;
/** Of the range by default [m/s]. */
const FASTEST = mph(150);
/** Probability beyond each end of a 95 % interval. */
const TAIL = 0.025;

/**
 * The least club speed at which a share of a player's shots carries a distance: 200 yards over water nine times in ten.
 *
 * The same scattered shots are played at every speed looked at, and counted: only the club speed moves, while attack
 * angle, loft, aim and scatter stay as they are. More speed carries a shot further as a rule. Where it does not, as with
 * much loft into a strong wind, the share may fall again: the answer is then the first speed, by steps of 5 mph, at which
 * the share is reached, and faster is not safer.
 *
 * The interval runs over the speeds at which the number of shots that carry it is one that the share asked for makes
 * likely, by the binomial distribution: as if draws were independent; evenly spread points make it smaller, if anything.
 * It says nothing about the models. A shot outside what can be played is in no share.
 * @param question - the player's usual delivery, how shots differ from it, the carry, and the share that is to reach it
 * @param scene - air, wind, ground, turf, ball and coefficient model; each has a default
 * @param options - clubhead, margin, speeds, number of shots, seed; each has a default
 * @throws `FairflightError` `invalid-input` or `outside-range` naming the field; also where so few shots can't bound the
 *   speed, and where more than 5 % of the shots cannot be played
 * @example
 * speedToClear({
 *   delivery: { clubSpeed: mph(95), attackAngle: degrees(1), dynamicLoft: degrees(15) },
 *   spread: { kind: 'normal', sd: { clubSpeed: mph(1.5), dynamicLoft: degrees(1), toe: millimetres(8) } },
 *   carry: yards(200),
 *   share: 0.9,
 * })
 */
export function speedToClear(
  question: ClearQuestion,
  scene: Scene = {},
  options: ClearOptions = {},
): ClearAnswer {
  const { delivery, spread, carry, share } = readSubject(clearQuestionFields, question);
  const resolved = resolveScene(scene);
  const given = readOptions(clearOptionFields, options);
  const { margin = 0, clubSpeed: range = rangeAbout(delivery.clubSpeed) } = given;
  const wanted = carry + margin;
  const shots = wholeSets(given.shots ?? 2048);
  const counts = countsFor(share, shots, given.shots === undefined ? 'share' : 'options.shots');
  const settings = shotSettings(given);
  const player = createPlayer(resolved, settings);
  // The usual shot first: what is wrong with it is an error, not a failed draw.
  player.fromDelivery(delivery);
  const play = drawnShots(resolved, settings, { usual: delivery, spread, draws: given });
  const refuse = (speed: Speed, why: FairflightError): FairflightError => {
    if (speed === delivery.clubSpeed) return why;
    const end = speed < delivery.clubSpeed ? 'min' : 'max';
    const field = given.clubSpeed === undefined ? 'delivery.clubSpeed' : `options.clubSpeed.${end}`;
    return refusal(
      field,
      `${field} leads to ${speed.toFixed(1)} m/s, at which ${why.message}`,
      { value: speed, unit: 'm/s', hint: 'give options.clubSpeed a nearer end' },
      'outside-range',
    );
  };
  const carriesAt = (clubSpeed: Speed): Carries => {
    const shot: number[] = [];
    const carry: number[] = [];
    const refused = play({ clubSpeed, direction: 1, strike: 1 }, shots, false, (i, each) => {
      shot.push(i);
      // A ball that does not land carries nothing.
      carry.push(each.landed ? each.carry : 0);
    });
    if (refused !== undefined) throw refuse(clubSpeed, refused);
    return { shot, carry };
  };
  const shareAt = (clubSpeed: Speed): ShareOfShots => {
    const { shot, carry: each } = carriesAt(clubSpeed);
    const clear = each.map((distance) => distance >= wanted);
    return shareOf(replicatesOf(shot), clear);
  };
  const known = new Map<number, Spare>();
  const spareAt = (speed: number): Spare => {
    const spare = known.get(speed) ?? spareOf(carriesAt(si(speed)).carry, counts, shots, wanted);
    known.set(speed, spare);
    return spare;
  };
  const least = (name: keyof Spare): LeastSpeed =>
    leastSpeed(
      (speed) => spareAt(speed)[name],
      range,
      (from, to) => brent((speed) => spareAt(speed)[name], from, to, { tolerance: TOLERANCE }).x,
    );

  const now = shareAt(delivery.clubSpeed);
  const { outcome, clubSpeed } = least('asked');
  if (outcome !== 'found') {
    const missing = si<Length>(-spareAt(clubSpeed).asked);
    return { outcome, clubSpeed, share: shareAt(clubSpeed), missing, now };
  }
  const [low, high] = [least('fewest'), least('beyondMost')];
  return {
    outcome,
    clubSpeed,
    interval: {
      ...(low.outcome === 'found' && { low: low.clubSpeed }),
      ...(high.outcome === 'found' && { high: high.clubSpeed }),
    },
    shot: player.fromDelivery({ ...delivery, clubSpeed }),
    now,
  };
}

/** Shots that could be played: their numbers, and how far they carry [m]. */
interface Carries {
  readonly shot: readonly number[];
  readonly carry: readonly number[];
}

/** Numbers of shots that carry it: what is asked for, and what that share may come to among so many draws. */
interface Counts {
  readonly asked: number;
  /** Fewer come about once in forty at most. */
  readonly fewest: number;
  /** So many or more come about once in forty at most. */
  readonly beyondMost: number;
}

/** What the last of so many shots, the longest first, has to spare [m]. */
type Spare = { readonly [K in keyof Counts]: number };

function spareOf(carry: readonly number[], counts: Counts, shots: number, wanted: number): Spare {
  const longest = Float64Array.from(carry).sort().reverse();
  // A little less than the whole number that it comes to, where rounding makes it more.
  const at = (count: number): number =>
    (longest[Math.ceil((count * longest.length) / shots - 1e-9) - 1] ?? 0) - wanted;
  return { asked: at(counts.asked), fewest: at(counts.fewest), beyondMost: at(counts.beyondMost) };
}

/** @throws FairflightError where none or all of the shots may be what the share comes to */
function countsFor(share: number, shots: number, field: string): Counts {
  const [fewest, most] = [TAIL, 1 - TAIL].map((p) => binomialQuantile(p, shots, share)) as [number, number];
  if (fewest === 0 || most === shots) {
    const needed = Math.floor(Math.log(TAIL) / Math.log(Math.max(share, 1 - share))) + 1;
    throw refusal(
      field,
      `${field} leaves the speed open: a share of ${share} needs ${needed} shots at least, not ${shots}`,
      { value: field === 'share' ? share : shots, hint: `give options.shots of ${needed} or more` },
    );
  }
  return { asked: share * shots, fewest, beyondMost: most + 1 };
}

function rangeAbout(now: Speed): QuantityRange<Speed> {
  return {
    min: si(Math.max(deliveryFields.clubSpeed.min, now / 2)),
    max: si(Math.max(now, Math.min(1.5 * now, FASTEST))),
  };
}
