import type { Angle, AngularSpeed, Speed } from '../units/index.js';

/** How the ball leaves. */
export interface Launch {
  /** Ball speed [m/s], 1 to 110. */
  readonly ballSpeed: Speed;
  /** Vertical launch angle [rad], + up, −π/2 to π/2. */
  readonly launchAngle: Angle;
  /** Horizontal launch direction [rad], + right of the target line; default 0. */
  readonly launchDirection?: Angle;
  /** Rate of the spin across the launch direction, backspin and sidespin together [rad/s], 0 to 2,100. */
  readonly spinRate: AngularSpeed;
  /**
   * Tilt of the spin axis about the launch direction [rad], + right (curves right); default 0. Backspin is
   * spinRate cos(tilt), sidespin spinRate sin(tilt); beyond ±π/2 the ball has topspin.
   */
  readonly spinAxisTilt?: Angle;
  /** Rifle spin, the component along the launch direction [rad/s], right-handed; default 0. */
  readonly rifleSpin?: AngularSpeed;
}
