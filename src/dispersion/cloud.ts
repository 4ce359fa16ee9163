import { FairflightError, isFairflightError, requireOneOf, requireRecord, requireWithin } from '../errors.js';
import { type PointSet, SOBOL_DIMENSIONS, sobol, stream } from '../numerics/index.js';
import type { Launch } from '../scene/index.js';
import { playShot, type ShotSetup } from '../shot/index.js';
import type { ModelWarning } from '../source.js';
import type { Delivery } from '../strike/index.js';
import { type Spread, samplerFor } from './spread.js';

/** How a cloud of shots is drawn. */
export interface CloudOptions {
  /** Shots, 64 to 1,000,000; default 2,048. Rounded up to a multiple of 8. */
  readonly shots?: number;
  /**
   * `sobol` (default): eight independently scrambled sets of evenly spread points, whose estimates settle far sooner.
   * `random`: independent draws, one stream a shot.
   */
  readonly sampling?: 'sobol' | 'random';
  /** Seed, a whole number; default 0. Shot number i of a seed is always the same shot. */
  readonly seed?: number;
}

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
}

/** A cloud of shots played. @internal */
export interface Cloud {
  readonly columns: ShotColumns;
  readonly failures: readonly { readonly shot: number; readonly reason: string }[];
  readonly warnings: readonly { readonly warning: ModelWarning; readonly shots: number }[];
}

/** Independent parts of a cloud, whose differences give the Monte Carlo error. @internal */
export const REPLICATES = 8;

/** @internal */
export const CLOUD_OPTION_NAMES = ['shots', 'sampling', 'seed'] as const;

/** Plays shots scattered about the usual one. @throws FairflightError @internal */
export function playCloud(
  usual: Delivery | Launch,
  spread: Spread<Delivery> | Spread<Launch>,
  setup: ShotSetup,
  options: CloudOptions,
): Cloud {
  requireRecord('options', options, CLOUD_OPTION_NAMES);
  const shots = requireWithin('options.shots', options.shots ?? 2048, 64, 1e6, '');
  const sampling = requireOneOf('options.sampling', options.sampling ?? 'sobol', [
    'sobol',
    'random',
  ] as const);
  const sampler = samplerFor(usual, spread);
  const each = Math.ceil(shots / REPLICATES);
  const points = pointsFor(sampling, sampler.dimensions, options.seed ?? 0);

  // The usual shot first: what is wrong with it or with the setup is an error, not a failed draw.
  playShot(usual, setup);
  const columns = { shot: [], carry: [], total: [], landingX: [], landingZ: [], restX: [], restZ: [] } as {
    [K in keyof ShotColumns]: number[];
  };
  const failures: { shot: number; reason: string }[] = [];
  const warnings = new Map<string, { warning: ModelWarning; shots: number }>();
  for (let i = 0; i < each * REPLICATES; i++) {
    try {
      const shot = playShot(sampler.shotAt(points(i)), setup);
      const rest = shot.run?.restsAt ?? shot.flight.landing.position;
      columns.shot.push(i);
      columns.carry.push(shot.carry);
      columns.total.push(shot.total);
      columns.landingX.push(shot.flight.landing.position.x);
      columns.landingZ.push(shot.flight.landing.position.z);
      columns.restX.push(rest.x);
      columns.restZ.push(rest.z);
      for (const warning of shot.warnings) note(warnings, warning);
    } catch (error) {
      if (!isFairflightError(error)) throw error;
      failures.push({ shot: i, reason: (error as FairflightError).message });
    }
  }
  if (failures.length > 0.05 * each * REPLICATES) {
    throw new FairflightError(
      'outside-range',
      `${failures.length} of ${each * REPLICATES} scattered shots are outside what the models take, so the spread is wider than a player can swing; for example: ${failures[0]?.reason}`,
      { field: 'spread', value: failures.length },
    );
  }
  return { columns, failures, warnings: [...warnings.values()] };
}

function pointsFor(
  sampling: 'sobol' | 'random',
  dimensions: number,
  seed: number,
): (shot: number) => ArrayLike<number> {
  const buffer = new Float64Array(dimensions);
  if (sampling === 'random' || dimensions > SOBOL_DIMENSIONS) {
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

/** One entry a model and quantity, with the value furthest outside and the number of shots. */
function note(warnings: Map<string, { warning: ModelWarning; shots: number }>, warning: ModelWarning): void {
  const key = `${warning.model} ${warning.quantity}`;
  const before = warnings.get(key);
  const outside = (w: ModelWarning): number => Math.max(w.range.min - w.value, w.value - w.range.max);
  const worse = before === undefined || outside(warning) > outside(before.warning);
  warnings.set(key, { warning: worse ? warning : before.warning, shots: (before?.shots ?? 0) + 1 });
}
