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
import { samplerFor } from './sampler.js';
import { type DeliverySd, deliverySdFields, type Spread } from './spread.js';

/** A way to play: how fast, and with how much of today's scatter of path and face, and of the strike. @internal */
export interface WayToPlay {
  readonly clubSpeed: Speed;
  readonly direction: number;
  readonly strike: number;
}

/** Whose shots, and how they are drawn. @internal */
export interface Drawing {
  readonly usual: Delivery;
  readonly spread: Spread;
  readonly draws: CloudOptions;
}

/**
 * Plays the first so many shots in one way and hands over each with its number, to be read before the next; those outside
 * what can be played are left out.
 * @returns why this way of playing cannot be counted, where more shots failed than a spread may have
 * @internal
 */
export type PlayDrawn = (
  way: WayToPlay,
  shots: number,
  withRun: boolean,
  take: (i: number, shot: WalkResult) => void,
) => FairflightError | undefined;

/** Shots rounded up to as many from every set of points. @internal */
export function wholeSets(shots: number): number {
  return Math.ceil(shots / REPLICATES) * REPLICATES;
}

/** What scatters, as numbers, each with its range. */
const FIELDS = { ...deliveryFields, ...strikeOffsetFields };
const NUMBERS = Object.keys(deliverySdFields) as (keyof DeliverySd)[];

/**
 * Draws a golfer's shots once and plays them in any way: shot number i has the same luck each time, so that two ways
 * differ by what the way does to it. The walk of `playShot` without its records.
 * @internal
 */
export function drawnShots(
  scene: ResolvedScene,
  settings: ShotSettings,
  { usual, spread, draws: drawing }: Drawing,
): PlayDrawn {
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
  const play = (withRun: boolean): WalkResult | undefined => {
    if (!NUMBERS.every((name) => allows(FIELDS[name], input[name]))) return undefined;
    const struck = striker.strike(input);
    if (typeof struck === 'string' || !isFlyable(struck.launch)) return undefined;
    try {
      return walk.play(struck.launch, withRun);
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

  return (way, shots, withRun, take) => {
    let failed = 0;
    let example: string | undefined;
    for (let i = 0; i < shots; i++) {
      aimAt(i, way);
      const shot = play(withRun);
      if (shot !== undefined) take(i, shot);
      else if (failed++ === 0) example = whatIsWrong();
    }
    return failed > MOST_FAILED * shots ? refuseSpread(failed, shots, example) : undefined;
  };
}
