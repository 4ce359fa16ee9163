import { describe, isRecord } from '../errors.js';
import { type Delivery, deliveryFields } from '../inputs/delivery.js';
import { type Launch, readLaunch } from '../inputs/launch.js';
import { readRecord } from '../inputs/read.js';
import { refusal, refuseType } from '../inputs/refuse.js';

/** Where a shot starts: at the club or at the ball. @internal */
export type Start =
  | { readonly delivery: Delivery; readonly launch?: never }
  | { readonly launch: Launch; readonly delivery?: never };

/**
 * Reads a delivery or a launch: which of the two is told by `clubSpeed` or `ballSpeed`. Errors in its fields speak of
 * `delivery` or `launch`, or of `root` where that is what the caller wrote.
 * @throws FairflightError when it is neither or both, and for the fields of the one it is
 * @internal
 */
export function readStart(from: unknown, path = 'from', root?: string): Start {
  if (!isRecord(from)) throw refuseType(path, 'a delivery or a launch', from);
  const club = Object.hasOwn(from, 'clubSpeed');
  const ball = Object.hasOwn(from, 'ballSpeed');
  if (club !== ball) {
    return club
      ? { delivery: readRecord(deliveryFields, from, root ?? 'delivery') }
      : { launch: readLaunch(from, root ?? 'launch') };
  }
  throw refusal(
    path,
    club
      ? `${path} has clubSpeed and ballSpeed; give a delivery (clubSpeed, attackAngle, dynamicLoft) or a launch (ballSpeed, launchAngle, spinRate), not both`
      : `${path} must be a delivery with clubSpeed or a launch with ballSpeed; it has neither`,
    { value: describe(from) },
  );
}
