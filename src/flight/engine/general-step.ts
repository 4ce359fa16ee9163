import { SAFETY } from './step-decisions.js';

/** Error of the step before the first, in units of the tolerance, for a control that remembers: it lets the step grow. */
const FIRST_ERROR = 1e-2;
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

/** Factors of a step by the error of steps. @internal */
export interface StepControl {
  /** Forgets all steps. */
  readonly begin: () => void;
  /** Factor of the step after one that was kept. */
  readonly afterKept: (error: number) => number;
  /** Factor of a step that was refused. */
  readonly afterRefused: (error: number) => number;
}

/**
 * Step size control with memory for the general engine: Hairer & Wanner, Solving Ordinary Differential Equations II,
 * section IV.2. Errors are in units of the tolerance. @internal
 */
export function createStepControl(): StepControl {
  let remembered = FIRST_ERROR;
  return {
    begin: () => {
      remembered = FIRST_ERROR;
    },
    afterKept: (error) => {
      const factor = SAFETY * Math.max(error, LEAST_ERROR) ** ERROR_POWER * remembered ** MEMORY_POWER;
      remembered = Math.max(error, LEAST_REMEMBERED);
      return Math.min(MOST_GROWTH, Math.max(MOST_SHRINKING, factor));
    },
    afterRefused: (error) =>
      Number.isFinite(error)
        ? Math.max(MOST_REFUSED_SHRINKING, SAFETY * error ** REFUSED_POWER)
        : MOST_REFUSED_SHRINKING,
  };
}
