import type { MeasuredShot } from '../inputs/measured-shot.js';
import type { Launch } from '../scene/index.js';

/** The launch a measured shot left with, or the names of the readings it lacks. */
export function launchOf(shot: MeasuredShot): Launch | { readonly missing: readonly string[] } {
  const { ballSpeed, launchAngle, spinRate, launchDirection, spinAxisTilt } = shot;
  if (ballSpeed === undefined || launchAngle === undefined || spinRate === undefined) {
    const needed = { ballSpeed, launchAngle, spinRate };
    return {
      missing: Object.entries(needed).flatMap(([name, value]) => (value === undefined ? [name] : [])),
    };
  }
  return {
    ballSpeed,
    launchAngle,
    spinRate,
    ...(launchDirection !== undefined && { launchDirection }),
    ...(spinAxisTilt !== undefined && { spinAxisTilt }),
  };
}
