import type { CoefficientLaw } from '../aerodynamics/model.js';
import { windRatio } from '../air/wind-ratio.js';
import { describe, type FairflightError } from '../errors.js';
import { STANDARD_GRAVITY } from '../gravity.js';
import { refusal } from '../inputs/refuse.js';
import type { RightHandSide } from '../numerics/embedded-stepper.js';
import type { FlightProblem } from './problem.js';

/** Index of each state: position [m], velocity [m/s], spin rate [rad/s]. @internal */
export const STATES = 7;

/**
 * Equations of motion of a spinning ball, the one right-hand side behind every integrator:
 *
 * dv/dt = −c CD U **U** + c CL U² (n × **U**)/|n × **U**| − g ŷ, dω/dt = −K (ρ/1.225) (U/r) ω,
 *
 * c = ρ π r²/2m, **U** the velocity relative to the wind at the ball's height, n the spin axis, fixed in space.
 * Source: drag and lift as in Bearman & Harvey 1976, Aeronaut. Q. 27, 112; spin decay Smits & Smith 1994, Science and
 * Golf II (constant from memory, corroborated by Dewhurst 2015). S and lift take the part of the spin across **U**
 * unless the model says otherwise, since spin about the direction of flight makes no lift.
 * @internal
 */
export function equationsOfMotion(problem: FlightProblem): RightHandSide {
  const { model, nx, ny, nz, windAlong, windAcross, profile, reynoldsPerSpeed, radius } = problem;
  const { dragFactor, liftFactor, decay, elevation, slopeX, slopeZ } = problem;
  const acrossOnly = model.spinEntering === 'across';
  return (_t, y, out) => {
    const x0 = y[0] as number;
    const x1 = y[1] as number;
    const x2 = y[2] as number;
    const ratio = profile === undefined ? 1 : windRatio(profile, x1 - elevation - slopeX * x0 - slopeZ * x2);
    const vx = y[3] as number;
    const vy = y[4] as number;
    const vz = y[5] as number;
    const omega = y[6] as number;
    const ux = vx - windAlong * ratio;
    const uz = vz - windAcross * ratio;
    const speed = Math.sqrt(ux * ux + vy * vy + uz * uz);
    const lx = ny * uz - nz * vy;
    const ly = nz * ux - nx * uz;
    const lz = nx * vy - ny * ux;
    const across = Math.sqrt(lx * lx + ly * ly + lz * lz);
    out[0] = vx;
    out[1] = vy;
    out[2] = vz;
    out[6] = -decay * speed * omega;
    if (speed === 0) {
      out[3] = 0;
      out[4] = -STANDARD_GRAVITY;
      out[5] = 0;
      return;
    }
    const spinRatio = acrossOnly ? (radius * omega * across) / (speed * speed) : (radius * omega) / speed;
    const reynolds = reynoldsPerSpeed * speed;
    const lifted = omega !== 0 && across !== 0;
    let dragCoefficient = 0;
    let liftCoefficient = 0;
    try {
      dragCoefficient = model.dragCoefficient(reynolds, spinRatio);
      // A ball without spin, or one spinning about its own path, has no direction for lift to act in.
      if (lifted) liftCoefficient = model.liftCoefficient(reynolds, spinRatio);
    } catch (error) {
      throw refusalOf(model, error, reynolds, spinRatio);
    }
    const drag = dragFactor * dragCoefficient * speed;
    const lift = lifted ? (liftFactor * liftCoefficient * speed * speed) / across : 0;
    out[3] = lift * lx - drag * ux;
    out[4] = lift * ly - drag * vy - STANDARD_GRAVITY;
    out[5] = lift * lz - drag * uz;
  };
}

/** What a user's own function threw, with Re and S. */
function refusalOf(
  model: CoefficientLaw,
  error: unknown,
  reynolds: number,
  spinRatio: number,
): FairflightError {
  const said = error instanceof Error ? error.message : describe(error);
  return refusal(
    'scene.aerodynamics',
    `${describe(model.id)} threw at Re ${Math.round(reynolds)} and S ${spinRatio.toPrecision(4)}: ${said}`,
    { value: { reynolds, spinRatio }, hint: 'a model must answer for every Re and S from 0 on' },
  );
}
