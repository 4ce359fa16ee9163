import type { MeasuredShot } from '../inputs/measured-shot.js';
import { fQuantile, typicalErrorWithin } from '../numerics/index.js';
import { type QuantityName, quantityOf } from './quantities.js';
import { type Tails, tailFactor, tailsOf } from './tails.js';

/** Scatter within sessions, first against last. */
export interface ScatterChange {
  /** Standard deviation within the first sessions, SI. */
  readonly before: number;
  /** Standard deviation within the last sessions, SI. */
  readonly after: number;
  /** Last over first. */
  readonly ratio: number;
  /** Interval for the ratio, right for normal shots; wider where `tails` are wild. */
  readonly interval: { readonly low: number; readonly high: number };
  /** Whether the shots have wilder tails than normal ones. */
  readonly tails: Tails;
  /** What the interval shows. */
  readonly verdict: 'grew' | 'shrank' | 'not-shown';
}

const SCATTER: readonly QuantityName[] = ['clubSpeed', 'smashFactor', 'launchDirection', 'carry', 'side'];

/** Scatter within sessions, pooled over the first and over the last. @internal */
export function scatterOf(
  first: readonly { readonly members: readonly MeasuredShot[] }[],
  last: readonly { readonly members: readonly MeasuredShot[] }[],
  level: number,
): { readonly [K in QuantityName]?: ScatterChange } {
  const all: { [K in QuantityName]?: ScatterChange } = {};
  for (const name of SCATTER) {
    const groups = (sessions: readonly { readonly members: readonly MeasuredShot[] }[]): number[][] =>
      sessions
        .map((session) => session.members.flatMap((shot) => quantityOf(shot, name) ?? []))
        .filter((values) => values.length >= 2);
    const [a, b] = [groups(first), groups(last)];
    if (a.length === 0 || b.length === 0) continue;
    const [{ value: before, dof: below }, { value: after, dof: above }] = [
      typicalErrorWithin(a),
      typicalErrorWithin(b),
    ];
    if (!(before > 0) || !(after > 0)) continue;
    const ratio = after / before;
    const tails = tailsOf([a, b]);
    // Limits of ln ratio go with its standard deviation.
    const wider = tails.verdict === 'wild' ? Math.sqrt(tailFactor(tails)) : 1;
    const low = ratio / fQuantile(0.5 + level / 2, above, below) ** (wider / 2);
    const high = ratio / fQuantile(0.5 - level / 2, above, below) ** (wider / 2);
    const verdict = low > 1 ? 'grew' : high < 1 ? 'shrank' : 'not-shown';
    all[name] = { before, after, ratio, interval: { low, high }, tails, verdict };
  }
  return all;
}
