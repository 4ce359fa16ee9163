import { type AerodynamicModelId, coefficientLaws, presentDayModels } from '../aerodynamics/registry.js';
import type { Flight } from '../flight/flight.js';
import { flyIn, settingsOf } from '../flight/fly.js';
import { type FlightProblem, flightProblem } from '../flight/problem.js';
import { rangeWarnings, rangeWatch } from '../flight/range-watch.js';
import { type FlightOptions, flightOptionFields } from '../inputs/flight-options.js';
import { type Launch, readLaunch } from '../inputs/launch.js';
import { readOptions, readRecord } from '../inputs/read.js';
import { refusal } from '../inputs/refuse.js';
import { resolveScene, type Scene, sceneFields } from '../scene/scene.js';
import { createPathReader } from '../shot/path-reader.js';
import { readTracks } from '../shot/read-track.js';
import type { Angle, Duration, Length } from '../units/index.js';

/** Share of a flight that must lie within a model's range. */
const ENOUGH_WITHIN = 0.75;
/** Places of a flight at which it is asked. */
const SAMPLES = 64;

/** Least and greatest of what several models say. No error bar: the models may all be wrong together. */
export interface Spread<T extends number> {
  /** Least. */
  readonly min: T;
  /** Greatest. */
  readonly max: T;
}

/** One model's flight in an {@link Ensemble}. */
export interface EnsembleFlight {
  /** Id of the coefficient model. */
  readonly model: AerodynamicModelId;
  /** Its flight. */
  readonly flight: Flight;
  /** Share of the time in the air within the model's own range, or past an end of it by a quarter at most. */
  readonly withinRange: number;
  /** True where that is three quarters or more and the ball landed. Only such flights count towards the spread. */
  readonly counts: boolean;
}

/** What {@link flyEnsemble} returns. */
export interface Ensemble {
  /** A flight for each model of a present-day ball, the default first. */
  readonly flights: readonly EnsembleFlight[];
  /** What the flights that count span; absent where fewer than two do. */
  readonly spread?: {
    /** Carry [m]. */
    readonly carry: Spread<Length>;
    /** Apex [m]. */
    readonly apex: Spread<Length>;
    /** Sideways position at landing [m], + right. */
    readonly side: Spread<Length>;
    /** Time in the air [s]. */
    readonly hangTime: Spread<Duration>;
    /** Descent angle [rad]. */
    readonly descentAngle: Spread<Angle>;
  };
}

/**
 * Flies one launch by every built-in coefficient model of a present-day ball ({@link presentDayModels}), and says what
 * those whose range it keeps to span: how far measurements of different balls by different people differ about this
 * shot. Four models are few, and the default was fitted to what two of the others rest on.
 *
 * @param launch - how the ball leaves
 * @param scene - air, wind, ground and ball; no coefficient model
 * @param options - tolerance and time limit
 * @throws `FairflightError` `invalid-input` or `outside-range`, naming field, value, unit and allowed range
 * @example flyEnsemble(launch, { air: airAtAltitude({ altitude: metres(1600) }) }).spread?.carry
 */
export function flyEnsemble(launch: Launch, scene: Scene = {}, options: FlightOptions = {}): Ensemble {
  const settings = settingsOf(readOptions(flightOptionFields, options));
  const given = readRecord(sceneFields, scene, 'scene');
  if (given.aerodynamics !== undefined) {
    throw refusal(
      'scene.aerodynamics',
      'scene.aerodynamics must be left out: an ensemble flies every model of a present-day ball',
    );
  }
  const resolved = resolveScene(given);
  const read = readLaunch(launch);
  const flights = presentDayModels.map((model): EnsembleFlight => {
    const inScene = { ...resolved, model: coefficientLaws[model] };
    const flight = flyIn(inScene, read, settings);
    const withinRange = shareWithinRange(flight, flightProblem(read, inScene));
    return {
      model,
      flight,
      withinRange,
      counts: flight.ended === 'landed' && withinRange >= ENOUGH_WITHIN,
    };
  });
  const counting = flights.filter(({ counts }) => counts).map(({ flight }) => flight);
  if (counting.length < 2) return { flights };
  const spread = <T extends number>(of: (flight: Flight) => T): Spread<T> => {
    const sorted = counting.map(of).sort((a, b) => a - b);
    return { min: sorted[0] as T, max: sorted.at(-1) as T };
  };
  return {
    flights,
    spread: {
      carry: spread(({ carry }) => carry),
      apex: spread(({ apex }) => apex),
      side: spread(({ side }) => side),
      hangTime: spread(({ hangTime }) => hangTime),
      descentAngle: spread(({ descentAngle }) => descentAngle),
    },
  };
}

function shareWithinRange(flight: Flight, problem: FlightProblem): number {
  const reader = createPathReader(readTracks(flight).flight, undefined);
  let within = 0;
  for (let i = 0; i < SAMPLES; i++) {
    reader.moveTo(((i + 0.5) / SAMPLES) * reader.end);
    const watch = rangeWatch(problem);
    watch.note(reader.state);
    if (rangeWarnings(problem.model, watch.seen).every(({ severity }) => severity === 'note')) within++;
  }
  return within / SAMPLES;
}
