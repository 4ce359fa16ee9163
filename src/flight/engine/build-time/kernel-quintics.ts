import { constant } from './decisions.js';

// What follows stands in the kernel's text and is no function there: a call would put each number on the heap.

/** The quintic over the step before, from value, slope and curvature at both nodes: V0 x + F0 x² + c3 x³ + c4 x⁴ + c5 x⁵ above the first. */
export const quintic = (y0: string, v0: string, f0: string, y1: string, v1: string, f1: string): string => `
const V0 = (${v0}) * ph, V1 = (${v1}) * ph, F0 = 0.5 * (${f0}) * ph * ph, F1 = 0.5 * (${f1}) * ph * ph, d = ${y1} - (${y0});
const c3 = 10 * d - 6 * V0 - 4 * V1 - 3 * F0 + F1, c4 = -15 * d + 8 * V0 + 7 * V1 + 3 * F0 - 2 * F1, c5 = 6 * d - 3 * V0 - 3 * V1 - F0 + F1;`;

/** Its slope at x, and the slope of that. */
const QUINTIC_SLOPE = '(V0 + x * (2 * F0 + x * (3 * c3 + x * (4 * c4 + x * 5 * c5))))';
const QUINTIC_BEND = '(2 * F0 + x * (6 * c3 + x * (12 * c4 + x * 20 * c5)))';

/** Where the parabola of climb from V0 > 0 with slope 2 F0 to V1 <= 0 falls through zero: a first guess of the top. */
const CREST = 'V0 / (Math.sqrt(Math.max(0, F0 * F0 - V0 * (V1 - V0 - 2 * F0))) - F0)';

/** Finds the top of the quintic, `x`. */
export const topOfQuintic = (): string => `
let x = ${CREST};
for (let i = 0; i < ${constant('TOP_STEPS_ON_QUINTIC')}; i++) x -= ${QUINTIC_SLOPE} / ${QUINTIC_BEND};`;

/** Finds where the quintic from `y0` to `y1` falls through zero, `x`. */
export const rootOfQuintic = (y0: string, y1: string): string => `
let x = 1 - ${y1} / V1;
for (let i = 0; i < ${constant('MOST_ROOT_STEPS')}; i++) {
  const slope = ${QUINTIC_SLOPE};
  if (!(slope < 0)) return OUTSIDE;
  const step = (${y0} + x * (V0 + x * (F0 + x * (c3 + x * (c4 + x * c5))))) / slope;
  x -= step;
  if (Math.abs(step) < ${constant('ROOT_WITHIN')}) break;
}`;

/** Finds where in a step of `h` the ball tops out, `at`, by that guess. */
export const crestOfStep = (): string => `
const V0 = vy * h, V1 = vyn * h, F0 = 0.5 * ay * h * h, at = ${CREST};`;

/** Weights of the five data besides the first value at x on a quintic over the step before. */
export const QUINTIC_WEIGHTS = `
const x3 = x * x * x, q1 = x3 * (10 + x * (6 * x - 15)), q2 = ph * (x + x3 * (x * (8 - 3 * x) - 6)), q3 = ph * x3 * (x * (7 - 3 * x) - 4);
const q4 = 0.5 * ph * ph * (x * x + x3 * (x * (3 - x) - 3)), q5 = 0.5 * ph * ph * x3 * (1 + x * (x - 2));`;

/** Weights of its slope there. */
export const SLOPE_WEIGHTS = `
const xx = x * x, s1 = 30 * xx * (1 - x) * (1 - x) / ph, s2 = 1 + xx * (x * (32 - 15 * x) - 18), s3 = xx * (x * (28 - 15 * x) - 12);
const s4 = ph * x * (1 + x * (x * (6 - 2.5 * x) - 4.5)), s5 = ph * xx * (1.5 + x * (2.5 * x - 4));`;

/** A displacement at x of those weights, from the nodes before and after. */
export const onQuintic = (A: string, a: string): string =>
  `p${A} + (${A} - p${A}) * q1 + p${a} * q2 + ${a} * q3 + pk${a} * q4 + k${a}0 * q5`;

/** Slope of a displacement at x: a velocity. */
export const slopeOnQuintic = (A: string, a: string): string =>
  `(${A} - p${A}) * s1 + p${a} * s2 + ${a} * s3 + pk${a} * s4 + k${a}0 * s5`;
