import { launchFields as fields, type Launch } from '../inputs/launch.js';
import { mph, RADIANS_PER_DEGREE, si } from '../units/index.js';
import type { Deliverer } from './deliverer.js';
import type { DriftWindow, LaunchWindow } from './optimum.js';
import { type Maximum, reach, type Trial, type Walkway } from './search.js';

/** Share of the distance that a window may lose. */
const LOSS = 0.01;
/** Step by which an angle is moved away from its best [rad]. @internal */
export const ANGLE_STEP: number = RADIANS_PER_DEGREE;

/** One input of a window: where it stands, how far it may go, and its step. @internal */
export type Drift = Pick<Walkway, 'x' | 'lower' | 'upper' | 'step' | 'power'>;

/** Finds the window of one input between two limits. @internal */
export type Edges = <Q extends number>(trial: (x: number) => Trial, drift: Drift) => DriftWindow<Q>;

/** Windows around an optimum. Where nothing is steep enough, only the distance counts. @internal */
export function windowsFor(best: Maximum, { smooth }: Deliverer): Edges {
  return <Q extends number>(trial: (x: number) => Trial, drift: Drift): DriftWindow<Q> => {
    const judge = (found: Trial): Trial =>
      best.met ? found : { value: found.value, margin: Number.POSITIVE_INFINITY };
    const { low, high } = reach((at) => judge(trial(at)), {
      ...drift,
      best: judge(best),
      loss: LOSS,
      smooth,
    });
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
  const { ballSpeed: speeds, launchAngle: angles, spinRate: spins } = fields;
  return {
    ballSpeed: edges((v) => trial({ ...launch, ballSpeed: si(v) }), {
      x: ballSpeed,
      lower: speeds.min,
      upper: ballSpeed,
      step: mph(1),
      power: 1,
    }),
    launchAngle: edges((a) => trial({ ...launch, launchAngle: si(a) }), {
      x: launchAngle,
      lower: angles.min,
      upper: angles.max,
      step: ANGLE_STEP,
      power: 2,
    }),
    spinRate: edges((w) => trial({ ...launch, spinRate: si(w) }), {
      x: spinRate,
      lower: spins.min,
      upper: spins.max,
      step: Math.max(1, spinRate / 20),
      power: 2,
    }),
  };
}
