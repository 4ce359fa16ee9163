import { descentAngle } from '../flight/curve-and-descent.js';
import type { FlightSettings } from '../flight/fly.js';
import { createFlyer } from '../flight/flyer.js';
import type { Launch } from '../inputs/launch.js';
import type { ResolvedScene } from '../scene/scene.js';
import type { ModelWarning } from '../warnings/warning.js';
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
  /** Where the ball comes down: along the target line and to the right of it. */
  landingX: number;
  landingZ: number;
  /** Where it rests along the target line; `side` is how far to the right of it. */
  restX: number;
}

/**
 * Plays many launches in one scene: the walk of `playShot` without its records, for searches. The launches must lie
 * within the ranges of a launch, which are not checked again.
 * @internal
 */
export interface Walk {
  readonly play: (launch: Launch, withRun: boolean) => WalkResult;
  /** Warnings of flight and run of the last play. */
  readonly warnings: () => ModelWarning[];
}

/** Makes a walk with scratch of its own. @internal */
export function createWalk(scene: ResolvedScene, settings: FlightSettings): Walk {
  const { axis, fly, warnings } = createFlyer(scene, settings);
  let ran = false;
  const ground = createGroundRun(scene);
  const result: WalkResult = {
    landed: false,
    carry: 0,
    apex: 0,
    descentAngle: 0,
    total: 0,
    side: 0,
    landingX: 0,
    landingZ: 0,
    restX: 0,
  };

  function play(launch: Launch, withRun: boolean): WalkResult {
    const { ending, apex, state } = fly(launch);
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
    result.landingX = x;
    result.landingZ = z;
    result.restX = x;
    ran = withRun && result.landed;
    if (ran) {
      ground.run(vx, vy, vz, spin * axis.nx, spin * axis.ny, spin * axis.nz);
      result.restX = x + ground.x;
      result.side = z + ground.z;
      result.total = Math.hypot(result.restX, result.side);
    }
    return result;
  }
  return { play, warnings: () => [...warnings(), ...(ran ? ground.warnings() : [])] };
}
