import type { Launch } from '../inputs/launch.js';
import { type MeasuredShot, readMeasuredShots } from '../inputs/measured-shot.js';
import { readOptions, requireKnown } from '../inputs/read.js';
import { refusal } from '../inputs/refuse.js';
import { bootstrap, shapley } from '../numerics/index.js';
import { type ResolvedScene, readScene, type Scene, withDefaults } from '../scene/scene.js';
import { createWalk } from '../shot/walk.js';
import { type Length, si } from '../units/index.js';
import {
  type AttributionOptions,
  type AttributionSettings,
  attributionFields,
  attributionSettings,
  type ShotGroups,
} from './attribution-options.js';
import { launchIn } from './launch-of.js';
import { roomForMishits } from './mean-with-mishits.js';
import { AIR_BIT, type ChangeFactor, FACTORS, flyMixtures, type Mixtures, pairsOf } from './mixtures.js';

/** A change of distance with its interval [m]. */
export interface DistanceChange {
  /** Best estimate [m]. */
  readonly value: Length;
  /** Lower end of the interval [m]. */
  readonly low: Length;
  /** Upper end of the interval [m]. */
  readonly high: Length;
}

/** A change of carry or total split into causes. */
export interface SplitChange {
  /** Change of the group mean that the model gives. */
  readonly modelled: DistanceChange;
  /** Shares of the causes, which add up exactly to `modelled`. */
  readonly causes: { readonly [K in ChangeFactor]: DistanceChange };
  /** Change of the group mean that was measured; absent unless every shot used has the reading. */
  readonly measured?: DistanceChange;
  /** `measured` less `modelled`: what the model does not explain. */
  readonly unexplained?: DistanceChange;
}

/** Result of {@link attributeChange}: after less before. */
export interface ChangeAttribution {
  /** Change of the mean carry. */
  readonly carry: SplitChange;
  /** Change of the mean total; the run in it is known to ±25 %. */
  readonly total: SplitChange;
  /** Coverage of the intervals. */
  readonly level: number;
  /** Shots used. */
  readonly used: { readonly before: number; readonly after: number };
  /** Shots that lack readings the model needs. */
  readonly leftOut: readonly {
    readonly group: 'before' | 'after';
    readonly shot: number;
    readonly missing: readonly string[];
  }[];
  /** What a reader should know, in words. */
  readonly remarks: readonly string[];
}

/** The scene of either group, with its defaults filled in. @internal */
export interface GroupScenes {
  readonly before: ResolvedScene;
  readonly after: ResolvedScene;
}

/**
 * Splits the change of mean carry and total between two groups of shots into ball speed, launch, spin rate, spin axis
 * and air. Every shot of one group is paired with shots of the other, and for each pair the model flies all mixtures
 * of the two (ball speed of one with the spin of the other, and so on); a cause's share is its Shapley value, the
 * average over all orders of changing one thing after the other. Intervals resample the shots of both groups (percentile
 * bootstrap, stretched for few shots as Student's t and Welch's degrees of freedom are); they say what the scatter of so
 * few shots leaves open, not what the model gets wrong: that is `unexplained`. They rest on the shots given: a mishit that
 * neither group shows is in none of them. A group of one shot shows no scatter, so that the intervals
 * hold that of the other group only; `remarks` says so.
 *
 * @param groups - `before` and `after`; shots without ball speed, launch angle or spin rate are left out and listed
 * @param scene - what both groups share; air and wind of either may be given in the options
 * @param options - air and wind of the groups, coverage, resamples, seed, pairs, tolerance and time limit
 * @throws `FairflightError` `invalid-input` or `outside-range` naming the field, also when a group has no usable shot
 */
export function attributeChange(
  groups: ShotGroups,
  scene: Scene = {},
  options: AttributionOptions = {},
): ChangeAttribution {
  const given = readOptions(attributionFields, options);
  const shared = readScene(scene);
  const { before, after } = requireKnown({ before: true, after: true }, groups, 'groups');
  return attribute(
    { before: readMeasuredShots(before, 'before'), after: readMeasuredShots(after, 'after') },
    {
      before: withDefaults({ ...shared, ...given.conditions?.before }),
      after: withDefaults({ ...shared, ...given.conditions?.after }),
    },
    attributionSettings(given),
  );
}

