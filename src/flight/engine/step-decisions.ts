/**
 * What a flight decides between its steps: when a step is short enough, when the ground or the top is met, when to give
 * up. Stated once for the three engines: the general one and the batch (AssemblyScript) call these functions, the plain
 * kernel's text has them written in by the build, since a call would put each number on the heap. Hence every function
 * here is one expression, and the file is both TypeScript and AssemblyScript.
 *
 * Times are in s, lengths in m. A step runs from a node for a time `h`; `x` is a place in it, as a share of `h`. Height
 * and climb are above and from the ground, `fall` is the rate of climb's change; `vy` and `ay` are straight up.
 */

/** The flight ended on the ground. @internal */
export const LANDED: number = 0;
/** The flight reached its time limit. @internal */
export const TIME_LIMIT: number = 1;
/** The compiled law does not reach here, or the case is one for the general engine. @internal */
export const OUTSIDE: number = 2;

// Giving up

/** Steps tried after which a flight is given up; an ordinary one takes about ten, the finest through a law with corners under a thousand. @internal */
export const MOST_ATTEMPTS: number = 20_000;
/** Shortest step: it moves the ball by 1e-10 m, and an error that asks for less is one that no step will meet. @internal */
export const SHORTEST_STEP: number = 1e-12;

/** Whether a flight is given up. @internal */
export function givesUp(attempts: number, h: number): boolean {
  return attempts > MOST_ATTEMPTS || Math.abs(h) < SHORTEST_STEP;
}

// Size of a step by its error

/** Share of the step the error estimate would allow that is taken: common practice, no source. @internal */
export const SAFETY: number = 0.9;
/** Most by which a kernel's step grows from one to the next, and most by which it shrinks: common practice, no source. @internal */
export const MOST_GROWTH: number = 3;
export const MOST_SHRINKING: number = 0.3;

/** Factor of the next step, from the one the error asks for. @internal */
export function stepFactor(wanted: number): number {
  return Math.min(MOST_GROWTH, Math.max(MOST_SHRINKING, wanted));
}

// Size of a step by what lies ahead

/** A step that does not pass the time limit. @internal */
export function withinTime(h: number, t: number, timeLimit: number): number {
  return t + h > timeLimit ? timeLimit - t : h;
}

/**
 * A step that does not turn the air velocity over, from the squares of air speed and of its rate of change: S may go
 * through a peak within it that no stage meets. @internal
 */
export function withoutTurning(h: number, uu: number, kk: number): number {
  return h * h * kk > uu ? Math.sqrt(uu / kk) : h;
}

/** A ball lifted out of its fall would rise after one such time: half as long again sees it rising. @internal */
export const RISE_SEEN_AFTER: number = 1.5;
/** Shortest step for that, as a share of the step: a ball about to rise needs no finer ones. @internal */
export const LEAST_SHARE: number = 0.1;

/** A step that ends with a ball lifted out of its fall rising: else its apex goes unnoticed within one step. @internal */
export function seenRising(h: number, vy: number, ay: number): number {
  return vy <= 0 && ay > 0 ? Math.min(h, Math.max((-RISE_SEEN_AFTER * vy) / ay, LEAST_SHARE * h)) : h;
}

/** Steps after which a ball still climbing is further from the ground than needs a thought. @internal */
export const STEPS_AHEAD: number = 3;
/** Longest last step, in steps: so little more than wanted that its error is seldom refused. @internal */
export const LAST_STEP: number = 1.1;
/** Nearer than this, in steps, the rest is halved: a last step of its own would be a short one. @internal */
export const LAST_BUT_ONE: number = 2;

/** Whether the ground is near enough to aim at. @internal */
export function nearsGround(h: number, climb: number, fall: number): boolean {
  return fall < 0 && climb + STEPS_AHEAD * h * fall < 0;
}

/** Time to the ground on a parabola; `fall` is negative. @internal */
export function timeToGround(height: number, climb: number, fall: number): number {
  return (climb + Math.sqrt(climb * climb - 2 * fall * height)) / -fall;
}

/** Whether the step ends on the ground by that time. @internal */
export function aimsAtGround(h: number, toGround: number): boolean {
  return toGround < LAST_STEP * h;
}

/** The step towards a ground that far away. @internal */
export function stepTowardsGround(h: number, toGround: number): number {
  return toGround < LAST_STEP * h ? toGround : toGround < LAST_BUT_ONE * h ? 0.5 * toGround : h;
}

// Where the wind changes with height: by one law above a kink and by another below it. Steps end at the kink, so that no
// step meets it. Above, the law is one of the logarithm of the height over its singularity, `above`.

/** Whether a node stands above the kink; one on it does when the ball climbs. @internal */
export function isAloft(height: number, climb: number, kink: number, near: number): boolean {
  return height > kink + near || (height > kink - near && climb > 0);
}

/** Most by which `above` changes within a step, as a factor. @internal */
export const MOST_GRADE: number = 64;

/** Time in which a climbing ball passes that much of the law. @internal */
export function timeToGrade(above: number, climb: number): number {
  return (above * (MOST_GRADE - 1)) / climb;
}

/** The lowest height a step may end at on the way down. @internal */
export function lowestTarget(kink: number, displaced: number, above: number): number {
  return Math.max(kink, displaced + above / MOST_GRADE);
}

/** Time in which a falling ball comes to a kink `drop` below, on a parabola; where that turns up before, twice the time at the rate of now. @internal */
export function timeToFall(drop: number, climb: number, fall: number): number {
  return (2 * drop) / (Math.sqrt(Math.max(0, climb * climb - 2 * fall * drop)) - climb);
}

