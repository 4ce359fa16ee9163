import { launchFields as fields, type Launch } from '../inputs/launch.js';
import { mph, RADIANS_PER_DEGREE, si } from '../units/index.js';
import type { Deliverer } from './deliverer.js';
import type { DriftWindow, LaunchWindow } from './optimum.js';
import { type Maximum, reach, type Trial } from './search.js';

/** Share of the distance that a window may lose. */
const LOSS = 0.01;
/** Step by which an angle is moved away from its best [rad]. @internal */
export const ANGLE_STEP: number = RADIANS_PER_DEGREE;

/** Finds the window of one input between two limits. @internal */
export type Edges = <Q extends number>(
  trial: (x: number) => Trial,
  x: number,
  lower: number,
  upper: number,
  step: number,
) => DriftWindow<Q>;

/** Windows around an optimum. Where nothing is steep enough, only the distance counts. @internal */
export function windowsFor(best: Maximum): Edges {
  const keep = (1 - LOSS) * best.value;
  return <Q extends number>(
    trial: (x: number) => Trial,
    x: number,
    lower: number,
    upper: number,
    step: number,
  ): DriftWindow<Q> => {
    const judged = best.met ? trial : (at: number) => ({ ...trial(at), margin: Number.POSITIVE_INFINITY });
    const { low, high } = reach(judged, x, keep, lower, upper, step);
    const held = [low?.byConstraint && ('low' as const), high?.byConstraint && ('high' as const)].filter(
      (end) => end === 'low' || end === 'high',
    );
    return {
      ...(low && { low: low.x as Q }),
      ...(high && { high: high.x as Q }),
      ...(held.length > 0 && { heldByDescent: held }),
    };
  };
}

/** How far the launch of an optimum may drift; more ball speed never loses distance. @internal */
export function launchWindow({ trial }: Deliverer, edges: Edges, launch: Launch): LaunchWindow {
  const { ballSpeed, launchAngle, spinRate } = launch;
  const step = Math.max(1, spinRate / 20);
  return {
    ballSpeed: edges(
      (v) => trial({ ...launch, ballSpeed: si(v) }),
      ballSpeed,
      fields.ballSpeed.min,
      ballSpeed,
      mph(1),
    ),
    launchAngle: edges(
      (a) => trial({ ...launch, launchAngle: si(a) }),
      launchAngle,
      fields.launchAngle.min,
      fields.launchAngle.max,
      ANGLE_STEP,
    ),
    spinRate: edges(
      (w) => trial({ ...launch, spinRate: si(w) }),
      spinRate,
      fields.spinRate.min,
      fields.spinRate.max,
      step,
    ),
  };
}
