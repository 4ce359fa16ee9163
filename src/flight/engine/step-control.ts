import { SAFETY } from './step-decisions.js';

/** Error remembered before the first step, in units of the tolerance: it lets the step grow. @internal */
export const FIRST_ERROR = 1e-2;
/** Least errors counted: a step that made almost none says nothing of how far the next may go. */
const LEAST_ERROR = 1e-10;
const LEAST_REMEMBERED = 1e-4;
/** Powers of this step's error and of the last one's in the factor of the next step, for a method of order 8. */
const ERROR_POWER = -0.1125;
const MEMORY_POWER = 0.04;
/** Power by which a refused step shrinks. */
const REFUSED_POWER = -1 / 8;
/** Most by which a step grows or shrinks to the next, and by which a refused one shrinks: common practice, no source. */
const MOST_GROWTH = 4;
const MOST_SHRINKING = 0.333;
const MOST_REFUSED_SHRINKING = 0.2;

/**
 * Factor of the step after one that was kept, from its error and the one remembered, in units of the tolerance: step size
 * control with memory, Hairer & Wanner, Solving Ordinary Differential Equations II, section IV.2. @internal
 */
export function nextFactor(error: number, remembered: number): number {
  const factor = SAFETY * Math.max(error, LEAST_ERROR) ** ERROR_POWER * remembered ** MEMORY_POWER;
  return Math.min(MOST_GROWTH, Math.max(MOST_SHRINKING, factor));
}

/** What to remember of a kept step's error. @internal */
export function remember(error: number): number {
  return Math.max(error, LEAST_REMEMBERED);
}

/** Factor of a step that was refused for its error. @internal */
export function refusedFactor(error: number): number {
  if (!Number.isFinite(error)) return MOST_REFUSED_SHRINKING;
  return Math.max(MOST_REFUSED_SHRINKING, SAFETY * error ** REFUSED_POWER);
}
