import type { Launch } from '../scene/launch.js';
import type { ModelWarning } from '../source.js';
import type { Angle, AngularSpeed, Speed } from '../units/index.js';

/** What an impact does. */
export interface Strike {
  /** How the ball leaves. */
  readonly launch: Launch;
  /** Ball speed over club speed. */
  readonly smashFactor: number;
  /** Angle between head travel and the face normal at the point of contact [rad]. */
  readonly spinLoft: Angle;
  /** Face angle at the point of contact less club path [rad]. */
  readonly faceToPath: Angle;
  /** Backspin [rad/s]. */
  readonly backspin: AngularSpeed;
  /** Sidespin [rad/s], + curves right. */
  readonly sidespin: AngularSpeed;
  /** Spin that the rotation of the head adds: this strike less the same contact with the head kept from turning. */
  readonly gearEffect: { readonly backspin: AngularSpeed; readonly sidespin: AngularSpeed };
  /** Coefficient of restitution used at this speed and point of the face. */
  readonly restitution: number;
  /** Tangential restitution used. */
  readonly tangentialRestitution: number;
  /** True when friction was exhausted and the ball slid throughout. */
  readonly slid: boolean;
  /** Tangential over normal impulse: the friction coefficient the contact needed. */
  readonly frictionUsed: number;
  /** Speed of the head after impact [m/s]. */
  readonly clubSpeedAfter: Speed;
  /** Inputs outside the range the model was calibrated for. */
  readonly warnings: readonly ModelWarning[];
}
