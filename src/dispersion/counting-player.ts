import type { Delivery } from '../inputs/delivery.js';
import { mean } from '../numerics/index.js';
import type { Player } from '../shot/player.js';
import type { Length, Speed } from '../units/index.js';
import { type CloudOptions, playCloud } from './cloud.js';
import type { StrokesSettings } from './expected-strokes.js';
import type { Hole } from './hole.js';
import { estimate, type MonteCarlo, pick, replicatesOf, standardErrorOf } from './monte-carlo.js';
import { samplerFor } from './sampler.js';
import { scaledSpread } from './scatter-law.js';
import type { ScalableSpread } from './spread.js';
import { scoresAt } from './strokes-on-hole.js';

/** A cloud of shots at one speed and scatter, counted. @internal */
export interface Played {
  readonly carry: MonteCarlo<Length>;
  readonly total: MonteCarlo<Length>;
  readonly fairway: number;
  /** Strokes on all holes together, replicate by replicate. */
  readonly strokes: readonly number[];
}

/** What a counting player counts by. @internal */
export interface Counting {
  readonly holes: readonly Hole[];
  readonly strokes: StrokesSettings;
  readonly cloud: CloudOptions;
  /** Called after each cloud. */
  readonly onCloud: () => void;
}

/** Plays and counts a golfer at any club speed and scatter. @internal */
export function countingPlayer(
  player: Player,
  usual: Delivery,
  spread: ScalableSpread,
  { holes, strokes: settings, cloud, onCloud }: Counting,
): (clubSpeed: Speed, direction: number, strike: number) => Played {
  return (clubSpeed, direction, strike) => {
    const sampler = samplerFor({
      delivery: { ...usual, clubSpeed },
      spread: scaledSpread(spread, direction, strike),
    });
    const { columns } = playCloud(sampler, player, cloud);
    onCloud();
    const parts = replicatesOf(columns.shot);
    const onHoles = holes.map((hole) => scoresAt(columns, hole, settings, 0));
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
