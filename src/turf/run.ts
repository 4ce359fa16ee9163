import type { Track } from '../track.js';
import type { Angle, AngularSpeed, Duration, Length, Speed } from '../units/index.js';
import type { Vector3 } from '../vector.js';
import type { ModelWarning } from '../warnings/index.js';

/** One contact with the turf. */
export interface Bounce {
  /** Where [m], world frame. */
  readonly position: Vector3;
  /** Time since the first landing [s]. */
  readonly time: Duration;
  /** Speed before [m/s]. */
  readonly speedBefore: Speed;
  /** Angle to the ground plane before [rad]. */
  readonly descentAngle: Angle;
  /** Speed after [m/s]. */
  readonly speedAfter: Speed;
  /** Backspin after, about the axis in the plane across the travel before [rad/s]; negative is topspin. */
  readonly backspinAfter: AngularSpeed;
  /** Height of the hop that follows [m]. */
  readonly hopHeight: Length;
}

/** What happens after the first landing. */
export interface Run {
  /** Contacts with the turf, the first landing included. */
  readonly bounces: readonly Bounce[];
  /** Signed run along the direction of landing, in the horizontal plane [m]; negative when the ball comes back. */
  readonly distance: Length;
  /** Movement across the direction of landing during the run [m], + right of it. */
  readonly side: Length;
  /** Time from the first landing to rest, or to the time limit [s]. */
  readonly duration: Duration;
  /** Where the ball comes to rest [m], world frame; at the time limit where it is then, perhaps up in a hop. */
  readonly restsAt: Vector3;
  /** How it ended: at rest, or still rolling or hopping at the time limit (a slope steeper than the turf can hold). */
  readonly ended: 'at-rest' | 'still-rolling';
  /**
   * Run as a band [m]: ±25 % with the bounce of Biber et al. 2023, ±65 % with that of Penner 2002, which is twice the rms of
   * error over run that the outside rows of run and total leave (docs/validation.md). They are means of many shots; single
   * drives of one player on one day differ by as much again.
   */
  readonly band: { readonly low: Length; readonly high: Length };
  /** Nodes of hops, skid and roll, for `pathOf` and `stateAt`; times since the first landing. */
  readonly track: Track;
  /** Landings outside the range the bounce model was tested for. */
  readonly warnings: readonly ModelWarning[];
}