/** {@link attributeChange} with inputs already read. @throws FairflightError when a group has no usable shot @internal */
export function attribute(
  groups: ShotGroups,
  scenes: GroupScenes,
  settings: AttributionSettings,
): ChangeAttribution {
  const first = usable('before', groups.before);
  const second = usable('after', groups.after);
  const pairs = pairsOf(first.launches.length, second.launches.length, settings.pairs, settings.seed);
  const mixtures = flyMixtures(
    { launches: first.launches, walk: createWalk(scenes.before, settings.flight) },
    { launches: second.launches, walk: createWalk(scenes.after, settings.flight) },
    pairs,
    sameAir(scenes),
  );
  const split = (of: 'carry' | 'total'): SplitChange =>
    splitChange(mixtures[of], pairs, readings(first.shots, of), readings(second.shots, of), settings);
  return {
    carry: split('carry'),
    total: split('total'),
    level: settings.level,
    used: { before: first.launches.length, after: second.launches.length },
    leftOut: [...first.leftOut, ...second.leftOut],
    remarks: remarksOn(first, second),
  };
}

function sameAir({ before, after }: GroupScenes): boolean {
  const told = ({ air, windAlong, windAcross, profile }: ResolvedScene): string =>
    JSON.stringify([air, windAlong, windAcross, profile]);
  return told(before) === told(after);
}

interface UsableGroup {
  readonly shots: readonly MeasuredShot[];
  readonly launches: readonly Launch[];
  readonly leftOut: ChangeAttribution['leftOut'];
}

function usable(group: 'before' | 'after', shots: readonly MeasuredShot[]): UsableGroup {
  const kept: MeasuredShot[] = [];
  const launches: Launch[] = [];
  const leftOut: { group: 'before' | 'after'; shot: number; missing: readonly string[] }[] = [];
  shots.forEach((shot, i) => {
    const launch = launchIn(shot);
    if ('missing' in launch) {
      leftOut.push({ group, shot: i, missing: launch.missing });
    } else {
      kept.push(shot);
      launches.push(launch);
    }
  });
  if (kept.length === 0) {
    throw refusal(
      group,
      `${group} has no shot with ball speed, launch angle and spin rate (${shots.length} given)`,
      { value: shots.length },
    );
  }
  return { shots: kept, launches, leftOut };
}

/** Places of the groups. */
const [BEFORE, AFTER] = [0, 1] as const;

/** Causes by which a bad shot loses distance and never gains any. */
const LOWERED: readonly ChangeFactor[] = ['ballSpeed', 'spinAxis'];

/**
 * Of a change for which mishits count, the lower end also leaves room for mishits not yet seen after, the upper end before:
 * squares of the reaches add up, as in Zou G Y, Donner A (2008) Construction of confidence limits about effect measures, Stat.
 * Med. 27, 1693–1702 (from memory).
 */
