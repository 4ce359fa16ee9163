import type { Angle, AngularSpeed, Length, Speed } from '../units/index.js';
import { DEGREES, DEGREES_PER_SECOND, MILLIMETRES, MPH } from '../units/unit.js';
import { type ChoiceField, choice, type Declared, optional, quantity, record } from './field.js';
import { frozen } from './frozen.js';

/** Which way round a player stands. */
export type PlayerHand = 'right' | 'left';

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
  readonly hand?: PlayerHand;
}

/** Declaration of {@link StrikeOffset}. @internal */
export const strikeOffsetFields: Declared<StrikeOffset> = /* @__PURE__ */ frozen(() => ({
  toe: quantity(MILLIMETRES, -0.06, 0.06, 0.01, 'strike toward the toe'),
  high: quantity(MILLIMETRES, -0.04, 0.04, 0.005, 'strike up the face'),
}));

/** Declaration of {@link PlayerHand}. @internal */
export const handField: ChoiceField = /* @__PURE__ */ frozen(() =>
  choice<PlayerHand>(['right', 'left'], 'hand'),
);

/** Declaration of {@link Delivery}. @internal */
export const deliveryFields: Declared<Delivery> = /* @__PURE__ */ frozen(() => ({
  clubSpeed: quantity(MPH, 1, 90, 45, 'club speed'),
  attackAngle: quantity(DEGREES, -0.6, 0.6, 0.02, 'attack angle'),
  clubPath: optional(quantity(DEGREES, -0.8, 0.8, 0.02, 'club path')),
  faceAngle: optional(quantity(DEGREES, -0.8, 0.8, 0.01, 'face angle')),
  dynamicLoft: quantity(DEGREES, -0.4, 1.4, 0.25, 'dynamic loft'),
  strikeOffset: optional(record(strikeOffsetFields, 'strike offset')),
  closureRate: optional(quantity(DEGREES_PER_SECOND, -200, 200, 30, 'closure rate')),
  hand: optional(handField),
}));
