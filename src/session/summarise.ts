import { FairflightError, requireRecord, requireWithin } from '../errors.js';
import {
  mean,
  meanInterval,
  median,
  medianAbsoluteDeviation,
  minimalDetectableChange,
  ROBUST_SD_FACTOR,
  sampleSizeForMeanDifference,
  standardDeviation,
  theilSen,
  typicalErrorWithin,
} from '../numerics/index.js';
import { mph, type Speed, toMph, toYards } from '../units/index.js';
import type { MeasuredShot } from './measured-shot.js';
import { type OddShot, oddShots } from './odd-shots.js';
import {
  inWords,
  QUANTITY_NAMES,
  QUANTITY_WORDS,
  type QuantityName,
  quantityOf,
  type ShotQuantities,
} from './quantities.js';
import { type Banding, bandShots } from './speed-bands.js';

/** What a handful of readings say about one quantity; all in SI. */
export interface Estimate<Q extends number = number> {
  /** Readings. */
  readonly count: number;
  /** Their mean. */
  readonly mean: Q;
  /** Student t interval for the mean; absent with fewer than two readings. */
  readonly interval?: { readonly low: Q; readonly high: Q; readonly level: number };
  /** Standard deviation from shot to shot; absent with fewer than two readings. */
  readonly sd?: Q;
  /** Median. */
  readonly median: Q;
  /** 1.4826 × median absolute deviation, which a few wild readings leave alone. */
  readonly robustSd: Q;
}

/** Estimates of every quantity that was measured. */
export type Estimates = { readonly [K in QuantityName]?: Estimate<ShotQuantities[K]> };

/** One band of a session. */
export interface BandSummary {
  /** Name of the band. */
  readonly name: string;
  /** Places of its shots in the list given. */
  readonly shots: readonly number[];
  /** Every shot of the band counted. */
  readonly quantities: Estimates;
  /** The same without the shots found to be outliers; absent when there are none. */
  readonly withoutOutliers?: Estimates;
}

/** How a quantity changes with club speed. */
export interface Trend {
  /** Change a metre per second of club speed, SI unit of the quantity over m/s. */
  readonly slope: number;
  /** Interval for the slope. */
  readonly interval: { readonly low: number; readonly high: number; readonly level: number };
  /** Value of the line at club speed 0, SI. */
  readonly intercept: number;
  /** Shots used. */
  readonly count: number;
  /** For lengths: the slope in yards a mile per hour. */
  readonly yardsPerMph?: { readonly value: number; readonly low: number; readonly high: number };
  /** True when the interval holds 0, so that these shots show no trend. */
  readonly unclear: boolean;
}

/** How well one quantity repeats from shot to shot within bands; all in SI. */
export interface Repeatability {
  /** Typical error: standard deviation within bands, pooled over them. */
  readonly typicalError: number;
  /** Smallest change between two single shots that is more than scatter, 2.77 typical errors at 95 %. */
  readonly detectableSingle: number;
  /** Smallest change between the means of two bands of this session's usual size. */
  readonly detectableMean: number;
  /** The usual (median) number of readings a band, to which `detectableMean` belongs. */
  readonly shotsPerMean: number;
}

/** How many shots it takes to show a gain of club speed. */
export interface ShotsToShow {
  /** The gain [m/s]. */
  readonly gain: Speed;
  /** Shots needed before and as many after, to find it four times out of five. */
  readonly shots: number;
}

/** What a session of measured shots says. */
export interface SessionSummary {
  /** Shots given. */
  readonly count: number;
  /** What put shots into bands. */
  readonly bandedBy: 'labels' | 'given' | 'found' | 'one';
  /** The bands, slowest first; bands by label in the order of their first shot. */
  readonly bands: readonly BandSummary[];
  /** Shots that belong to no band, and why. */
  readonly unassigned: readonly { readonly shot: number; readonly reason: string }[];
  /** Shots that stand apart from their band. Flagged only: every figure outside `withoutOutliers` counts them. */
  readonly oddShots: readonly OddShot[];
  /** Trend of each quantity with club speed, over all shots (Theil–Sen, which a few wild shots leave alone). */
  readonly trends: { readonly [K in QuantityName]?: Trend };
  /** Repeatability of each quantity. */
  readonly repeatability: { readonly [K in QuantityName]?: Repeatability };
  /** Shots needed to show gains of club speed; empty when club speed does not repeat in any band. */
  readonly shotsToShow: readonly ShotsToShow[];
  /** What a reader should know before leaning on these figures, in words. */
  readonly remarks: readonly string[];
}

