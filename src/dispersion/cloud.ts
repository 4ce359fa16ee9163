import { type ErrorCode, type FairflightError, isFairflightError } from '../errors.js';
import { choice, count, type Declared, optional } from '../inputs/field.js';
import { frozen } from '../inputs/frozen.js';
import { refusal } from '../inputs/refuse.js';
import { seedField } from '../inputs/seed.js';
import { type PointSet, sobol, stream } from '../numerics/index.js';
import type { ResolvedScene } from '../scene/scene.js';
import { createPlainPlayer, type PlainPlayer } from '../shot/plain-player.js';
import { createPlayer } from '../shot/player.js';
import { type ShotOptions, shotSettings } from '../shot/shot-options.js';
import { readStart } from '../shot/start.js';
import type { ModelWarning } from '../warnings/index.js';
import { type Sampler, type Scatter, samplerFor } from './sampler.js';
import type { ShotLie } from './shot-lie.js';

/** How a cloud of shots is drawn. */
export interface CloudOptions {
  /** Shots, 64 to 1,000,000; default 2,048. Rounded up to a multiple of 8. */
  readonly shots?: number;
  /**
   * `sobol` (default): eight independently scrambled sets of evenly spread points, whose estimates settle far sooner.
   * `random`: independent draws, one stream a shot.
   */
  readonly sampling?: 'sobol' | 'random';
  /** Seed, a whole number, 0 to 2⁵³ − 1; default 0. Shot number i of a seed is always the same shot. */
  readonly seed?: number;
}

/** Declaration of {@link CloudOptions}. @internal */
export const cloudOptionFields: Declared<CloudOptions> = /* @__PURE__ */ frozen(() => ({
  shots: optional(count(64, 1_000_000, 2048, 'shots')),
  sampling: optional(choice<'sobol' | 'random'>(['sobol', 'random'], 'sampling')),
  seed: optional(seedField),
}));

/** Shots as columns, one number a shot, distances in metres. x is along the target line, z to the right of it. */
export interface ShotColumns {
  /** Number of the shot, counted from 0; those that failed are missing. */
  readonly shot: readonly number[];
  /** Carry. */
  readonly carry: readonly number[];
  /** Total distance. */
  readonly total: readonly number[];
  /** Where the ball came down, along the target line. */
  readonly landingX: readonly number[];
  /** Where the ball came down, to the right of it. */
  readonly landingZ: readonly number[];
  /** Where the ball rests, along the target line. */
  readonly restX: readonly number[];
  /** Where the ball rests, to the right of it. */
  readonly restZ: readonly number[];
  /** Lie; given with a fairway. */
  readonly lie?: readonly ShotLie[];
}

/** A scattered shot that cannot be played, in no figure. */
export interface FailedShot {
  /** Number of the shot, counted from 0. */
  readonly shot: number;
  /** Kind of failure: `outside-range`, or `not-converged` with a coefficient model of one's own. */
  readonly code: ErrorCode;
  /** The quantity of the shot that is outside what can be played, for example `delivery.dynamicLoft`. */
  readonly field?: string;
  /** What is wrong with it, for people. */
  readonly message: string;
}

/** A warning that shots of a cloud raise. */
export interface CloudWarning {
  /** The warning of the shot furthest outside. */
  readonly warning: ModelWarning;
  /** Number of shots that raise it. */
  readonly shots: number;
}

/** A cloud of shots played. @internal */
export interface Cloud {
  readonly columns: ShotColumns;
  readonly failures: readonly FailedShot[];
  readonly warnings: readonly CloudWarning[];
}

/** Independent parts of a cloud, whose differences give the Monte Carlo error. @internal */
export const REPLICATES = 8;

/** Greatest share of scattered shots that may fail before the spread is refused. @internal */
export const MOST_FAILED = 0.05;

