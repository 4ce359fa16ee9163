import { mean } from '../numerics/index.js';
import type { ShotSetup } from '../shot/index.js';
import type { Delivery } from '../strike/index.js';
import type { Length, Speed } from '../units/index.js';
import { type CloudOptions, playCloud } from './cloud.js';
import type { ExpectedStrokesOptions } from './expected-strokes.js';
import type { Hole } from './hole.js';
import { estimate, type MonteCarlo, pick, replicatesOf, standardErrorOf } from './monte-carlo.js';
import { type ScalableSpread, scaledSpread } from './scatter-law.js';
import { scoresAt } from './strokes-on-hole.js';

const DEFAULT_SHOTS = 512;

/** @internal */
export interface CountingOptions extends ShotSetup, CloudOptions, ExpectedStrokesOptions {
  readonly onProgress?: (done: number) => void;
}

/** A cloud of shots at one speed and scatter, counted. @internal */
export interface Played {
  readonly carry: MonteCarlo<Length>;
  readonly total: MonteCarlo<Length>;
  readonly fairway: number;
  /** Strokes on all holes together, replicate by replicate. */
  readonly strokes: readonly number[];
}

/** Plays and counts a player at any club speed and scatter. @internal */
export function countingPlayer(
  usual: Delivery,
  spread: ScalableSpread,
  question: CountingOptions,
  holes: readonly Hole[],
  clouds: number,
): (clubSpeed: Speed, direction: number, strike: number) => Played {
  const { skill, table, clubhead, scene, flight, sampling, seed } = question;
  const setup: ShotSetup = {
    ...(clubhead !== undefined && { clubhead }),
    ...(scene !== undefined && { scene }),
    ...(flight !== undefined && { flight }),
  };
  const options: CloudOptions = {
    shots: question.shots ?? DEFAULT_SHOTS,
    ...(sampling !== undefined && { sampling }),
    ...(seed !== undefined && { seed }),
  };
  const counting = { ...(skill !== undefined && { skill }), ...(table !== undefined && { table }) };
  let done = 0;
  return (clubSpeed, direction, strike) => {
    const { columns } = playCloud(
      { ...usual, clubSpeed },
      scaledSpread(spread, direction, strike),
      setup,
      options,
    );
    done++;
    question.onProgress?.(Math.min(1, done / clouds));
    const parts = replicatesOf(columns.shot);
    const onHoles = holes.map((hole) => scoresAt(columns, hole, counting, 0));
    const strokes = columns.shot.map((_, i) =>
      onHoles.reduce((sum, scores) => sum + (scores[i]?.strokes ?? 0), 0),
    );
    return {
      carry: estimate(parts, columns.carry, mean),
      total: estimate(parts, columns.total, mean),
      fairway: mean(onHoles.flatMap((scores) => scores.map(({ ending }) => Number(ending === 'fairway')))),
      strokes: parts.map((part) => mean(pick(strokes, part))),
    };
  };
}

/** Mean of replicates and its error. @internal */
export function monteCarlo(replicates: readonly number[]): MonteCarlo {
  return { value: mean(replicates), standardError: standardErrorOf(replicates) };
}
