import { isFairflightError } from '../../../src/errors.js';
import { stream } from '../../../src/numerics/index.js';
import type { Door } from '../door.js';
import { doors } from '../doors.js';
import { alike, notANumber, tracesOf } from './judge.js';
import { copyOf, mutate, spotsIn } from './mutate.js';
import { ownError } from './values.js';

/** What may be wrong with a call. */
export const FAULTS = [
  'untyped throws',
  'NaN in a result',
  'calls over one second',
  'inputs changed',
] as const;
/** One of them. */
export type FaultKind = (typeof FAULTS)[number];

/** What came of one call. */
export interface Outcome {
  readonly door: string;
  /** What was done to the valid arguments. */
  readonly changes: readonly string[];
  readonly refused: boolean;
  /** What is wrong, with particulars. */
  readonly faults: readonly (readonly [kind: FaultKind, told: string])[];
}

/** Milliseconds of a call with the arguments of the table, roughly, where they are more than 1. */
export const COSTS: Readonly<Record<string, number>> = {
  'root.playShot (delivery)': 2,
  'root.bestLoft': 2,
  'root.bestLaunch': 5,
  'root.bestLaunch (freely)': 18,
  'root.locateStrike': 9,
  'root.sensitivities': 22,
  'models.flyEnsemble': 5,
  'reference.flyReference': 14,
  'sweep.sweep (latin-hypercube)': 2,
  'sweep.sweep (sobol)': 4,
  'sweep.sweep (sobol-indices)': 3,
  'sweep.sweepChunks': 2,
  'sweep.sobolIndicesOf': 10,
  'node.sweepInParallel': 4,
  'node.sweepToFile': 8,
  'session.judgePattern': 2,
  'session.summariseSession': 6,
  'session.attributeChange': 14,
  'session.judgeTraining': 70,
  'session.calibrate': 300,
  'session.rankChanges': 200,
  'dispersion.strokesOnHole': 8,
  'dispersion.disperse (own shots)': 10,
  'dispersion.disperse (launches)': 16,
  'dispersion.disperse (deliveries)': 19,
  'dispersion.speedToClear': 25,
  'dispersion.fasterOrStraighter': 90,
};

/** Doors that give back the caller's own columns or record, whatever numbers they hold. */
const ECHOES: readonly string[] = ['root.plainColumns', 'sweep.columnOf', 'models.resolveModel (functions)'];

/** Doors with the running sum of their shares: the dearer, the rarer. */
const shares: readonly (readonly [door: Door, upTo: number])[] = (() => {
  let sum = 0;
  return doors.map((door) => {
    sum += 1 / (COSTS[door.name] ?? 1);
    return [door, sum] as const;
  });
})();
const whole = shares.at(-1)?.[1] ?? 0;
const spots = new Map(doors.map((door) => [door, spotsIn(door)]));

/**
 * Call number `index` of a seed: the same two numbers always give the same call. The first calls take the doors in turn,
 * so that each is tried.
 */
export async function fuzzCall(seed: number, index: number): Promise<Outcome> {
  const draw = stream(seed, index);
  const at = draw.uniform() * whole;
  const door = doors[index] ?? shares.find(([, upTo]) => upTo >= at)?.[0];
  if (door === undefined) throw new Error('there are no doors');
  const args = door.args.map(({ valid }) => copyOf(valid));
  const changes: string[] = [];
  for (let left = draw.integer(4); left > 0; left--) changes.push(mutate(args, spots.get(door) ?? [], draw));
  return {
    door: door.name,
    changes: changes.filter((change) => change !== ''),
    ...(await judged(door, args)),
  };
}

/** Calls a door and judges what comes of it. */
export async function judged(
  door: Door,
  args: readonly unknown[],
): Promise<Pick<Outcome, 'refused' | 'faults'>> {
  const faults: [FaultKind, string][] = [];
  let refused = false;
  const before = tracesOf(args);
  const start = performance.now();
  const used = process.cpuUsage();
  try {
    const result = await door.call(...args);
    const found = ECHOES.includes(door.name) ? undefined : notANumber(result);
    if (found !== undefined) faults.push(['NaN in a result', found]);
  } catch (error) {
    refused = isFairflightError(error);
    if (!refused && error !== ownError) faults.push(['untyped throws', String(error)]);
  }
  if (performance.now() - start > 1000) {
    // The processor's time: on a busy machine a call may wait for its turn.
    const { user, system } = process.cpuUsage(used);
    const seconds = (user + system) / 1e6;
    if (seconds > 1) faults.push(['calls over one second', `${seconds.toFixed(2)} s`]);
  }
  if (!alike(before, tracesOf(args))) faults.push(['inputs changed', '']);
  return { refused, faults };
}
