import { requireOneOf, requireRecord, requireWithin } from '../errors.js';
import type { Angle, AngularSpeed, Length, Speed } from '../units/index.js';
import type { StrikeInput } from './impact.js';

/** Which way round a player stands. */
export type Hand = 'right' | 'left';

/** Where the ball meets the face, measured along the club: toe stays toe for either hand. */
export interface StrikeOffset {
  /** Toward the toe [m]; negative toward the heel; −0.06 to 0.06. */
  readonly toe: Length;
  /** Up the face [m]; negative low; −0.04 to 0.04. */
  readonly high: Length;
}

/**
 * How the clubhead comes to the ball. Angles are in the world frame for either hand: + is right of the target line
 * and up. Dynamic loft and face angle are those of the face **centre**; bulge and roll add the local turn.
 */
export interface Delivery {
  /** Speed of the head's centre of gravity just before contact [m/s], 1 to 90. */
  readonly clubSpeed: Speed;
  /** Vertical direction of head travel [rad], + up, −0.6 to 0.6. */
  readonly attackAngle: Angle;
  /** Horizontal direction of head travel [rad], + to the right, −0.8 to 0.8; default 0. */
  readonly clubPath?: Angle;
  /** Horizontal direction the face centre points [rad], + to the right, −0.8 to 0.8; default 0. */
  readonly faceAngle?: Angle;
  /** Vertical direction the face centre points [rad], + up, −0.4 to 1.4. */
  readonly dynamicLoft: Angle;
  /** Where the ball meets the face; default the centre. */
  readonly strikeOffset?: StrikeOffset;
  /**
   * Rate at which the face closes about the vertical axis [rad/s], + closing (toward the heel side: left for a
   * right-handed player), −200 to 200; default 0.
   */
  readonly closureRate?: AngularSpeed;
  /** Which way round the player stands; default right. */
  readonly hand?: Hand;
}

const ANGLE = 'angles are in radians: use degrees(12)';

/**
 * Checks a delivery and fills in its defaults.
 * @throws {@link FairflightError} naming the field.
 * @internal
 */
export function checkDelivery(delivery: Delivery, field = 'delivery'): Readonly<StrikeInput> {
  requireRecord(field, delivery, [
    'clubSpeed',
    'attackAngle',
    'clubPath',
    'faceAngle',
    'dynamicLoft',
    'strikeOffset',
    'closureRate',
    'hand',
  ]);
  const offset = delivery.strikeOffset ?? { toe: 0, high: 0 };
  requireRecord(`${field}.strikeOffset`, offset, ['toe', 'high']);
  const length = 'use millimetres(10)';
  return {
    clubSpeed: requireWithin(
      `${field}.clubSpeed`,
      delivery.clubSpeed,
      1,
      90,
      'm/s',
      'if that was mph, use mph(100)',
    ),
    attackAngle: requireWithin(`${field}.attackAngle`, delivery.attackAngle, -0.6, 0.6, 'rad', ANGLE),
    clubPath: requireWithin(`${field}.clubPath`, delivery.clubPath ?? 0, -0.8, 0.8, 'rad', ANGLE),
    faceAngle: requireWithin(`${field}.faceAngle`, delivery.faceAngle ?? 0, -0.8, 0.8, 'rad', ANGLE),
    dynamicLoft: requireWithin(`${field}.dynamicLoft`, delivery.dynamicLoft, -0.4, 1.4, 'rad', ANGLE),
    toe: requireWithin(`${field}.strikeOffset.toe`, offset.toe, -0.06, 0.06, 'm', length),
    high: requireWithin(`${field}.strikeOffset.high`, offset.high, -0.04, 0.04, 'm', length),
    closureRate: requireWithin(`${field}.closureRate`, delivery.closureRate ?? 0, -200, 200, 'rad/s'),
    mirror: requireOneOf(`${field}.hand`, delivery.hand ?? 'right', ['right', 'left']) === 'left' ? -1 : 1,
  };
}
