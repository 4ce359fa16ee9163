import type { QuantityRange } from '../inputs/between.js';
import { METRES_PER_SECOND_PER_MPH, type Speed, si } from '../units/index.js';

/** Step of the search [m/s], 5 mph: with a given loft carry may fall again as speed rises, against a strong wind. @internal */
export const SPEED_STEP: number = 5 * METRES_PER_SECOND_PER_MPH;

/** The least speed that is enough, or the one that comes nearest. @internal */
export interface LeastSpeed {
  /** `out-of-reach`: no speed in the range is enough. `too-close`: the slowest is more than enough. */
  readonly outcome: 'found' | 'out-of-reach' | 'too-close';
  readonly clubSpeed: Speed;
}

/**
 * The least speed in a range at which a distance to spare reaches 0, looked for upward step by step.
 * @param spare - what is to spare at a speed [m]
 * @param refine - the speed between one that is not enough and one that is
 * @param step - of the search [m/s]
 * @internal
 */
export function leastSpeed(
  spare: (speed: number) => number,
  { min: slowest, max: fastest }: QuantityRange<Speed>,
  refine: (from: number, to: number) => number,
  step: number = SPEED_STEP,
): LeastSpeed {
  let from: number = slowest;
  let nearest: number = slowest;
  let most = spare(slowest);
  if (most > 0) return { outcome: 'too-close', clubSpeed: slowest };
  while (from < fastest) {
    const to = Math.min(fastest, from + step);
    const here = spare(to);
    if (here >= 0) return { outcome: 'found', clubSpeed: si(refine(from, to)) };
    if (here > most) {
      most = here;
      nearest = to;
    }
    from = to;
  }
  return { outcome: 'out-of-reach', clubSpeed: si(nearest) };
}