/** Plays the usual shot and then a cloud about it. @throws FairflightError as {@link playCloud} @internal */
export function playScattered(
  scatter: Scatter,
  scene: ResolvedScene,
  options: ShotOptions & CloudOptions,
): Cloud {
  const settings = shotSettings(options);
  const player = createPlayer(scene, settings);
  const sampler = samplerFor(scatter);
  // The usual shot first: what is wrong with it is an error, not a failed draw.
  player.play(scatter);
  return playCloud(sampler, createPlainPlayer(scene, settings), options);
}

/**
 * Plays shots scattered about the usual one. A shot thrown outside what a delivery or launch may have is left out and
 * listed as failed, not bent back.
 * @throws FairflightError for the spread when more than one in twenty fails
 * @internal
 */
export function playCloud(
  sampler: Sampler,
  { play, warnings: warned }: PlainPlayer,
  { shots = 2048, sampling = 'sobol', seed = 0 }: CloudOptions,
): Cloud {
  const all = Math.ceil(shots / REPLICATES) * REPLICATES;
  const points = pointsFor(sampling, sampler.dimensions, seed);
  const columns = { shot: [], carry: [], total: [], landingX: [], landingZ: [], restX: [], restZ: [] } as {
    [K in Exclude<keyof ShotColumns, 'lie'>]: number[];
  };
  const failures: FailedShot[] = [];
  const warnings = new Map<string, CloudWarning>();
  for (let i = 0; i < all; i++) {
    try {
      const shot = play(readStart(sampler.shotAt(points(i))));
      columns.shot.push(i);
      columns.carry.push(shot.carry);
      columns.total.push(shot.total);
      columns.landingX.push(shot.landingX);
      columns.landingZ.push(shot.landingZ);
      columns.restX.push(shot.restX);
      columns.restZ.push(shot.side);
      for (const warning of warned()) note(warnings, warning);
    } catch (error) {
      if (!isFairflightError(error)) throw error;
      const { code, field, message } = error;
      failures.push({ shot: i, code, ...(field !== undefined && { field }), message });
    }
  }
  if (failures.length > MOST_FAILED * all) throw refuseSpread(failures.length, all, failures[0]?.message);
  return { columns, failures, warnings: [...warnings.values()] };
}

/** The refusal of a spread of whose shots too many failed, with what is wrong with one of them. @internal */
export function refuseSpread(failed: number, shots: number, example: string | undefined): FairflightError {
  return refusal(
    'spread',
    `${failed} of ${shots} scattered shots are outside what the models take, so the spread is wider than a player can swing; for example: ${example}`,
    { value: failed },
    'outside-range',
  );
}

/** The points of the cube at which shots are drawn; each call overwrites the last point. @internal */
export function pointsFor(
  sampling: 'sobol' | 'random',
  dimensions: number,
  seed: number,
): (shot: number) => ArrayLike<number> {
  const buffer = new Float64Array(dimensions);
  if (sampling === 'random') {
    return (shot) => {
      const random = stream(seed, shot);
      for (let j = 0; j < dimensions; j++) buffer[j] = random.uniform();
      return buffer;
    };
  }
  const sets = Array.from(
    { length: REPLICATES },
    (_, r): PointSet => sobol(dimensions, { scramble: 'owen', seed: stream(seed, r).integer(2 ** 48) }),
  );
  // Shots go round the sets, so that shot number i is the same one however many there are.
  return (shot) => sets[shot % REPLICATES]?.point(Math.floor(shot / REPLICATES), buffer) ?? buffer;
}

/** One entry a code, model and quantity, with the value furthest outside and the number of shots. */
function note(warnings: Map<string, CloudWarning>, warning: ModelWarning): void {
  const key = `${warning.code} ${warning.model} ${warning.quantity}`;
  const before = warnings.get(key);
  const outside = (w: ModelWarning): number => Math.max(w.range.min - w.value, w.value - w.range.max);
  const worse = before === undefined || outside(warning) > outside(before.warning);
  warnings.set(key, { warning: worse ? warning : before.warning, shots: (before?.shots ?? 0) + 1 });
}
