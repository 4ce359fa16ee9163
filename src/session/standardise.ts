import { FairflightError } from '../errors.js';
import type { FlightOptions } from '../flight/index.js';
import type { Scene } from '../scene/index.js';
import { playShot, type Shot } from '../shot/index.js';
import type { ModelWarning } from '../source.js';
import { type Angle, type Duration, type Length, si } from '../units/index.js';
import { launchOf } from './launch-of.js';
import type { MeasuredShot } from './measured-shot.js';

/** What the change of scene does to a shot, by the model. */
export interface SceneEffect {
  /** Carry [m]. */
  readonly carry: Length;
  /** Total distance [m]. */
  readonly total: Length;
  /** Sideways position where the ball comes down [m]. */
  readonly side: Length;
  /** Apex [m]. */
  readonly apex: Length;
  /** Descent angle [rad]. */
  readonly descentAngle: Angle;
  /** Time in the air [s]. */
  readonly hangTime: Duration;
}

/** A measured shot moved to another scene. */
export interface StandardisedShot {
  /**
   * The shot as it would have been measured there. Readings of flight and run are moved by the model's difference
   * between the two scenes; those that were not measured are the model's own.
   */
  readonly shot: MeasuredShot;
  /** The model's difference, there less here. */
  readonly change: SceneEffect;
  /** Which distances rest on a reading, and which on the model alone. */
  readonly basis: { readonly carry: 'measured' | 'modelled'; readonly total: 'measured' | 'modelled' };
  /** The launch flown where it was measured. */
  readonly here: Shot;
  /** The launch flown there. */
  readonly there: Shot;
  /** All warnings of both. */
  readonly warnings: readonly ModelWarning[];
}

/**
 * Re-flies a measured launch in another scene: other air, wind, altitude, ground or turf. The readings are moved by
 * the difference the model sees between the two scenes, so that what the model gets wrong about this ball in both
 * cancels.
 *
 * How far differences can be trusted: density is the main effect and is well known; wind is known to the profile
 * given; a change of turf moves the run, a band of ±30 % at best.
 * @param shot - ball speed, launch angle and spin rate at least; direction and axis tilt default to 0
 * @param from - scene it was measured in
 * @param to - scene to move it to
 * @throws {@link FairflightError} `invalid-input` when the launch is incomplete, and what {@link playShot} throws
 */
export function standardise(
  shot: MeasuredShot,
  from: Scene,
  to: Scene,
  options: FlightOptions = {},
): StandardisedShot {
  const launch = launchOf(shot);
  if ('missing' in launch) {
    throw new FairflightError(
      'invalid-input',
      `standardise needs ballSpeed, launchAngle and spinRate; the shot lacks ${launch.missing.join(', ')}`,
      { field: `shot.${launch.missing[0] ?? ''}`, value: undefined },
    );
  }
  const here = playShot(launch, { scene: from, flight: options });
  const there = playShot(launch, { scene: to, flight: options });
  const change: SceneEffect = {
    carry: si(there.carry - here.carry),
    total: si(there.total - here.total),
    side: si(there.flight.side - here.flight.side),
    apex: si(there.flight.apex - here.flight.apex),
    descentAngle: si(there.flight.descentAngle - here.flight.descentAngle),
    hangTime: si(there.flight.hangTime - here.flight.hangTime),
  };
  const curve = si<Length>(there.flight.curve - here.flight.curve);
  return {
    shot: {
      ...shot,
      carry: shot.carry === undefined ? there.carry : si(shot.carry + change.carry),
      total: shot.total === undefined ? there.total : si(shot.total + change.total),
      side: shot.side === undefined ? there.flight.side : si(shot.side + change.side),
      apex: shot.apex === undefined ? there.flight.apex : si(shot.apex + change.apex),
      curve: shot.curve === undefined ? there.flight.curve : si(shot.curve + curve),
      descentAngle:
        shot.descentAngle === undefined
          ? there.flight.descentAngle
          : si(shot.descentAngle + change.descentAngle),
      hangTime: shot.hangTime === undefined ? there.flight.hangTime : si(shot.hangTime + change.hangTime),
    },
    change,
    basis: {
      carry: shot.carry === undefined ? 'modelled' : 'measured',
      total: shot.total === undefined ? 'modelled' : 'measured',
    },
    here,
    there,
    warnings: [...here.warnings, ...there.warnings],
  };
}
