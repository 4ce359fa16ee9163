import { median, quantile } from '../numerics/index.js';
import { type Length, METRES_PER_YARD } from '../units/index.js';
import type { DistanceChange } from './attribution.js';
import type { ChangeVerdict, EvidenceName } from './change-ranking.js';

/** Least gain that is advised [m]: 3 yd. Assumption. @internal */
export const WORTH: number = 3 * METRES_PER_YARD;
/** Fewest strokes saved on a hole that are worth a change: half a stroke over 14 holes. Assumption. @internal */
export const WORTH_IN_STROKES: number = 0.5 / 14;

/** Fewest shots from which anything is advised. Common practice, no source. @internal */
export const FEWEST_SHOTS = 5;

/** Best estimate and interval of drawn values. @internal */
export interface DrawnInterval {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

/** The middle of drawn values, and the interval that holds so many of them. @internal */
export function drawnInterval(values: readonly number[], level: number): DrawnInterval {
  return {
    value: median(values),
    low: quantile(values, (1 - level) / 2),
    high: quantile(values, (1 + level) / 2),
  };
}

/** The same as a change of distance. @internal */
export function drawnDistance(values: readonly number[], level: number): DistanceChange {
  return drawnInterval(values, level) as { [End in keyof DrawnInterval]: Length };
}

/** What a change brings in what is judged, and what it does to the other distance. @internal */
export interface JudgedChange {
  readonly gain: DrawnInterval;
  readonly worth: number;
  readonly other?: DrawnInterval;
  /** Readings assumed that its worth hangs on. */
  readonly measure: readonly EvidenceName[];
  /** Shots that it rests on. */
  readonly shots: number;
  /** True for what weeks of training bring and nothing else. */
  readonly training?: boolean;
}

/** The one rule by which a change is advised. @internal */
export function verdictOf({ gain, worth, other, measure, shots, training }: JudgedChange): ChangeVerdict {
  if (measure.length > 0) return 'measure-first';
  if (gain.value < worth) return gain.value > 0 ? 'not-worth-it' : 'leave';
  if (other !== undefined && other.high < 0) return 'costs-the-other';
  if (gain.low <= 0) return 'not-clear';
  // More speed is nearly always worth distance. Were it advised like a change of loft, it would stand above every one.
  if (training) return 'by-training';
  return shots < FEWEST_SHOTS ? 'too-few-shots' : 'advised';
}

/**
 * Whether the worth of a change hangs on something assumed: it is worth it where that is low and not where it is high, or
 * the other way round. Thirds are compared.
 * @internal
 */
export function hangsOn(assumed: readonly number[], gains: readonly number[], worth: number): boolean {
  const order = assumed.map((_, k) => k).sort((a, b) => (assumed[a] ?? 0) - (assumed[b] ?? 0));
  const third = Math.max(1, Math.floor(order.length / 3));
  const worthIn = (members: readonly number[]): boolean => median(members.map((k) => gains[k] ?? 0)) >= worth;
  return worthIn(order.slice(0, third)) !== worthIn(order.slice(-third));
}
