import type { Angle, AngularSpeed, Length, Speed } from '../units/index.js';

/** Which way round a player stands. */
export type Hand = 'right' | 'left';

/** Where the ball meets the face, measured along the club: toe stays toe for either hand. */
export interface StrikeOffset {
  /** Toward the toe [m]; negative toward the heel. */
  readonly toe: Length;
  /** Up the face [m]; negative low. */
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
  /** Horizontal direction of head travel [rad], + to the right; default 0. */
  readonly clubPath?: Angle;
  /** Horizontal direction the face centre points [rad], + to the right; default 0. */
  readonly faceAngle?: Angle;
  /** Vertical direction the face centre points [rad], + up. */
  readonly dynamicLoft: Angle;
  /** Where the ball meets the face; default the centre. */
  readonly strikeOffset?: StrikeOffset;
  /**
   * Rate at which the face closes about the vertical axis [rad/s], + closing (toward the heel side: left for a
   * right-handed player); default 0.
   */
  readonly closureRate?: AngularSpeed;
  /** Which way round the player stands; default right. */
  readonly hand?: Hand;
}
