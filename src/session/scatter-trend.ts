import { choice, type Declared, optional } from '../inputs/field.js';
import { frozen } from '../inputs/frozen.js';
import { type MeasuredShot, readMeasuredShots } from '../inputs/measured-shot.js';
import { readOptions } from '../inputs/read.js';
import { refusal } from '../inputs/refuse.js';
import { mean, normalQuantile, standardDeviation } from '../numerics/index.js';
import { mph, type Speed, si } from '../units/index.js';
import { levelField, USUAL_LEVEL } from './level.js';
import { QUANTITY_NAMES, type QuantityName, quantityOf } from './quantities.js';
import { type Banding, bandingField, bandShots } from './speed-bands.js';
import { type Tails, tailFactor, tailsOf } from './tails.js';

/** Scatter of one band of club speed. */
export interface BandScatter {
  /** Name of the band. */
  readonly name: string;
  /** Mean club speed [m/s]. */
  readonly clubSpeed: Speed;
  /** Standard deviation of the quantity from shot to shot, SI. */
  readonly sd: number;
  /** Shots. */
  readonly count: number;
}

/** How a player's scatter changes with club speed. */
export interface ScatterTrend {
  /** Quantity whose scatter this is. */
  readonly quantity: QuantityName;
  /** Share by which the standard deviation grows with each mph, compounding; 0.03 is 3 %. */
  readonly growthPerMph: number;
  /** Interval for the growth. */
  readonly interval: { readonly low: number; readonly high: number; readonly level: number };
  /**
   * Whether the shots have wilder tails than normal ones. With one shot in ten three times as wild, an interval for 95 %
   * holds less; see docs/statistics.md.
   */
  readonly tails: Tails;
  /** True when the interval holds 0. */
  readonly unclear: boolean;
  /** Standard deviation of the line at `atSpeed`, SI. */
  readonly sd: number;
  /** Mean club speed of the shots [m/s]. */
  readonly atSpeed: Speed;
  /** The bands it rests on. */
  readonly bands: readonly BandScatter[];
}

/** Options of {@link scatterTrend}. */
export interface ScatterTrendOptions {
  /** Quantity; default launch direction. */
  readonly quantity?: QuantityName;
  /** How to put shots into bands; see {@link Banding}. Each shot's label must stand for a speed where labels are used. */
  readonly bands?: Banding;
  /** Coverage of the interval, 0.5 to 0.999; default 0.95. */
  readonly level?: number;
}

/** Declaration of {@link ScatterTrendOptions}. @internal */
export const scatterTrendOptionFields: Declared<ScatterTrendOptions> = /* @__PURE__ */ frozen(() => ({
  quantity: optional(choice(QUANTITY_NAMES, 'quantity')),
  bands: bandingField,
  level: optional(levelField),
}));

/** Fewest shots from which a standard deviation is taken. */
const FEWEST = 3;

/**
 * Variance of ln s of normal values, ψ′(ν/2)/4, by the first terms of the asymptotic series of ψ′, good to 1 % from ν = 2.
 * Source: Bartlett M S, Kendall D G (1946) J. R. Stat. Soc. Suppl. 8, 128–138; Abramowitz and Stegun 6.4.12.
 */
function varianceOfLog(dof: number): number {
  const x = dof / 2;
  return (1 / x + 1 / (2 * x ** 2) + 1 / (6 * x ** 3) - 1 / (30 * x ** 5)) / 4;
}

/**
 * How a player's scatter grows with club speed: a straight line through the logarithms of the bands' standard
 * deviations. Each is weighted by the reciprocal of the variance of ln s for normal shots, and the interval is wider where
 * the shots have wilder tails, which `tails` tells. With five shots a band, an interval of ±5 % per mph and more is usual.
 * @param shots - as measured
 * @param options - quantity, bands and coverage; each has a default
 * @throws `FairflightError` `invalid-input` or `outside-range` naming the field; `invalid-input` when fewer than two
 *   bands have three shots with scatter
 */
export function scatterTrend(
  shots: readonly MeasuredShot[],
  options: ScatterTrendOptions = {},
): ScatterTrend {
  const settings = readOptions(scatterTrendOptionFields, options);
  const { quantity = 'launchDirection', level = USUAL_LEVEL } = settings;
  const measured = readMeasuredShots(shots);
  const scattered: number[][] = [];
  const bands = bandShots(measured, settings.bands).bands.flatMap((band): BandScatter[] => {
    const rows = band.shots.flatMap((i) => {
      const shot = measured[i] ?? {};
      const value = quantityOf(shot, quantity);
      return value === undefined || shot.clubSpeed === undefined ? [] : [{ value, speed: shot.clubSpeed }];
    });
    if (rows.length < FEWEST) return [];
    const values = rows.map((row) => row.value);
    const sd = standardDeviation(values);
    if (!(sd > 0)) return [];
    scattered.push(values);
    return [{ name: band.name, clubSpeed: si(mean(rows.map((row) => row.speed))), sd, count: rows.length }];
  });
  const weights = bands.map((band) => 1 / varianceOfLog(band.count - 1));
  const sum = weights.reduce((total, weight) => total + weight, 0);
  const average = (of: (band: BandScatter) => number): number =>
    bands.reduce((total, band, i) => total + (weights[i] ?? 0) * of(band), 0) / sum;
  const centre = average((band) => band.clubSpeed);
  const spread = bands.reduce(
    (total, band, i) => total + (weights[i] ?? 0) * (band.clubSpeed - centre) ** 2,
    0,
  );
  if (bands.length < 2 || !(spread > 0)) {
    throw refusal(
      'shots',
      `a trend of scatter needs two bands of club speed with ${FEWEST} shots or more, got ${bands.length}`,
      { value: bands.length },
    );
  }
  const level0 = average((band) => Math.log(band.sd));
  const slope =
    bands.reduce(
      (total, band, i) => total + (weights[i] ?? 0) * (band.clubSpeed - centre) * Math.log(band.sd),
      0,
    ) / spread;
  const tails = tailsOf(scattered.map((values) => [values]));
  const reach = normalQuantile(0.5 + level / 2) * Math.sqrt(tailFactor(tails) / spread);
  const growth = (perSpeed: number): number => Math.expm1(perSpeed * mph(1));
  const interval = { low: growth(slope - reach), high: growth(slope + reach), level };
  return {
    quantity,
    growthPerMph: growth(slope),
    interval,
    tails,
    unclear: interval.low <= 0 && interval.high >= 0,
    sd: Math.exp(level0),
    atSpeed: si(centre),
    bands,
  };
}
