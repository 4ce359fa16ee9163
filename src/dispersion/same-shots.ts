import { type FairflightError, isFairflightError } from '../errors.js';
import { type Delivery, deliveryFields, strikeOffsetFields } from '../inputs/delivery.js';
import { allows, readRecord } from '../inputs/read.js';
import type { ResolvedScene } from '../scene/scene.js';
import { createPlayer } from '../shot/player.js';
import type { ShotSettings } from '../shot/shot-options.js';
import { isFlyable } from '../shot/struck-launch.js';
import { createWalk, type WalkResult } from '../shot/walk.js';
import { numbersOf } from '../strike/delivery.js';
import type { StrikeInput } from '../strike/impact.js';
import { createStriker } from '../strike/striker.js';
import type { Speed } from '../units/index.js';
import { type CloudOptions, MOST_FAILED, pointsFor, REPLICATES, refuseSpread } from './cloud.js';
import type { StrokesSettings } from './expected-strokes.js';
import type { Hole } from './hole.js';
import { scoreOf } from './hole-strokes.js';
import { samplerFor } from './sampler.js';
import { type DeliverySd, deliverySdFields, type ScalableSpread } from './spread.js';

/** A way to play: how fast, and with how much of today's scatter of path and face, and of the strike. @internal */
export interface WayToPlay {
  readonly clubSpeed: Speed;
  readonly direction: number;
  readonly strike: number;
}

/** Shots played in one way and counted, a number each: NaN for one outside what can be played. @internal */
export interface PlayedShots {
  /** Strokes on all holes together. */
  readonly strokes: Float64Array;
  readonly carry: Float64Array;
  readonly total: Float64Array;
  /** Share of the holes on which the shot ends on the fairway. */
  readonly fairway: Float64Array;
  /** Why this way of playing cannot be counted: more shots failed than a spread may have. */
  readonly refused: FairflightError | undefined;
}

/** Whose shots, and how they are drawn and counted. @internal */
export interface Golfer {
  readonly usual: Delivery;
  readonly spread: ScalableSpread;
  readonly holes: readonly Hole[];
  readonly strokes: StrokesSettings;
  readonly draws: CloudOptions;
}

/** Shots rounded up to as many from every set of points. @internal */
export function wholeSets(shots: number): number {
  return Math.ceil(shots / REPLICATES) * REPLICATES;
}

/** What scatters, as numbers, each with its range. */
const FIELDS = { ...deliveryFields, ...strikeOffsetFields };
const NUMBERS = Object.keys(deliverySdFields) as (keyof DeliverySd)[];

/**
 * Plays the same shots of a golfer in any way: shot number i has the same luck each time, so that two ways differ by what
 * the way does to it. The walk of `playShot` without its records.
 * @internal
 */
export function sameShots(
  scene: ResolvedScene,
  settings: ShotSettings,
  { usual, spread, holes, strokes: counting, draws: drawing }: Golfer,
): (way: WayToPlay, shots: number) => PlayedShots {
  const { sampling = 'sobol', seed = 0 } = drawing;
  const sampler = samplerFor({ delivery: usual, spread });
  const points = pointsFor(sampling, sampler.dimensions, seed);
  const meant = numbersOf(usual);
  const drawn: StrikeInput[] = [];
  const striker = createStriker({ clubhead: settings.clubhead, ball: scene.ball });
  const walk = createWalk(scene, settings);
  const input = { ...meant };

  const aimAt = (i: number, { clubSpeed, direction, strike }: WayToPlay): void => {
    drawn[i] ??= numbersOf(sampler.shotAt(points(i)) as Delivery);
    Object.assign(input, drawn[i]);
    input.clubSpeed += clubSpeed - meant.clubSpeed;
    input.clubPath = meant.clubPath + direction * (input.clubPath - meant.clubPath);
    input.faceAngle = meant.faceAngle + direction * (input.faceAngle - meant.faceAngle);
    input.toe = meant.toe + strike * (input.toe - meant.toe);
    input.high = meant.high + strike * (input.high - meant.high);
  };
  const play = (): WalkResult | undefined => {
    if (!NUMBERS.every((name) => allows(FIELDS[name], input[name]))) return undefined;
    const struck = striker.strike(input);
    if (typeof struck === 'string' || !isFlyable(struck.launch)) return undefined;
    try {
      return walk.play(struck.launch, true);
    } catch (error) {
      if (isFairflightError(error)) return undefined;
      throw error;
    }
  };
  const whatIsWrong = (): string | undefined => {
    const { clubSpeed, attackAngle, clubPath, faceAngle, dynamicLoft, toe, high, closureRate } = input;
    const strikeOffset = { toe, high };
    const shot = { clubSpeed, attackAngle, clubPath, faceAngle, dynamicLoft, strikeOffset, closureRate };
    try {
      createPlayer(scene, settings).fromDelivery(readRecord(deliveryFields, shot, 'delivery'));
      return undefined;
    } catch (error) {
      return isFairflightError(error) ? error.message : undefined;
    }
  };

  return (way, shots) => {
    const count = wholeSets(shots);
    const column = (): Float64Array => new Float64Array(count).fill(Number.NaN);
    const [strokes, carry, total, fairway] = [column(), column(), column(), column()];
    let failed = 0;
    let example: string | undefined;
    for (let i = 0; i < count; i++) {
      aimAt(i, way);
      const shot = play();
      if (shot === undefined) {
        if (failed++ === 0) example = whatIsWrong();
        continue;
      }
      carry[i] = shot.carry;
      total[i] = shot.total;
      const landing = { x: shot.landingX, z: shot.landingZ };
      const rest = { x: shot.restX, z: shot.side };
      let sum = 0;
      let held = 0;
      for (const hole of holes) {
        const score = scoreOf(landing, rest, hole, counting);
        sum += score.strokes;
        if (score.ending === 'fairway') held++;
      }
      strokes[i] = sum;
      fairway[i] = held / holes.length;
    }
    const refused = failed > MOST_FAILED * count ? refuseSpread(failed, count, example) : undefined;
    return { strokes, carry, total, fairway, refused };
  };
}