/** Options of {@link summariseSession}. */
export interface SessionOptions {
  /**
   * How to put shots into bands. Default: by label when every shot carries one, else by the gaps in club speed, else
   * (no club speed measured) all together.
   */
  readonly bands?: Banding;
  /** Coverage of all intervals; default 0.95. */
  readonly level?: number;
  /** Gains of club speed for `shotsToShow`; default 1, 2 and 3 mph. */
  readonly gains?: readonly Speed[];
}

const POWER = 0.8;

/**
 * Sums up a session of measured shots: bands of club speed, mean and interval of every quantity in each band, shots
 * that stand apart, trends with club speed, and how small a change these shots could show.
 *
 * Shots of one session are treated as independent of each other; two sessions on different days differ by more than
 * their shots do, so compare sessions by their means.
 *
 * Sources: outliers Iglewicz and Hoaglin (1993); trend Sen (1968); typical error and detectable change Hopkins (2000)
 * and Weir (2005); number of shots Cohen (1988), power 0.8.
 * @param shots - at least one; every number finite
 * @throws {@link FairflightError} `invalid-input` for an empty list, a number that is not finite, overlapping bands
 */
export function summariseSession(
  shots: readonly MeasuredShot[],
  options: SessionOptions = {},
): SessionSummary {
  requireRecord('options', options, ['bands', 'level', 'gains']);
  const level = requireWithin('options.level', options.level ?? 0.95, 0.5, 0.999, '');
  checkShots(shots);
  const gains = options.gains ?? [mph(1), mph(2), mph(3)];
  gains.forEach((gain, i) => {
    requireWithin(`options.gains[${i}]`, gain, 1e-3, 90, 'm/s');
  });

  const banded = bandShots(shots, options.bands);
  const odd = oddShots(shots, banded.bands);
  const outliers = new Set(odd.filter((entry) => entry.verdict === 'outlier').map((entry) => entry.shot));
  const bands = banded.bands.map((band): BandSummary => {
    const kept = band.shots.filter((shot) => !outliers.has(shot));
    return {
      name: band.name,
      shots: band.shots,
      quantities: estimatesOf(shots, band.shots, level),
      ...(kept.length < band.shots.length && { withoutOutliers: estimatesOf(shots, kept, level) }),
    };
  });
  const repeatability = repeatabilityOf(shots, bands, level);
  const trends = trendsOf(shots, level);
  const shotsToShow = shotsFor(gains, repeatability.clubSpeed?.typicalError, level);
  return {
    count: shots.length,
    bandedBy: banded.by,
    bands,
    unassigned: banded.unassigned,
    oddShots: odd,
    trends,
    repeatability,
    shotsToShow,
    remarks: remarksOn(bands, odd, trends, shotsToShow, level),
  };
}

function estimatesOf(shots: readonly MeasuredShot[], members: readonly number[], level: number): Estimates {
  const estimates: { [K in QuantityName]?: Estimate } = {};
  for (const name of QUANTITY_NAMES) {
    const values = valuesOf(shots, members, name);
    if (values.length > 0) estimates[name] = estimateOf(values, level);
  }
  return estimates as Estimates;
}

function estimateOf(values: readonly number[], level: number): Estimate {
  const several = values.length >= 2;
  return {
    count: values.length,
    mean: mean(values),
    ...(several && { interval: meanInterval(values, level), sd: standardDeviation(values) }),
    median: median(values),
    robustSd: ROBUST_SD_FACTOR * medianAbsoluteDeviation(values),
  };
}

function valuesOf(shots: readonly MeasuredShot[], members: readonly number[], name: QuantityName): number[] {
  return members.flatMap((shot) => quantityOf(shots[shot] ?? {}, name) ?? []);
}

function trendsOf(shots: readonly MeasuredShot[], level: number): SessionSummary['trends'] {
  const trends: { [K in QuantityName]?: Trend } = {};
  for (const name of QUANTITY_NAMES) {
    if (name === 'clubSpeed') continue;
    const pairs = shots.flatMap((shot) => {
      const value = quantityOf(shot, name);
      return value === undefined || shot.clubSpeed === undefined ? [] : [{ speed: shot.clubSpeed, value }];
    });
    const speeds = pairs.map((pair) => pair.speed);
    if (pairs.length < 3 || new Set(speeds).size < 2) continue;
    const line = theilSen(
      speeds,
      pairs.map((pair) => pair.value),
      level,
    );
    const { low, high } = line.interval;
    trends[name] = {
      slope: line.slope,
      interval: line.interval,
      intercept: line.intercept,
      count: line.count,
      ...(QUANTITY_WORDS[name].unit === ' yd' && {
        yardsPerMph: { value: yardsPerMph(line.slope), low: yardsPerMph(low), high: yardsPerMph(high) },
      }),
      unclear: low <= 0 && high >= 0,
    };
  }
  return trends;
}

