import { isFairflightError } from 'fairflight';
import { type Calibration, calibrate, type MeasuredShot } from 'fairflight/session';
import { counted } from '../lib/text.js';
import { UsageError } from '../lib/usage-error.js';
import type { LadderSetup } from './rungs.js';

/** A calibration, and the setup in which head and ball are the calibrated ones. */
export interface CalibratedSetup {
  readonly setup: LadderSetup;
  readonly calibration: Calibration;
}

/** Readings of a shot that a calibration can do with. */
const NEEDS: readonly { readonly name: string; readonly has: (shot: MeasuredShot) => boolean }[] = [
  { name: 'club speed', has: ({ clubSpeed }) => clubSpeed !== undefined },
  { name: 'ball speed', has: ({ ballSpeed }) => ballSpeed !== undefined },
  { name: 'launch angle', has: ({ launchAngle }) => launchAngle !== undefined },
  { name: 'spin', has: ({ spinRate }) => spinRate !== undefined },
  {
    name: 'carry, apex or descent angle',
    has: ({ carry, apex, descentAngle }) => (carry ?? apex ?? descentAngle) !== undefined,
  },
];

/**
 * Fits head and ball to the player's own shots, as far as these were measured.
 * @throws UsageError when too few shots hold what any of it needs
 */
export function calibratedSetup(shots: readonly MeasuredShot[], setup: LadderSetup): CalibratedSetup {
  const { clubhead, scene, hand } = setup;
  const calibration = calibrationOf();
  return {
    calibration,
    setup: {
      ...setup,
      clubhead: calibration.clubhead,
      scene: { ...scene, aerodynamics: calibration.aerodynamics },
    },
  };

  function calibrationOf(): Calibration {
    try {
      return calibrate(shots, scene, { clubhead, hand });
    } catch (error) {
      if (isFairflightError(error) && error.field === 'shots') throw new UsageError(tooFew(shots));
      throw error;
    }
  }
}

function tooFew(shots: readonly MeasuredShot[]): string {
  const lacking = NEEDS.flatMap(({ name, has }) => {
    const without = shots.filter((shot) => !has(shot)).length;
    return without === 0 ? [] : [`${without} without ${name}`];
  });
  const why = lacking.length === 0 ? '' : ` (${lacking.join(', ')})`;
  return (
    '--calibrate needs at least 5 shots that have ball speed, launch angle, and club speed (for the head) or spin and ' +
    `carry, apex or descent angle (for the ball). The file has ${counted(shots.length, 'usable shot')}${why}`
  );
}
