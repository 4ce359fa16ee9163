import { type Launch, launchFields } from '../inputs/launch.js';
import { allows } from '../inputs/read.js';
import { rangeText, refusal } from '../inputs/refuse.js';
import type { Speed } from '../units/index.js';

const LIMITED = ['ballSpeed', 'spinRate', 'rifleSpin'] as const;

/** True for a launch that is neither faster, slower nor with more spin than a flight is computed for. @internal */
export function isFlyable(launch: Launch): boolean {
  return LIMITED.every((name) => allows(launchFields[name], launch[name] ?? 0));
}

/**
 * The launch of a strike when it can be flown.
 * @throws FairflightError `outside-range` for the delivery's club speed, which is what the caller wrote, where the ball
 *   would leave faster, slower or with more spin than a flight is computed for
 * @internal
 */
export function requireFlyable(launch: Launch, clubSpeed: Speed, path = 'delivery.clubSpeed'): Launch {
  for (const name of LIMITED) {
    const field = launchFields[name];
    const value = launch[name] ?? 0;
    if (allows(field, value)) continue;
    const shown = `${value.toFixed(1)} ${field.si}`;
    throw refusal(
      path,
      `${path} of ${clubSpeed.toFixed(1)} m/s makes a ${field.label} of ${shown}; flights are computed ${rangeText(field)}`,
      { value: clubSpeed, unit: 'm/s', hint: 'a speed nearer to a golf swing will do' },
      'outside-range',
    );
  }
  return launch;
}
