import { constantLaw, REYNOLDS_IN_BOTH } from '../../aerodynamics/compiled-law.js';
import { resolveScene } from '../../scene/scene.js';
import { metres } from '../../units/index.js';
import { sceneProblem, setLaunch } from '../problem.js';
import { kernelFrame, packKernel, setFrame } from './frame.js';
import { type flyKernel, NODE_NUMBERS, PARAMETERS, RESULTS } from './kernel.generated.js';
import { kernelConstants } from './kernel-constants.js';
import { setWind, windTable } from './shear.js';

/**
 * Flights under a law of constants that between them take every branch of the kernel: ball speed [m/s], launch angle
 * [rad], spin rate [rad/s], tilt [rad], wind along [m/s], elevation [m], slope, tolerance [m], time limit [s], roughness
 * length of a logarithmic wind [m] or 0 for a uniform one.
 */
const FLIGHTS = [
  [99, 0.4, 0, 0, 5, 0, 0, 1, 2, 0],
  [60, 1, 300, 0, 0, -99, 0, 5, 60, 0.03],
  [90, 0.2, 300, 0, 20, 0, 0, 5, 60, 0.5],
  [70, 0.2, 1000, -0.6, 9, 0, 0, 1e-5, 60, 2],
  [30, 0.4, 2000, -0.6, 15, 0, 0, 1, 60, 0],
  [30, 0.1, 1000, 0, 15, 0, 0.04, 0.01, 60, 2],
  [20, 0.4, 700, 0, -9, 0, 0.08, 5, 60, 0.03],
  [80, 0.9, 1000, 0.3, 5, -99, 0, 5, 60, 2],
] as const;

/**
 * Takes a kernel once through all its branches. An optimising engine compiles a branch that was never taken as a way
 * back to unoptimised code, where a kernel of this size then stays for seconds; V8 is one.
 * @internal
 */
export function warmUp(kernel: typeof flyKernel): void {
  const frame = kernelFrame();
  const problem = sceneProblem(resolveScene(undefined));
  const p = new Float64Array(PARAMETERS);
  const table = windTable();
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
      if (roughness > 0) setWind(table, profile);
      setFrame(frame, problem, law);
      packKernel(problem, law, frame, tolerance, timeLimit, p);
      kernel(p, kernelConstants(), law.spinTable, law.reynoldsTable, table, out, track);
    },
  );
}
