/**
 * Velocity error [m/s] a step may make for each metre of tolerance at the landing: an error made mid-flight acts on
 * the landing point for a few seconds. Calibrated so that tests/flight/agreement.test.ts holds over the whole domain.
 * @internal
 */
export const VELOCITY_TOLERANCE_PER_METRE = 0.004;

/** Below this tolerance [m] a polynomial between two nodes is not exact enough for the apex: a step ends there. @internal */
export const APEX_RESTEP_BELOW = 2e-5;

/** First step [s]: steps of a flight scale with the eighth root of the tolerance and one over the root of the speed. @internal */
export function firstStep(velocityTolerance: number, speed: number): number {
  return Math.min((17 * Math.sqrt(Math.sqrt(Math.sqrt(velocityTolerance)))) / Math.sqrt(speed + 1), 1.5);
}

/**
 * How much finer the general engine steps. It flies the laws with corners, and an error estimate does not see all of a
 * corner inside a step. Calibrated as above.
 * @internal
 */
export const GENERAL_ENGINE_SHARE = 0.05;

/** Finest velocity error asked of a step [m/s]: below it rounding would pass for an error of the step. @internal */
export const FINEST_VELOCITY_TOLERANCE = 1e-12;
