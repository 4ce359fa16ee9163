import { sampleSizeForMeanDifference, standardDeviation } from '../numerics/index.js';
import { type CarryOver, carryOverOf } from './carry-over.js';

/** Chance to show a gain that was made. */
const POWER = 0.8;

/** How much a session's mean differs from one day to another. @internal */
export interface DayToDay {
  /** Typical error of a session mean. */
  readonly typical: number;
  /** The same, wider where days carry over. */
  readonly error: number;
  readonly dof: number;
  readonly carryOver: CarryOver;
}

/**
 * Typical error of session means: the standard deviation of the differences between neighbouring sessions over √2, which
 * leaves a steady gain out (Hopkins W G 2000, Sports Med. 30, 1–15).
 * @param means - session means in order, at least four
 * @param block - sessions averaged at each end
 * @internal
 */
export function dayToDayOf(means: readonly number[], block: number): DayToDay {
  const typical = standardDeviation(means.slice(1).map((value, i) => value - (means[i] ?? 0))) / Math.SQRT2;
  const carryOver = carryOverOf(means, block);
  return { typical, error: carryOver.widening * typical, dof: means.length - 2, carryOver };
}

/** Fewest sessions that show how one day differs from another. @internal */
export const FEWEST_SESSIONS = 4;

/** Sessions averaged at each end unless another number is asked for. @internal */
export function usualBlock(sessions: number): number {
  return Math.max(1, Math.floor(sessions / 3));
}

/** How many values before and as many after show a gain four times out of five. @internal */
export function countToShow(gain: number, error: number, level: number, dof?: number): number {
  return sampleSizeForMeanDifference(gain, error, POWER, level, dof);
}
