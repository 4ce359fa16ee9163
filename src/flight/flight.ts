import type { Launch } from '../inputs/launch.js';
import type { Track } from '../track.js';
import type { Angle, AngularSpeed, Duration, Length, Speed } from '../units/index.js';
import type { Vector3 } from '../vector.js';
import type { ModelWarning } from '../warnings/index.js';

/** State of the ball in the air. */
export interface BallState {
  /** Time since launch [s]. */
  readonly time: Duration;
  /** Position [m]. */
  readonly position: Vector3;
  /** Velocity [m/s]. */
  readonly velocity: Vector3;
  /** Speed over the ground [m/s]. */
  readonly speed: Speed;
  /** Total spin rate [rad/s]. */
  readonly spinRate: AngularSpeed;
}

/** State of the ball as it meets the ground. */
export interface Landing extends BallState {
  /** Unit spin axis, fixed in space; backspin is along +z. */
  readonly spinAxis: Vector3;
  /** Steepness of the path below the horizontal [rad]. */
  readonly descentAngle: Angle;
}

/** One flight, from launch to the first contact with the ground. */
export interface Flight {
  /**
   * How it ended. `landed` is the rule. `time-limit`: still in the air at the time limit. `below-ground`: the ball
   * never came above the ground plane (a green higher than the apex). `topped`: it was launched along the ground it
   * stood on, or into it, and never flew. In the other cases every figure below describes the last state computed,
   * and `warnings` says so; only a ball that landed has a run.
   */
  readonly ended: 'landed' | 'time-limit' | 'below-ground' | 'topped';
  /** The launch flown. */
  readonly launch: Launch;
  /** Horizontal distance from the start to where the ball first meets the ground plane [m]. */
  readonly carry: Length;
  /**
   * Standard error of the carry [m], plus or minus: how far the measurements open the default ball, found by leaving out
   * one source at a time, in still air. Only where the default model was flown to a landing, from 25 to 85 m/s at a
   * spin ratio of 0.02 to 0.8. Single balls differ by more: 13 of them spread by 18 m (Lyu, Kensrud, Smith and Tosaya 2018).
   */
  readonly carryBand?: Length;
  /** Sideways position at that point [m], + right of the target line. */
  readonly side: Length;
  /** Sideways distance of that point from the initial launch line [m], + right. */
  readonly curve: Length;
  /** Greatest height above the start [m]; 0 when the ball never rises. */
  readonly apex: Length;
  /** Horizontal distance from the start at which the apex is reached [m]. */
  readonly apexAt: Length;
  /** Time in the air [s]. */
  readonly hangTime: Duration;
  /** Steepness of the path below the horizontal at landing [rad]. */
  readonly descentAngle: Angle;
  /** State at landing. */
  readonly landing: Landing;
  /** Id of the coefficient model. */
  readonly aerodynamics: string;
  /** Accepted steps of the integration, for {@link pathOf} and {@link stateAt}. */
  readonly track: Track;
  /** Where the flight left the model's published range. */
  readonly warnings: readonly ModelWarning[];
}
