import type { QuantityRange } from '../inputs/between.js';
import { brent } from '../numerics/index.js';
import { METRES_PER_SECOND_PER_MPH, type Speed, si } from '../units/index.js';

/** Step of the search [m/s]: 5 mph. */
const STEP = 5 * METRES_PER_SECOND_PER_MPH;

/** The least speed that is enough, or the one that comes nearest. @internal */
export interface LeastSpeed {
  /** `out-of-reach`: no speed in the range is enough. `too-close`: the slowest is more than enough. */
  readonly outcome: 'found' | 'out-of-reach' | 'too-close';
  readonly clubSpeed: Speed;
}

/**
 * The least speed in a range at which a distance to spare reaches 0, looked for upward by steps of 5 mph.
 * @param spare - what is to spare at a speed [m]
 * @param tolerance - of the speed [m/s]
 * @internal
 */
export function leastSpeed(
  spare: (speed: number) => number,
  { min: slowest, max: fastest }: QuantityRange<Speed>,
  tolerance: number,
): LeastSpeed {
  let from: number = slowest;
  let nearest: number = slowest;
  let most = spare(slowest);
  if (most > 0) return { outcome: 'too-close', clubSpeed: slowest };
  while (from < fastest) {
    const to = Math.min(fastest, from + STEP);
    const here = spare(to);
    if (here >= 0) return { outcome: 'found', clubSpeed: si(brent(spare, from, to, { tolerance }).x) };
    if (here > most) {
      most = here;
      nearest = to;
    }
    from = to;
  }
  return { outcome: 'out-of-reach', clubSpeed: si(nearest) };
}
