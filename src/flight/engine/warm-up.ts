import { constantLaw, REYNOLDS_IN_BOTH } from '../../aerodynamics/compiled-law.js';
import { resolveScene } from '../../scene/scene.js';
import { metres } from '../../units/index.js';
import { sceneProblem, setLaunch } from '../problem.js';
import { kernelFrame, packKernel, setFrame } from './frame.js';
import { type flyKernel, NODE_NUMBERS, PARAMETERS, RESULTS, SHEAR_PARAMETERS } from './kernel.generated.js';
import { kernelConstants } from './kernel-constants.js';
import { compileWind, NO_TABLE, packShear } from './shear.js';

/**
 * Flights under a law of constants that between them take every branch of the kernel: ball speed [m/s], launch angle
 * [rad], spin rate [rad/s], tilt [rad], wind along [m/s], elevation [m], slope, tolerance [m], time limit [s], roughness
 * length of a logarithmic wind [m] or 0 for a uniform one.
 */
const FLIGHTS = [
  [97, 0.96, 1093, 0.61, 9.6, -110, 0.069, 1e-5, 60, 0],
  [79, 0.985, 444, 0.01, -0.1, -187, -0.08, 5, 60, 0],
  [78, 0.081, 1245, 0.37, -8.5, -130, 0.04, 5e-4, 2, 0],
  [92, 0.449, 667, 0.31, 15, -86, 0.042, 5, 60, 0],
  [19, 0.073, 1873, -0.66, -20, 0, 0, 5e-4, 60, 0],
  [70, 0.2, 280, 0.1, -6, 0, 0, 1e-4, 60, 0.03],
  [20, 0.1, 300, 0, 5, 0, 0, 1e-4, 60, 2],
  [58, 0.12, 1400, 0.063, 2.9, 0, -0.016, 5, 60, 1.6],
] as const;

/**
 * Takes a kernel once through all its branches. An optimising engine compiles a branch that was never taken as a way
 * back to unoptimised code, where a kernel of this size then stays for seconds; V8 is one.
 * @internal
 */
export function warmUp(kernel: typeof flyKernel): void {
  const frame = kernelFrame();
  const problem = sceneProblem(resolveScene(undefined));
  const p = new Float64Array(PARAMETERS + SHEAR_PARAMETERS);
  const out = new Float64Array(RESULTS);
  const track = new Float64Array(100 * NODE_NUMBERS);
  FLIGHTS.forEach(
    ([speed, angle, spin, tilt, wind, elevation, slope, tolerance, timeLimit, roughness], i) => {
      // Every form of law in turn.
      const law = constantLaw(0.2, 0.25, i % (REYNOLDS_IN_BOTH + 1));
      setLaunch(problem, speed, angle, 0, spin, tilt, 0);
      problem.windAlong = wind;
      problem.elevation = elevation;
      problem.slopeX = slope;
      const profile = { kind: 'log', roughness: metres(roughness) } as const;
      problem.profile = roughness > 0 ? profile : undefined;
      const shear = roughness > 0 ? compileWind(profile) : undefined;
      setFrame(frame, problem, law);
      packKernel(problem, law, frame, tolerance, timeLimit, p);
      packShear(shear, problem, frame, p, PARAMETERS);
      kernel(p, kernelConstants(), law.spinTable, law.reynoldsTable, shear?.table ?? NO_TABLE, out, track);
    },
  );
}