/** Time [s] over which a parabola is a good guess of the way to the kink; a longer step stops short of it. @internal */
export const SURE_TIME: number = 0.05;
/** Share of a longer way that is taken. @internal */
export const STOP_SHORT: number = 0.98;

/** The step towards a kink that far below. @internal */
export function stepTowardsKink(h: number, toKink: number): number {
  return toKink >= LAST_STEP * h
    ? toKink < LAST_BUT_ONE * h
      ? 0.5 * toKink
      : h
    : toKink < SURE_TIME
      ? toKink
      : STOP_SHORT * toKink;
}

/** Whether a ball rises to a kink `rise` above it, on a parabola. @internal */
export function risesTo(rise: number, climb: number, fall: number): boolean {
  return climb > 0 && climb * climb + 2 * fall * rise > 0;
}

/** Time to a kink `rise` above, on a parabola. @internal */
export function timeToRise(rise: number, climb: number, fall: number): number {
  return (2 * rise) / (climb + Math.sqrt(climb * climb + 2 * fall * rise));
}

/** Whether a ball that tops out `rise` below a kink may have passed it, by more than a parabola knows. @internal */
export function mayPass(rise: number, climb: number, fall: number): boolean {
  return climb * climb + 2.4 * fall * rise > 0;
}

/**
 * A step goes not by the clock but evenly in the square root of `above`, where the law is smoother: this is how much the
 * root changes within it, as a share. The pace at a place x of the step is 1 + grade x times that at its start. @internal
 */
export function gradeOfStep(above: number, change: number): number {
  return Math.sqrt(Math.min(2 * MOST_GRADE, Math.max(0.5 / MOST_GRADE, 1 + change / above))) - 1;
}

/** A step's length at the pace of its start, which the formulas of the step go by. @internal */
export function spanOfStep(h: number, grade: number): number {
  return h / (1 + 0.5 * grade);
}

/** Grade of a step from which on the error estimate exaggerates. @internal */
export const STEEP: number = 0.1;
/** How much longer than the estimate allows such a step may be, up and down: what goes wrong shortly before the landing moves it little. Calibrated in tests/flight/agreement.test.ts. @internal */
export const EASE_UP: number = 1.55;
export const EASE_DOWN: number = 1.78;

/** How much longer a step may be than its error estimate allows. @internal */
export function easeOfStep(grade: number): number {
  return grade > STEEP ? EASE_UP : grade < -STEEP ? EASE_DOWN : 1;
}

// Meeting the top and the ground

/** Whether the ball passed a top within a step. @internal */
export function passesTop(vy: number, newVy: number): boolean {
  return vy > 0 && newVy <= 0;
}

/** How near an end of a step its quintic is exact enough for the top even at fine tolerances, as a share of the step. @internal */
export const TOP_REACH: number = 0.04;

/** Whether a step with a top at that place is redone to end there. @internal */
export function endsAtTop(x: number): boolean {
  return x > TOP_REACH && x < 1 - TOP_REACH;
}

/**
 * Whether a step, seen from its ends, may hide where it met the ground: it left the ground and came back, it met a slope
 * on the way up to its top, or it dipped and rose again. @internal
 */
export function hidesLanding(
  height: number,
  climb: number,
  vy: number,
  newHeight: number,
  newClimb: number,
  aimed: boolean,
  sloped: boolean,
): boolean {
  return newHeight < 0 ? (height <= 0 && !aimed) || (sloped && vy > 0) : climb < 0 && newClimb > 0;
}

/** Furthest root of a step's quintic that is believed, as a share of the step. @internal */
export const FURTHEST_ROOT: number = 1.5;

/** Whether the place where a step's quintic meets the ground is believed. @internal */
export function believesRoot(x: number): boolean {
  return x > 0 && x < FURTHEST_ROOT;
}

/**
 * How far from the end of a step its quintic is exact enough for the landing, as a share of the step: calibrated in
 * tests/flight/agreement.test.ts. @internal
 */
export const LANDING_REACH: number = 0.1;
/** The same below {@link APEX_RESTEP_BELOW}. @internal */
export const FINE_LANDING_REACH: number = 0.04;

/** Whether the ball lands on the quintic of its last step, `miss` after its end; else it is stepped onto the ground. @internal */
export function landsOnQuintic(miss: number, h: number, fine: boolean): boolean {
  return Math.abs(miss) < (fine ? FINE_LANDING_REACH : LANDING_REACH) * h;
}

/** Shortest step in the air before one onto the ground, as a share of the step wanted. @internal */
export const LEAST_STEP_BEFORE_GROUND: number = 0.3;

/** Whether the next step goes onto the ground, `miss` away. @internal */
export function stepsOntoGround(height: number, miss: number, wanted: number): boolean {
  return height < 0 || miss < LEAST_STEP_BEFORE_GROUND * wanted;
}

/** Time within which a step onto the ground need not be redone: a Taylor step over it errs by less than 1e-10 m. @internal */
export const ON_GROUND_WITHIN: number = 1e-4;

/** Newton steps to the ground on a quintic, as shares of the step: when they are small enough, and their bound. @internal */
export const ROOT_WITHIN: number = 1e-6;
export const MOST_ROOT_STEPS: number = 12;
/** Newton steps to the top of a quintic, enough for rounding from the guess they start at. @internal */
export const TOP_STEPS_ON_QUINTIC: number = 2;