/** Metres a metre per second to yards a mile per hour. */
function yardsPerMph(slope: number): number {
  return toYards((slope * mph(1)) as Parameters<typeof toYards>[0]);
}

function repeatabilityOf(
  shots: readonly MeasuredShot[],
  bands: readonly BandSummary[],
  level: number,
): SessionSummary['repeatability'] {
  const all: { [K in QuantityName]?: Repeatability } = {};
  for (const name of QUANTITY_NAMES) {
    const groups = bands
      .map((band) => valuesOf(shots, band.shots, name))
      .filter((group) => group.length >= 2);
    if (groups.length === 0) continue;
    const typicalError = typicalErrorWithin(groups);
    const shotsPerMean = median(groups.map((group) => group.length));
    all[name] = {
      typicalError,
      detectableSingle: minimalDetectableChange(typicalError, 1, level),
      detectableMean: minimalDetectableChange(typicalError, shotsPerMean, level),
      shotsPerMean,
    };
  }
  return all;
}

function shotsFor(gains: readonly Speed[], typicalError: number | undefined, level: number): ShotsToShow[] {
  if (typicalError === undefined) return [];
  return gains.map((gain) => ({
    gain,
    shots: sampleSizeForMeanDifference(gain, typicalError, POWER, level),
  }));
}

function remarksOn(
  bands: readonly BandSummary[],
  odd: readonly OddShot[],
  trends: SessionSummary['trends'],
  shotsToShow: readonly ShotsToShow[],
  level: number,
): string[] {
  const remarks: string[] = [];
  const percent = `${Math.round(100 * level)} %`;
  for (const band of bands) {
    const name = (['carry', 'total', 'ballSpeed', 'clubSpeed'] as const).find(
      (key) => band.quantities[key] !== undefined,
    );
    const estimate = name === undefined ? undefined : band.quantities[name];
    if (name === undefined || estimate === undefined || estimate.count >= 10) continue;
    const { label } = QUANTITY_WORDS[name];
    if (estimate.interval === undefined) {
      remarks.push(`${band.name}: one shot only, so nothing can be said about its scatter.`);
      continue;
    }
    const half = inWords(name, 0.5 * (estimate.interval.high - estimate.interval.low));
    remarks.push(
      `${band.name}: with ${estimate.count} shots the mean ${label} is known to ±${half} only (${percent}); smaller differences are noise.`,
    );
  }
  const outliers = odd.filter((entry) => entry.verdict === 'outlier').length;
  const stragglers = odd.length - outliers;
  if (outliers > 0) {
    remarks.push(
      `${outliers === 1 ? '1 shot stands' : `${outliers} shots stand`} far apart and ${outliers === 1 ? 'is' : 'are'} left out of the figures marked so, not of the others: check whether it was a misread or a mishit.`,
    );
  }
  if (stragglers > 0) {
    remarks.push(
      `${stragglers === 1 ? '1 shot looks' : `${stragglers} shots look`} unusual, but no more than chance makes in bands this small: kept everywhere.`,
    );
  }
  const line = trends.carry?.yardsPerMph;
  if (line !== undefined && trends.carry !== undefined) {
    const range = `${line.low.toFixed(1)} to ${line.high.toFixed(1)} yd a mph`;
    remarks.push(
      trends.carry.unclear
        ? `Carry against club speed: ${range} (${percent}), which holds no gain at all; these shots show no trend.`
        : `Carry against club speed: ${line.value.toFixed(1)} yd a mph, ${range} (${percent}).`,
    );
  }
  const first = shotsToShow[0];
  if (first !== undefined) {
    remarks.push(
      `To show a gain of ${toMph(first.gain).toFixed(0)} mph takes ${first.shots} shots before and ${first.shots} after, at this player's scatter.`,
    );
  }
  return remarks;
}

function checkShots(shots: readonly MeasuredShot[]): void {
  if (!Array.isArray(shots) || shots.length === 0) {
    throw new FairflightError('invalid-input', 'a session needs at least one shot', {
      field: 'shots',
      value: shots,
    });
  }
  shots.forEach((shot, i) => {
    for (const name of QUANTITY_NAMES) {
      const value = quantityOf(shot, name);
      if (value !== undefined && !Number.isFinite(value)) {
        throw new FairflightError(
          'invalid-input',
          `shots[${i}].${name} must be a finite number, got ${value}`,
          {
            field: `shots[${i}].${name}`,
            value,
          },
        );
      }
    }
  });
}