function splitChange(
  mixtures: Mixtures,
  pairs: readonly (readonly [number, number])[],
  readingsBefore: readonly number[] | undefined,
  readingsAfter: readonly number[] | undefined,
  settings: { readonly level: number; readonly resamples: number; readonly seed: number },
): SplitChange {
  const measured = readingsBefore !== undefined && readingsAfter !== undefined;
  const statistic = ([sampleBefore = [], sampleAfter = []]: readonly (readonly number[])[]): number[] => {
    const shares = sharesOf(mixtures, pairs, sampleBefore, sampleAfter);
    const modelled = averageAt(mixtures.after, sampleAfter) - averageAt(mixtures.before, sampleBefore);
    if (!measured) return [...shares, modelled];
    const change = averageAt(readingsAfter, sampleAfter) - averageAt(readingsBefore, sampleBefore);
    return [...shares, modelled, change, change - modelled];
  };
  const groups = [mixtures.before.map((_, i) => i), mixtures.after.map((_, j) => j)];
  const n = FACTORS.length;
  const intervals = bootstrap(groups, statistic, { ...settings, jackknife: true }).map(
    ({ estimate, low, high, stretch = 1, groupErrors = [] }, k): DistanceChange => {
      const lowered = k === n || k === n + 1 || LOWERED.some((factor) => factor === FACTORS[k]);
      const wider = (end: number, g: number): number => {
        const size = groups[g]?.length ?? 0;
        const reach = stretch * Math.abs(end - estimate);
        const room = roomForMishits(size, (groupErrors[g] ?? 0) * Math.sqrt(size), settings.level);
        return lowered ? Math.sqrt(reach ** 2 + room) - reach : 0;
      };
      return {
        value: si(estimate),
        low: si(estimate + stretch * (low - estimate) - wider(low, AFTER)),
        high: si(estimate + stretch * (high - estimate) + wider(high, BEFORE)),
      };
    },
  );
  const at = (k: number): DistanceChange => intervals[k] ?? { value: si(0), low: si(0), high: si(0) };
  return {
    modelled: at(n),
    causes: Object.fromEntries(FACTORS.map((factor, k) => [factor, at(k)])) as SplitChange['causes'],
    ...(measured && { measured: at(n + 1), unexplained: at(n + 2) }),
  };
}

/** Shapley shares for a (re)sample of both groups: pairs count as often as both their shots were drawn. */
function sharesOf(
  mixtures: Mixtures,
  pairs: readonly (readonly [number, number])[],
  sampleBefore: readonly number[],
  sampleAfter: readonly number[],
): number[] {
  const drawnBefore = countsOf(sampleBefore, mixtures.before.length);
  const drawnAfter = countsOf(sampleAfter, mixtures.after.length);
  const weights = pairs.map(([i, j]) => (drawnBefore[i] ?? 0) * (drawnAfter[j] ?? 0));
  const sum = weights.reduce((total, weight) => total + weight, 0);
  const last = 2 ** FACTORS.length - 1;
  const start = averageAt(mixtures.before, sampleBefore);
  const end = averageAt(mixtures.after, sampleAfter);
  return shapley(FACTORS.length, (coalition) => {
    const c = mixtures.sameAir ? coalition & ~AIR_BIT : coalition;
    if (c === 0) return start;
    if (coalition === last || (mixtures.sameAir && c === (last & ~AIR_BIT))) return end;
    const values = mixtures.mixed[c] ?? new Float64Array(0);
    let weighted = 0;
    for (let k = 0; k < weights.length; k++) weighted += (weights[k] ?? 0) * (values[k] ?? 0);
    return weighted / sum;
  });
}

function countsOf(sample: readonly number[], size: number): Float64Array {
  const counts = new Float64Array(size);
  for (const i of sample) counts[i] = (counts[i] ?? 0) + 1;
  return counts;
}

function averageAt(values: readonly number[], sample: readonly number[]): number {
  let sum = 0;
  for (const i of sample) sum += values[i] ?? 0;
  return sum / sample.length;
}

function readings(shots: readonly MeasuredShot[], of: 'carry' | 'total'): readonly number[] | undefined {
  const values = shots.flatMap((shot) => shot[of] ?? []);
  return values.length === shots.length ? values : undefined;
}

function remarksOn(first: UsableGroup, second: UsableGroup): string[] {
  const remarks: string[] = [];
  const shots = [...first.shots, ...second.shots];
  const noTilt = shots.filter((shot) => shot.spinAxisTilt === undefined).length;
  const noDirection = shots.filter((shot) => shot.launchDirection === undefined).length;
  const leftOut = first.leftOut.length + second.leftOut.length;
  if (noTilt > 0)
    remarks.push(`${noTilt} of ${shots.length} shots have no spin axis reading; level was assumed.`);
  if (noDirection > 0) {
    remarks.push(`${noDirection} of ${shots.length} shots have no launch direction; straight was assumed.`);
  }
  if (leftOut > 0)
    remarks.push(`${leftOut} shots lack ball speed, launch angle or spin rate and were left out.`);
  const fewest = Math.min(first.shots.length, second.shots.length);
  if (fewest === 1) remarks.push('One shot in a group shows no scatter: the intervals are too narrow.');
  return remarks;
}
