import type { Launch } from '../inputs/launch.js';
import { type MeasuredShot, measuredShotFields } from '../inputs/measured-shot.js';
import { readRecord } from '../inputs/read.js';

/** A launch, or the names of the readings that a launch needs and a shot lacks. */
export type LaunchOrMissing = Launch | { readonly missing: readonly string[] };

/**
 * The launch a measured shot left with, or the names of the readings it lacks.
 * @throws `FairflightError` `invalid-input` or `outside-range` naming the field of the shot
 */
export function launchOf(shot: MeasuredShot): LaunchOrMissing {
  return launchIn(readRecord(measuredShotFields, shot, 'shot'));
}

/** {@link launchOf} a shot already read. @internal */
export function launchIn(shot: MeasuredShot): LaunchOrMissing {
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
