import type { ResolvedScene } from '../scene/scene.js';
import { runConstants } from '../turf/constants.js';
import { run, toGround, worldX, worldZ } from '../turf/kernel.js';
import { turfOf } from '../turf/presets.js';
import { newRunState, VX, WX, X, Y, Z } from '../turf/state.js';
import { RUN_TIME_LIMIT } from './run-out.js';

/** Runs many balls out on one scene's ground, as plain numbers. @internal */
export interface GroundRun {
  /** Displacement of the last run [m]. Overwritten by the next. */
  x: number;
  z: number;
  /** From velocity [m/s] and spin vector [rad/s] at landing. */
  readonly run: (vx: number, vy: number, vz: number, wx: number, wy: number, wz: number) => void;
}

/** Makes a ground with scratch of its own. @internal */
export function createGroundRun({ turf, ball, air, slope, crossSlope }: ResolvedScene): GroundRun {
  const c = runConstants(turfOf(turf), ball, air, slope, crossSlope, RUN_TIME_LIMIT);
  const s = newRunState();
  const ground: GroundRun = {
    x: 0,
    z: 0,
    run: (vx, vy, vz, wx, wy, wz) => {
      s.fill(0);
      toGround(c, vx, vy, vz, s, VX);
      toGround(c, wx, wy, wz, s, WX);
      run(c, s);
      const along = s[X] as number;
      const normal = s[Y] as number;
      const across = s[Z] as number;
      ground.x = worldX(c, along, normal, across);
      ground.z = worldZ(c, normal, across);
    },
  };
  return ground;
}
