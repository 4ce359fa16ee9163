import { type AerodynamicModelId, coefficientLaws, presentDayModels } from '../aerodynamics/registry.js';
import { custom, type Declared } from '../inputs/field.js';
import { type FlightOptions, flightOptionFields } from '../inputs/flight-options.js';
import { frozen } from '../inputs/frozen.js';
import type { Launch } from '../inputs/launch.js';
import { type MeasuredShot, readMeasuredShots } from '../inputs/measured-shot.js';
import { readOptions, readRecord } from '../inputs/read.js';
import { refusal } from '../inputs/refuse.js';
import { mean } from '../numerics/index.js';
import { type ReadScene, readScene, withDefaults } from '../scene/scene.js';
import { flyEnsemble } from '../sensitivity/ensemble.js';
import type { Shot } from '../shot/index.js';
import { createPlayer } from '../shot/player.js';
import { shotSettings } from '../shot/shot-options.js';
import { type Length, METRES_PER_YARD, si } from '../units/index.js';
import { launchIn } from './launch-of.js';
import type { TwoScenes } from './standardise.js';

/** A mean change of distance, and what models of present-day balls say of it. */
export interface ModelledChange {
  /** Mean over the shots by the scene's own model [m]. */
  readonly value: Length;
  /** Least and greatest by any of the models, the scene's own among them [m]; absent when a scene names its model. */
  readonly spread?: { readonly low: Length; readonly high: Length };
  /**
   * False where the models disagree in sign or by more than the change itself, unless all of them find less than half a
   * yard: say then that it is not known. Absent without a spread.
   */
  readonly known?: boolean;
}

/** What {@link changeElsewhere} returns. */
export interface ChangeElsewhere {
  /** Carry [m]. */
  readonly carry: ModelledChange;
  /** Total distance [m]; the run adds ±25 % of its own. */
  readonly total: ModelledChange;
  /** Sideways position at landing [m], + right. */
  readonly side: ModelledChange;
  /** The models flown: those whose range the flights keep to in both scenes, or all where fewer than two do. */
  readonly models: readonly AerodynamicModelId[];
  /** False where the flights leave the range of most models, so that even their spread is a guess. */
  readonly withinRange: boolean;
}

/** What changes of distances are shown for. */
type Distance = 'carry' | 'total' | 'side';

interface ReadScenes {
  readonly from?: ReadScene;
  readonly to?: ReadScene;
}

const scenesFields: Declared<ReadScenes> = /* @__PURE__ */ frozen(() => ({
  from: custom(readScene, 'scene they were measured in'),
  to: custom(readScene, 'scene to move them to'),
}));

/** Changes of less are none to a player [m]: half a yard. Assumption. */
const NOTHING: number = 0.5 * METRES_PER_YARD;

/**
 * What another scene does to the mean distance of some shots, and how far models of present-day balls agree about it. Air
 * and wind are known well; how a ball answers to them is not, least of all a slow one. The spread is that of the mean
 * launch; models may all be wrong together.
 * @param shots - of one club; ball speed, launch angle and spin rate each
 * @param scenes - `from`, the scene they were measured in, and `to`, the one to move them to
 * @param options - tolerance and time limit
 * @throws `FairflightError` `invalid-input` or `outside-range` naming the field, also when a launch is incomplete
 * @example changeElsewhere(shots, { to: { air: airAtAltitude({ altitude: metres(1600) }) } }).carry.known
 */
export function changeElsewhere(
  shots: readonly MeasuredShot[],
  scenes: TwoScenes,
  options: FlightOptions = {},
): ChangeElsewhere {
  const settings = shotSettings(readOptions(flightOptionFields, options));
  const { from = {}, to = {} } = readRecord<ReadScenes>(scenesFields, scenes, 'scenes');
  const launches = readMeasuredShots(shots, 'shots', 1).map(launchAt);
  const usual = meanLaunch(launches);
  const given = [from, to] as const;
  const named = given.some(({ aerodynamics }) => aerodynamics !== undefined);
  const counting = named ? [] : countingModels(usual, from, to);
  const withinRange = counting.length > 1;
  const models = named || withinRange ? counting : presentDayModels;
  const play = (launch: Launch, model?: AerodynamicModelId): readonly [here: Shot, there: Shot] => {
    const [here, there] = given.map((scene) => {
      const resolved = withDefaults(scene);
      const own = model === undefined ? resolved : { ...resolved, model: coefficientLaws[model] };
      return createPlayer(own, settings).fromLaunch(launch);
    });
    return [here as Shot, there as Shot];
  };
  const changeOf = ([here, there]: readonly [Shot, Shot], of: Distance): number => there[of] - here[of];
  const each = launches.map((launch) => play(launch));
  const own = play(usual);
  const others = models.map((model) => play(usual, model));
  const change = (of: Distance): ModelledChange => {
    const value = mean(each.map((pair) => changeOf(pair, of)));
    if (named) return { value: si(value) };
    // What a model says beside the scene's own, of the mean launch.
    const beside = [0, ...others.map((pair) => changeOf(pair, of) - changeOf(own, of))];
    const [low, high] = [value + Math.min(...beside), value + Math.max(...beside)];
    const none = Math.max(Math.abs(low), Math.abs(high)) < NOTHING;
    const known = none || (low * high > 0 && high - low <= Math.abs(value));
    return { value: si(value), spread: { low: si(low), high: si(high) }, known };
  };
  return { carry: change('carry'), total: change('total'), side: change('side'), models, withinRange };
}

function countingModels(launch: Launch, from: ReadScene, to: ReadScene): readonly AerodynamicModelId[] {
  const [here, there] = [from, to].map(({ aerodynamics: _, ...scene }) =>
    flyEnsemble(launch, scene).flights.flatMap(({ counts, model }) => (counts ? [model] : [])),
  );
  return here?.filter((model) => there?.includes(model)) ?? [];
}

function launchAt(shot: MeasuredShot, i: number): Launch {
  const launch = launchIn(shot);
  if (!('missing' in launch)) return launch;
  throw refusal(
    `shots[${i}].${launch.missing[0] ?? ''}`,
    `shots need ballSpeed, launchAngle and spinRate; shots[${i}] lacks ${launch.missing.join(', ')}`,
  );
}

function meanLaunch(launches: readonly Launch[]): Launch {
  const of = (read: (launch: Launch) => number): number => mean(launches.map(read));
  const backspin = of(({ spinRate, spinAxisTilt = 0 }) => spinRate * Math.cos(spinAxisTilt));
  const sidespin = of(({ spinRate, spinAxisTilt = 0 }) => spinRate * Math.sin(spinAxisTilt));
  return {
    ballSpeed: si(of((launch) => launch.ballSpeed)),
    launchAngle: si(of((launch) => launch.launchAngle)),
    launchDirection: si(of((launch) => launch.launchDirection ?? 0)),
    spinRate: si(Math.hypot(backspin, sidespin)),
    spinAxisTilt: si(Math.atan2(sidespin, backspin)),
  };
}
