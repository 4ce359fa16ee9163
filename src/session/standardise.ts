import type { FlightOptions } from '../flight/index.js';
import { custom, type Declared } from '../inputs/field.js';
import { flightOptionFields } from '../inputs/flight-options.js';
import { frozen } from '../inputs/frozen.js';
import { type MeasuredShot, measuredShotFields } from '../inputs/measured-shot.js';
import { readOptions, readRecord } from '../inputs/read.js';
import { refusal } from '../inputs/refuse.js';
import type { Scene } from '../scene/index.js';
import { type ResolvedScene, resolveScene, withDefaults } from '../scene/scene.js';
import type { Shot } from '../shot/index.js';
import { createPlayer } from '../shot/player.js';
import { shotSettings } from '../shot/shot-options.js';
import { type Angle, type Duration, type Length, si } from '../units/index.js';
import type { ModelWarning } from '../warnings/index.js';
import { launchIn } from './launch-of.js';

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

/** The two scenes of {@link standardise}. */
export interface TwoScenes {
  /** Scene the shot was measured in; default as its fields say. */
  readonly from?: Scene;
  /** Scene to move it to; default as its fields say. */
  readonly to?: Scene;
}

/** {@link TwoScenes} with their defaults filled in. */
interface ResolvedScenes {
  readonly from: ResolvedScene;
  readonly to: ResolvedScene;
}

/** Declaration of {@link TwoScenes}. @internal */
export const twoScenesFields: Declared<TwoScenes> = /* @__PURE__ */ frozen(() => ({
  from: custom(resolveScene, 'scene it was measured in'),
  to: custom(resolveScene, 'scene to move it to'),
}));

/**
 * Re-flies a measured launch in another scene: other air, wind, altitude, ground or turf. The readings are moved by
 * the difference the model sees between the two scenes, so that what the model gets wrong about this ball in both
 * cancels.
 *
 * How far differences can be trusted, `changeElsewhere` says: density is known well, how a ball answers to it less; wind is known to the profile
 * given; a change of turf moves the run, a band of ±25 %.
 * @param shot - ball speed, launch angle and spin rate at least; direction and axis tilt default to 0
 * @param scenes - `from`, the scene it was measured in, and `to`, the one to move it to
 * @param options - tolerance and time limit
 * @throws `FairflightError` `invalid-input` or `outside-range` naming the field, also when the launch is incomplete
 * @example standardise(shot, { from: { air: airAt({ temperature: celsius(5) }) }, to: {} }).shot.carry
 */
export function standardise(
  shot: MeasuredShot,
  scenes: TwoScenes,
  options: FlightOptions = {},
): StandardisedShot {
  const settings = shotSettings(readOptions(flightOptionFields, options));
  const measured = readRecord(measuredShotFields, shot, 'shot');
  const read = readRecord(twoScenesFields, scenes, 'scenes') as Partial<ResolvedScenes>;
  const launch = launchIn(measured);
  if ('missing' in launch) {
    throw refusal(
      `shot.${launch.missing[0] ?? ''}`,
      `standardise needs ballSpeed, launchAngle and spinRate; the shot lacks ${launch.missing.join(', ')}`,
    );
  }
  const fly = (scene: ResolvedScene = withDefaults({})): Shot =>
    createPlayer(scene, settings).fromLaunch(launch);
  const here = fly(read.from);
  const there = fly(read.to);
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
      ...measured,
      carry: measured.carry === undefined ? there.carry : si(measured.carry + change.carry),
      total: measured.total === undefined ? there.total : si(measured.total + change.total),
      side: measured.side === undefined ? there.flight.side : si(measured.side + change.side),
      apex: measured.apex === undefined ? there.flight.apex : si(measured.apex + change.apex),
      curve: measured.curve === undefined ? there.flight.curve : si(measured.curve + curve),
      descentAngle:
        measured.descentAngle === undefined
          ? there.flight.descentAngle
          : si(measured.descentAngle + change.descentAngle),
      hangTime:
        measured.hangTime === undefined ? there.flight.hangTime : si(measured.hangTime + change.hangTime),
    },
    change,
    basis: {
      carry: measured.carry === undefined ? 'modelled' : 'measured',
      total: measured.total === undefined ? 'modelled' : 'measured',
    },
    here,
    there,
    warnings: [...here.warnings, ...there.warnings],
  };
}
