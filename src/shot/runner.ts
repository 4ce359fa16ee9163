import type { ResolvedScene } from '../scene/scene.js';
import { runConstants } from '../turf/constants.js';
import { run, toGround, worldX, worldZ } from '../turf/kernel.js';
import { newRunState, SPIN, VELOCITY } from '../turf/state.js';
import { RUN_TIME_LIMIT } from './run-out.js';

/** Runs many balls out on one scene's ground, as plain numbers. @internal */
export interface Runner {
  /** Displacement of the last run [m]. Overwritten by the next. */
  x: number;
  z: number;
  /** From velocity [m/s] and spin vector [rad/s] at landing. */
  readonly run: (vx: number, vy: number, vz: number, wx: number, wy: number, wz: number) => void;
}

/** Makes a runner with scratch of its own. @internal */
export function createRunner({ turf, ball, air, slope, crossSlope }: ResolvedScene): Runner {
  const ground = runConstants(turf, ball, air, slope, crossSlope, RUN_TIME_LIMIT);
  const s = newRunState();
  const runner: Runner = {
    x: 0,
    z: 0,
    run: (vx, vy, vz, wx, wy, wz) => {
      s.fill(0);
      toGround(ground, vx, vy, vz, s, VELOCITY);
      toGround(ground, wx, wy, wz, s, SPIN);
      run(ground, s);
      const along = s[0] as number;
      const normal = s[1] as number;
      const across = s[2] as number;
      runner.x = worldX(ground, along, normal, across);
      runner.z = worldZ(ground, normal, across);
    },
  };
  return runner;
}
