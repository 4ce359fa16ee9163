import type { ResolvedScene } from '../scene/scene.js';
import { runConstants } from '../turf/constants.js';
import { run, toGround, worldX, worldZ } from '../turf/kernel.js';
import { turfOf } from '../turf/presets.js';
import { landingWarnings } from '../turf/run-out.js';
import { newRunState, VX, VY, VZ, WX, X, Y, Z } from '../turf/state.js';
import type { ModelWarning } from '../warnings/warning.js';
import { RUN_TIME_LIMIT } from './run-out.js';

/** Runs many balls out on one scene's ground, as plain numbers. @internal */
export interface GroundRun {
  /** Displacement of the last run [m]. Overwritten by the next. */
  x: number;
  z: number;
  /** From velocity [m/s] and spin vector [rad/s] at landing. */
  readonly run: (vx: number, vy: number, vz: number, wx: number, wy: number, wz: number) => void;
  /** Warnings of the last run. */
  readonly warnings: () => ModelWarning[];
}

/** Makes a ground with scratch of its own. @internal */
export function createGroundRun({ turf, ball, air, slope, crossSlope }: ResolvedScene): GroundRun {
  const c = runConstants(turfOf(turf), ball, air, slope, crossSlope, RUN_TIME_LIMIT);
  const s = newRunState();
  const landing = { along: 0, normal: 0, across: 0 };
  const ground: GroundRun = {
    x: 0,
    z: 0,
    run: (vx, vy, vz, wx, wy, wz) => {
      s.fill(0);
      toGround(c, vx, vy, vz, s, VX);
      toGround(c, wx, wy, wz, s, WX);
      landing.along = s[VX] as number;
      landing.normal = s[VY] as number;
      landing.across = s[VZ] as number;
      run(c, s);
      const along = s[X] as number;
      const normal = s[Y] as number;
      const across = s[Z] as number;
      ground.x = worldX(c, along, normal, across);
      ground.z = worldZ(c, normal, across);
    },
    warnings: () => landingWarnings(c.law, landing.along, landing.normal, landing.across),
  };
  return ground;
}
