import { descentAngle } from '../flight/curve-and-descent.js';
import { createCompiledEngine } from '../flight/engine/compiled.js';
import { createFlightEngine, type EngineResult, type FlightEngine } from '../flight/engine/general.js';
import type { FlightSettings } from '../flight/fly.js';
import { launchInto, sceneProblem } from '../flight/problem.js';
import type { Launch } from '../inputs/launch.js';
import type { ResolvedScene } from '../scene/scene.js';
import { createGroundRun } from './ground-run.js';

/** What a walk reports, as plain SI numbers. Belongs to the walk and is overwritten by the next. @internal */
export interface WalkResult {
  /** False when the ball did not land; then the figures describe the last state computed. */
  landed: boolean;
  carry: number;
  apex: number;
  descentAngle: number;
  /** Horizontal distance from the start to where the ball rests; the carry when the run was not asked for. */
  total: number;
  /** Sideways position where it rests, or lands when the run was not asked for. */
  side: number;
}

/**
 * Plays many launches in one scene: the walk of `playShot` without its records, for searches. The launches must lie
 * within the ranges of a launch, which are not checked again.
 * @internal
 */
export interface Walk {
  readonly play: (launch: Launch, withRun: boolean) => WalkResult;
}

/** Makes a walk with scratch of its own. @internal */
export function createWalk(scene: ResolvedScene, { tolerance, timeLimit }: FlightSettings): Walk {
  const problem = sceneProblem(scene);
  const compiled = createCompiledEngine(false);
  let general: FlightEngine | undefined;
  const ground = createGroundRun(scene);
  const result: WalkResult = { landed: false, carry: 0, apex: 0, descentAngle: 0, total: 0, side: 0 };

  function fly(): Pick<EngineResult, 'ending' | 'apex' | 'state'> {
    const flight = compiled.fly(problem, tolerance, timeLimit);
    if (flight !== undefined) return flight;
    general ??= createFlightEngine();
    return general.fly(problem, tolerance, timeLimit);
  }

  function play(launch: Launch, withRun: boolean): WalkResult {
    launchInto(problem, launch);
    const { ending, apex, state } = fly();
    const x = state[0] as number;
    const z = state[2] as number;
    const vx = state[3] as number;
    const vy = state[4] as number;
    const vz = state[5] as number;
    const spin = state[6] as number;
    result.landed = ending === 'landed';
    result.carry = Math.sqrt(x * x + z * z);
    result.apex = apex;
    result.descentAngle = descentAngle(vx, vy, vz);
    result.total = result.carry;
    result.side = z;
    if (withRun && result.landed) {
      ground.run(vx, vy, vz, spin * problem.nx, spin * problem.ny, spin * problem.nz);
      result.total = Math.hypot(x + ground.x, z + ground.z);
      result.side = z + ground.z;
    }
    return result;
  }
  return { play };
}
