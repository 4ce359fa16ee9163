import { mean } from '../numerics/index.js';
import type { Scene } from '../scene/scene.js';
import { type Length, mph, type Speed, si } from '../units/index.js';
import { type BestSpeed, bestSpeeds } from './best-speed.js';
import { type BreakEven, breakEvenAt } from './break-even.js';
import { wholeSets } from './drawn-shots.js';
import { strokesSettings } from './expected-strokes.js';
import { type FasterOptions, type FasterQuestion, readFaster } from './faster-question.js';
import { type MonteCarlo, meanOf, replicatesOf } from './monte-carlo.js';
import { type PairedDifference, pairedDifference } from './paired-difference.js';
import { type PlayedShots, sameShots } from './same-shots.js';
import { factorsAt } from './scatter-law.js';

/** The player at one club speed. */
export interface SpeedStep {
  /** Club speed [m/s]. */
  readonly clubSpeed: Speed;
  /** Factor on today's scatter of path and face, by the law. */
  readonly directionFactor: number;
  /** Factor on today's scatter of the strike, by the law. */
  readonly strikeFactor: number;
  /** Mean carry [m]. */
  readonly carry: MonteCarlo<Length>;
  /** Mean total [m]. */
  readonly total: MonteCarlo<Length>;
  /** Share of fairways hit, averaged over the holes. */
  readonly fairway: number;
  /** Expected strokes on all holes given, together. */
  readonly strokes: MonteCarlo;
  /** The same less today's, from the same shots; much better known than the strokes themselves. */
  readonly change: PairedDifference;
}

/** Answer of {@link fasterOrStraighter}. */
export interface FasterOrStraighter {
  /** The player at each speed, slowest first, by the law of scatter. */
  readonly steps: readonly SpeedStep[];
  /** Club speed now [m/s]. */
  readonly now: Speed;
  /** Of the speeds looked at, that with the fewest strokes by the law. */
  readonly best: BestSpeed;
  /** Every speed that is locally best, slowest first; more than one where strokes clearly rise in between. */
  readonly locallyBest: readonly BestSpeed[];
  /** Strokes on all holes at one mph more than now less those now, by the law. */
  readonly oneMphFaster: PairedDifference;
  /** Strokes on all holes with 10 % less scatter of path, face and strike at today's speed less those now. */
  readonly tenPercentStraighter: PairedDifference;
  /**
   * Factor on today's scatter of path, face and strike that cancels one mph more: 1.02 where the mph is worth as much as
   * 2 % more scatter costs, below 1 where it costs strokes even with the same scatter.
   */
  readonly cancellingOneMph: BreakEven;
  /** At each speed, slowest first, the scatter at which strokes equal today's. */
  readonly breakEven: readonly BreakEven[];
}

/** Factors on scatter from which break-even is looked for, and those for a single mph, whose factor is near 1. */
const FACTORS = [0.6, 1, 1.5, 2.2];
const FACTORS_FOR_ONE_MPH = [0.8, 1, 1.25];
/** What one mph and 10 % are worth is a small difference: it rests on so many times the shots. */
const CLOSER_LOOK = 4;
/** Ways played at a speed, and closer, as a rule at most: for the progress alone. */
const PLAYED_PER_SPEED = 9;
const PLAYED_CLOSER = 10;

/**
 * Is it worth more to swing faster or to swing straighter? Plays the player's scattered shots at a row of club speeds
 * and scatters, and counts the strokes they come to on the holes given.
 *
 * Every answer is a difference between two ways of playing the same shots, counted and not fitted, whatever lies on the
 * hole; where strokes equal today's, that scatter was played. Everything but club speed and scatter stays as it is:
 * attack angle, loft, aim. Expected strokes are those of {@link expectedStrokes}; for anyone but a professional they are
 * modelled. The intervals say what the finite number of shots leaves open, and nothing about the models.
 * @param question - the player's usual delivery, scatter, holes, and how scatter changes with speed
 * @param scene - air, wind, ground, turf, ball and coefficient model; each has a default
 * @param options - clubhead, speeds, number of shots, seed, skill; each has a default
 * @throws `FairflightError` `invalid-input` or `outside-range`, also for a speed at which the ball would leave
 *   faster than a flight is computed for
 */
