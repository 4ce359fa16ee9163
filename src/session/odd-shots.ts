import type { MeasuredShot } from '../inputs/measured-shot.js';
import { MODIFIED_Z_LIMIT, median, modifiedZScores, normalCdf, stream } from '../numerics/index.js';
import { inWords, QUANTITY_WORDS, type QuantityName, quantityOf } from './quantities.js';

/** Quantities in which a shot is looked at for being odd. */
const LOOKED_AT: readonly QuantityName[] = [
  'clubSpeed',
  'ballSpeed',
  'smashFactor',
  'launchAngle',
  'launchDirection',
  'spinRate',
  'spinAxisTilt',
  'carry',
  'side',
];

/** Fewest readings of a band that are looked at, and of a session. */
const FEWEST_IN_BAND = 3;
const FEWEST = 5;
const TRIALS = 2000;

/** One reading that stands apart from its band. */
export interface OddReading {
  /** Which quantity. */
  readonly quantity: QuantityName;
  /** The reading, SI. */
  readonly value: number;
  /** Median of the band, SI. */
  readonly median: number;
  /** Modified z-score, 0.6745 (value − median)/MAD, the MAD taken over all bands. */
  readonly score: number;
  /** How often the most extreme reading of a session like this scores as high when all are normal. */
  readonly chance: number;
  /** `outlier` when the chance is below 1 %, else `straggler` (words and limit of ISO 5725-2). */
  readonly verdict: 'outlier' | 'straggler';
  /** The reason in words. */
  readonly reason: string;
}

/** A shot with one or more odd readings. */
export interface OddShot {
  /** Place of the shot in the list given, counted from 0. */
  readonly shot: number;
  /** Line of the source, where known. */
  readonly line?: number;
  /** Name of its band. */
  readonly band: string;
  /** `outlier` when any reading is one. */
  readonly verdict: 'outlier' | 'straggler';
  /** Its odd readings. */
  readonly readings: readonly OddReading[];
  /** All reasons in words. */
  readonly reason: string;
}

/**
 * Shots that stand apart from their band: modified z-score beyond 3.5 (Iglewicz and Hoaglin 1993), with one MAD a
 * quantity for all bands. With few shots that limit is passed by chance often, so each reading also says how often.
 * Nothing is removed here: a mishit is part of a player's skill.
 * @internal
 */
export function oddShots(
  shots: readonly MeasuredShot[],
  bands: readonly { readonly name: string; readonly shots: readonly number[] }[],
): OddShot[] {
  const found = new Map<number, { band: string; readings: OddReading[] }>();
  const chances = new Map<string, ChanceOfScore>();
  for (const quantity of LOOKED_AT) {
    const groups = bands
      .map((band) => ({ name: band.name, readings: readingsOf(shots, band.shots, quantity) }))
      .filter((group) => group.readings.length >= FEWEST_IN_BAND);
    const sizes = groups.map((group) => group.readings.length);
    if (sizes.reduce((sum, size) => sum + size, 0) < FEWEST) continue;
    const scores = modifiedZScores(groups.map((group) => group.readings.map((reading) => reading.value)));
    groups.forEach((group, g) => {
      const centre = median(group.readings.map((reading) => reading.value));
      group.readings.forEach(({ shot, value }, k) => {
        const score = scores[g]?.[k] ?? 0;
        if (Math.abs(score) <= MODIFIED_Z_LIMIT || !showsApart(quantity, value, centre)) return;
        const chanceOf = chances.get(sizes.join()) ?? chancesFor(sizes);
        chances.set(sizes.join(), chanceOf);
        const reading = describe(quantity, value, centre, score, chanceOf(Math.abs(score)));
        const entry = found.get(shot) ?? { band: group.name, readings: [] };
        entry.readings.push(reading);
        found.set(shot, entry);
      });
    });
  }
  return [...found]
    .sort(([a], [b]) => a - b)
    .map(([shot, { band, readings }]) => {
      const line = shots[shot]?.line;
      return {
        shot,
        ...(line !== undefined && { line }),
        band,
        verdict: readings.some((reading) => reading.verdict === 'outlier') ? 'outlier' : 'straggler',
        readings,
        reason: readings.map((reading) => reading.reason).join('; '),
      };
    });
}

function readingsOf(
  shots: readonly MeasuredShot[],
  members: readonly number[],
  quantity: QuantityName,
): { shot: number; value: number }[] {
  return members.flatMap((shot) => {
    const value = quantityOf(shots[shot] ?? {}, quantity);
    return value === undefined ? [] : [{ shot, value }];
  });
}

/** Differences below the last digit shown are rounding, not an odd shot. */
function showsApart(quantity: QuantityName, value: number, centre: number): boolean {
  const { digits, toUnit } = QUANTITY_WORDS[quantity];
  return Math.abs(toUnit(value) - toUnit(centre)) > 10 ** -digits;
}

function describe(
  quantity: QuantityName,
  value: number,
  centre: number,
  score: number,
  chance: number,
): OddReading {
  const verdict = chance < 0.01 ? 'outlier' : 'straggler';
  const { label } = QUANTITY_WORDS[quantity];
  const side = score > 0 ? 'above' : 'below';
  const away = `${label} ${inWords(quantity, value)} is ${Math.abs(score).toFixed(1)} robust deviations ${side} the band's median of ${inWords(quantity, centre)}`;
  const often =
    chance < 0.001
      ? 'chance alone hardly ever does that'
      : `chance alone does that in ${(100 * chance).toFixed(chance < 0.05 ? 1 : 0)} % of sessions like this`;
  return { quantity, value, median: centre, score, chance, verdict, reason: `${away}; ${often}` };
}

/** How often the largest |score| of a session of normal readings, with bands of these sizes, reaches a score. */
type ChanceOfScore = (score: number) => number;

/**
 * By trial, always with the same numbers; from 300 readings on by the normal distribution, which the scores then
 * follow.
 */
function chancesFor(sizes: readonly number[]): ChanceOfScore {
  const total = sizes.reduce((sum, size) => sum + size, 0);
  if (total > 300) return (score) => -Math.expm1(total * Math.log1p(-2 * normalCdf(-score)));
  const random = stream(0, total);
  const largest = Array.from({ length: TRIALS }, () => {
    const scores = modifiedZScores(sizes.map((size) => Array.from({ length: size }, random.normal)));
    return Math.max(...scores.flat().map(Math.abs));
  });
  return (score) => largest.filter((z) => z >= score).length / TRIALS;
}
