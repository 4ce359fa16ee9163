import { type Declared, optional } from '../inputs/field.js';
import { frozen } from '../inputs/frozen.js';
import { type MeasuredShot, readMeasuredShots } from '../inputs/measured-shot.js';
import { readOptions } from '../inputs/read.js';
import {
  fewestForSlope,
  type Interval,
  mean,
  meanInterval,
  median,
  medianAbsoluteDeviation,
  minimalDetectableChange,
  ROBUST_SD_FACTOR,
  standardDeviation,
  theilSen,
  typicalErrorWithin,
} from '../numerics/index.js';
import { mph, toYards } from '../units/index.js';
import { levelField, USUAL_LEVEL } from './level.js';
import { meanIntervalWithMishits } from './mean-with-mishits.js';
import { oddShots } from './odd-shots.js';
import { QUANTITY_NAMES, QUANTITY_WORDS, type QuantityName, quantityOf } from './quantities.js';
import { remarksOn } from './session-remarks.js';
import type {
  BandSummary,
  Repeatability,
  SampleEstimate,
  SampleEstimates,
  SessionSummary,
  SessionTrend,
} from './session-summary.js';
import { type Banding, bandingField, bandShots } from './speed-bands.js';

/** Options of {@link summariseSession}. */
export interface SessionOptions {
  /**
   * How to put shots into bands. Default: by label when every shot carries one, else by the gaps in club speed, else
   * (no club speed measured) all together.
   */
  readonly bands?: Banding;
  /** Coverage of all intervals, 0.5 to 0.999; default 0.95. */
  readonly level?: number;
}

/** Declaration of {@link SessionOptions}. @internal */
export const sessionOptionFields: Declared<SessionOptions> = /* @__PURE__ */ frozen(() => ({
  bands: bandingField,
  level: optional(levelField),
}));

/**
 * Sums up a session of measured shots: bands of club speed, mean and interval of every quantity in each band, shots
 * that stand apart, trends with club speed, and how well each quantity repeats.
 *
 * Shots of one session are treated as independent of each other; two sessions on different days differ by more than
 * their shots do, so compare sessions by their means.
 *
 * Sources: outliers Iglewicz and Hoaglin (1993); trend Sen (1968); typical error and detectable change Hopkins (2000)
 * and Weir (2005).
 * @param shots - at least one
 * @param options - bands and coverage; each has a default
 * @throws `FairflightError` `invalid-input` or `outside-range` naming the field, also for an empty list and for bands
 *   that overlap
 */
export function summariseSession(
  shots: readonly MeasuredShot[],
  options: SessionOptions = {},
): SessionSummary {
  const settings = readOptions(sessionOptionFields, options);
  const { level = USUAL_LEVEL } = settings;
  const measured = readMeasuredShots(shots, 'shots', 1);
  const banded = bandShots(measured, settings.bands);
  const odd = oddShots(measured, banded.bands);
  const outliers = new Set(odd.filter((entry) => entry.verdict === 'outlier').map((entry) => entry.shot));
  const bands = banded.bands.map((band): BandSummary => {
    const kept = band.shots.filter((shot) => !outliers.has(shot));
    return {
      name: band.name,
      shots: band.shots,
      quantities: estimatesOf(measured, band.shots, level, meanIntervalWithMishits),
      ...(kept.length < band.shots.length && {
        withoutOutliers: estimatesOf(measured, kept, level, (values) => meanInterval(values, level)),
      }),
    };
  });
  const repeatability = repeatabilityOf(measured, bands, level);
  const trends = trendsOf(measured, level);
  return {
    count: measured.length,
    bandedBy: banded.by,
    bands,
    unassigned: banded.unassigned,
    oddShots: odd,
    trends,
    repeatability,
    remarks: remarksOn(bands, odd, trends, level),
  };
}

function estimatesOf(
  shots: readonly MeasuredShot[],
  members: readonly number[],
  level: number,
  intervalOf: typeof meanIntervalWithMishits,
): SampleEstimates {
  const estimates: { [K in QuantityName]?: SampleEstimate } = {};
  for (const name of QUANTITY_NAMES) {
    const values = valuesOf(shots, members, name);
    if (values.length > 0) estimates[name] = estimateOf(values, () => intervalOf(values, name, level));
  }
  return estimates as SampleEstimates;
}

function estimateOf(values: readonly number[], interval: () => Interval): SampleEstimate {
  const several = values.length >= 2;
  return {
    count: values.length,
    mean: mean(values),
    ...(several && { interval: interval(), sd: standardDeviation(values) }),
    median: median(values),
    robustSd: ROBUST_SD_FACTOR * medianAbsoluteDeviation(values),
  };
}

function valuesOf(shots: readonly MeasuredShot[], members: readonly number[], name: QuantityName): number[] {
  return members.flatMap((shot) => quantityOf(shots[shot] ?? {}, name) ?? []);
}

function trendsOf(shots: readonly MeasuredShot[], level: number): SessionSummary['trends'] {
  const trends: { [K in QuantityName]?: SessionTrend } = {};
  const fewest = fewestForSlope(level);
  for (const name of QUANTITY_NAMES) {
    if (name === 'clubSpeed') continue;
    const pairs = shots.flatMap((shot) => {
      const value = quantityOf(shot, name);
      return value === undefined || shot.clubSpeed === undefined ? [] : [{ speed: shot.clubSpeed, value }];
    });
    const speeds = pairs.map((pair) => pair.speed);
    if (pairs.length < fewest || new Set(speeds).size < 2) continue;
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

/** From metres per metre per second to yards per mph. */
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
    const pooled = typicalErrorWithin(groups);
    const shotsPerMean = median(groups.map((group) => group.length));
    all[name] = {
      typicalError: pooled.value,
      dof: pooled.dof,
      detectableSingle: minimalDetectableChange(pooled, 1, level),
      detectableMean: minimalDetectableChange(pooled, shotsPerMean, level),
      shotsPerMean,
    };
  }
  return all;
}