export function fasterOrStraighter(
  question: FasterQuestion,
  scene: Scene = {},
  options: FasterOptions = {},
): FasterOrStraighter {
  const reading = readFaster(question, scene, options);
  const { delivery, spread, holes, law, speeds, shots, options: given } = reading;
  const now = delivery.clubSpeed;
  const play = sameShots(reading.scene, reading.settings, {
    usual: delivery,
    spread,
    holes,
    strokes: strokesSettings(given),
    draws: given,
  });
  const expected = shots * (speeds.length * PLAYED_PER_SPEED + CLOSER_LOOK * PLAYED_CLOSER);
  let done = 0;
  const played = (clubSpeed: Speed, direction: number, strike: number, times = 1): PlayedShots => {
    const those = play({ clubSpeed, direction, strike }, times * shots);
    done += times * shots;
    given.onProgress?.(Math.min(0.99, done / expected));
    return those;
  };
  const byLaw = (clubSpeed: Speed, times?: number): PlayedShots => {
    const { direction, strike } = factorsAt(law, now, clubSpeed);
    const those = played(clubSpeed, direction, strike, times);
    if (those.refused !== undefined) throw those.refused;
    return those;
  };
  const today = byLaw(now, CLOSER_LOOK);
  const againstToday = ({ strokes, refused }: PlayedShots): PairedDifference | undefined =>
    refused === undefined ? pairedDifference(strokes, today.strokes) : undefined;

  const columns: Float64Array[] = [];
  const steps = speeds.map((clubSpeed): SpeedStep => {
    const those = clubSpeed === now ? firstOf(today, shots) : byLaw(clubSpeed);
    columns.push(those.strokes);
    const { direction, strike } = factorsAt(law, now, clubSpeed);
    return {
      clubSpeed,
      directionFactor: direction,
      strikeFactor: strike,
      ...countedFrom(those),
      change: pairedDifference(those.strokes, today.strokes),
    };
  });
  const faster = si<Speed>(now + mph(1));
  const oneMphFaster = pairedDifference(byLaw(faster, CLOSER_LOOK).strokes, today.strokes);
  const straighter = played(now, 0.9, 0.9, CLOSER_LOOK);
  const locallyBest = bestSpeeds(speeds, columns, today.strokes);
  const result = {
    steps,
    now,
    best: fewest(locallyBest),
    locallyBest,
    oneMphFaster,
    tenPercentStraighter: pairedDifference(straighter.strokes, today.strokes),
    cancellingOneMph: breakEvenAt(
      faster,
      (factor) => againstToday(played(faster, factor, factor, CLOSER_LOOK)),
      FACTORS_FOR_ONE_MPH,
    ),
    breakEven: steps.map(({ clubSpeed, directionFactor, strikeFactor, change }) => {
      if (clubSpeed === now) return asToday(now);
      const known = directionFactor === 1 && strikeFactor === 1 ? change : undefined;
      const changeAt = (factor: number): PairedDifference | undefined =>
        (factor === 1 && known) || againstToday(played(clubSpeed, factor, factor));
      return breakEvenAt(clubSpeed, changeAt, FACTORS);
    }),
  };
  given.onProgress?.(1);
  return result;
}

/** The shots that every speed has played, so that strokes at two speeds differ by what is said. */
function firstOf({ strokes, carry, total, fairway, refused }: PlayedShots, shots: number): PlayedShots {
  const first = (column: Float64Array): Float64Array => column.subarray(0, wholeSets(shots));
  return {
    strokes: first(strokes),
    carry: first(carry),
    total: first(total),
    fairway: first(fairway),
    refused,
  };
}

function countedFrom({
  strokes,
  carry,
  total,
  fairway,
}: PlayedShots): Pick<SpeedStep, 'carry' | 'total' | 'fairway' | 'strokes'> {
  const shots = Array.from(strokes.keys()).filter((i) => !Number.isNaN(strokes[i]));
  const parts = replicatesOf(shots);
  const of = (column: Float64Array): number[] => shots.map((i) => column[i] ?? 0);
  return {
    carry: meanOf<Length>(parts, of(carry)),
    total: meanOf<Length>(parts, of(total)),
    fairway: mean(of(fairway)),
    strokes: meanOf(parts, of(strokes)),
  };
}

function fewest(speeds: readonly BestSpeed[]): BestSpeed {
  return speeds.reduce((kept, speed) => (speed.change.value < kept.change.value ? speed : kept));
}

/** Today's scatter is what leaves today's strokes. */
function asToday(clubSpeed: Speed): BreakEven {
  return {
    clubSpeed,
    kind: 'within',
    factors: [{ value: 1, interval: { low: 1, high: 1 }, pays: 'narrower' }],
  };
}
