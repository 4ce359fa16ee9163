import type { Speed } from '../units/index.js';
import { clearOfMany, type PairedDifference, pairedDifference } from './paired-difference.js';

/** A speed with fewer strokes than its neighbours among those looked at. */
export interface BestSpeed {
  /**
   * `within`: between those looked at. `faster-than`: the fastest looked at, more may pay. `slower-than`: the slowest,
   * less may pay.
   */
  readonly kind: 'within' | 'faster-than' | 'slower-than';
  /** The speed [m/s]. */
  readonly clubSpeed: Speed;
  /**
   * 95 % interval [m/s]: from the speed looked at below the slowest to that above the fastest that the shots cannot tell
   * from the best. An end at the slowest or fastest looked at is open.
   */
  readonly interval: { readonly low: Speed; readonly high: Speed };
  /** Strokes on all holes against today's. */
  readonly change: PairedDifference;
  /** False where another speed is clearly better. */
  readonly mayBeBest: boolean;
}

/**
 * Speeds that are locally best, slowest first: between two of them strokes clearly rise. "Clearly" allows for every pair
 * of speeds being looked at.
 * @param columns - strokes shot by shot at each speed, of the same shots
 * @param today - the same at today's speed
 * @internal
 */
export function bestSpeeds(
  speeds: readonly Speed[],
  columns: readonly Float64Array[],
  today: Float64Array,
): BestSpeed[] {
  const limit = clearOfMany(speeds.length - 1);
  const strokes = (i: number): Float64Array => columns[i] ?? today;
  const changes = columns.map((column) => pairedDifference(column, today));
  const level = (i: number): number => changes[i]?.value ?? Number.POSITIVE_INFINITY;
  const isClearlyMore = (i: number, j: number): boolean => {
    const { value, standardError } = pairedDifference(strokes(i), strokes(j));
    return value > limit * standardError;
  };
  const last = speeds.length - 1;
  let lows = speeds.flatMap((_, i) => (level(i) <= level(i - 1) && level(i) < level(i + 1) ? [i] : []));
  const ridge = (from: number, to: number): number => {
    let top = from;
    for (let i = from; i <= to; i++) if (level(i) > level(top)) top = i;
    return top;
  };
  // The shallowest dip goes first, so that a deep one is not lost to the ripples on its side.
  for (;;) {
    const unclear = lows
      .flatMap((low, k) => {
        const next = lows[k + 1];
        if (next === undefined) return [];
        const top = ridge(low, next);
        if (isClearlyMore(top, low) && isClearlyMore(top, next)) return [];
        const higher = level(low) > level(next) ? low : next;
        return [{ higher, depth: level(top) - level(higher) }];
      })
      .sort((a, b) => a.depth - b.depth)[0];
    if (unclear === undefined) break;
    lows = lows.filter((low) => low !== unclear.higher);
  }
  const best = lows.reduce((kept, low) => (level(low) < level(kept) ? low : kept), lows[0] ?? 0);
  return lows.map((low, k): BestSpeed => {
    const [before, after] = [lows[k - 1], lows[k + 1]];
    const from = before === undefined ? 0 : ridge(before, low);
    const to = after === undefined ? last : ridge(low, after);
    const alike = speeds.flatMap((_, i) => (i >= from && i <= to && !isClearlyMore(i, low) ? [i] : []));
    const at = (i: number): Speed => speeds[Math.min(last, Math.max(0, i))] as Speed;
    return {
      kind: low === 0 ? 'slower-than' : low === last ? 'faster-than' : 'within',
      clubSpeed: at(low),
      interval: { low: at((alike[0] ?? low) - 1), high: at((alike.at(-1) ?? low) + 1) },
      change: pairedDifference(strokes(low), today),
      mayBeBest: low === best || !isClearlyMore(low, best),
    };
  });
}
