import type { MeasuredShot } from '../inputs/measured-shot.js';
import { FLIGHT_READINGS } from '../inputs/readings.js';
import { refusal } from '../inputs/refuse.js';
import type { CalibrationTarget, NotFitted } from './calibration.js';
import { launchIn } from './launch-of.js';

/** Fewest shots from which a value is fitted. */
const FEWEST = 5;

const IN_WORDS: Readonly<Record<CalibrationTarget, string>> = {
  restitution: 'club speed, ball speed and launch angle',
  tangentialRestitution: 'club speed, ball speed, launch angle and spin',
  dragScale: 'ball speed, launch angle, spin, and carry, apex or descent angle',
  liftScale: 'ball speed, launch angle, spin, and carry, apex or descent angle',
};

/** The readings that a shot lacks to count for all of these targets. @internal */
export function lackingFor(targets: readonly CalibrationTarget[], shot: MeasuredShot): readonly string[] {
  return [...new Set(targets.flatMap((target) => lacking(target, shot)))];
}

function lacking(target: CalibrationTarget, shot: MeasuredShot): readonly string[] {
  if (target === 'restitution' || target === 'tangentialRestitution') {
    const needed = ['clubSpeed', 'ballSpeed', 'launchAngle'] as const;
    const all = target === 'restitution' ? needed : ([...needed, 'spinRate'] as const);
    return all.filter((name) => shot[name] === undefined);
  }
  const launch = launchIn(shot);
  if ('missing' in launch) return launch.missing;
  return FLIGHT_READINGS.some((name) => shot[name] !== undefined) ? [] : ['carry, apex or descentAngle'];
}

/**
 * Divides the targets into those that can be fitted to these shots and those that cannot.
 * @throws `FairflightError` `invalid-input` when nothing can be fitted
 * @internal
 */
export function partTargets(
  shots: readonly MeasuredShot[],
  what: readonly CalibrationTarget[],
): { readonly targets: readonly CalibrationTarget[]; readonly notFitted: readonly NotFitted[] } {
  const usable = (target: CalibrationTarget): number =>
    shots.filter((shot) => lacking(target, shot).length === 0).length;
  const targets = what.filter((target) => usable(target) >= FEWEST);
  const notFitted = what
    .filter((target) => !targets.includes(target))
    .map(
      (target): NotFitted => ({
        target,
        usable: usable(target),
        reason: `at least ${FEWEST} usable shots, with ${IN_WORDS[target]}, are needed; got ${usable(target)}`,
      }),
    );
  const [first] = notFitted;
  if (targets.length > 0 || first === undefined) return { targets, notFitted };
  throw refusal('shots', `${first.target} cannot be fitted: ${first.reason}`, {
    value: first.usable,
    hint: 'give more shots or more readings',
  });
}
