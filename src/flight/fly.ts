import { carryShare } from '../aerodynamics/carry-band.js';
import { fittedLaw } from '../aerodynamics/fitted-modern.js';
import { type FlightOptions, flightOptionFields } from '../inputs/flight-options.js';
import { type Launch, readLaunch } from '../inputs/launch.js';
import { readOptions } from '../inputs/read.js';
import { type ResolvedScene, resolveScene, type Scene } from '../scene/scene.js';
import type { GrowingTrack } from '../track.js';
import { si } from '../units/index.js';
import type { CarryEffect, ModelWarning, WarningCode } from '../warnings/warning.js';
import { curve, descentAngle } from './curve-and-descent.js';
import { type CompiledEngine, createCompiledEngine } from './engine/compiled.js';
import { createFlightEngine, type EngineResult, type NodeSink } from './engine/general.js';
import { STATES } from './equations.js';
import type { Flight } from './flight.js';
import { groundAt } from './ground-plane.js';
import { type FlightProblem, flightProblem } from './problem.js';
import { rangeWarnings, rangeWatch, type SeenRanges } from './range-watch.js';

/** Longest flight computed where nothing is said [s]. @internal */
export const FLIGHT_TIME_LIMIT = 60;

/** How exactly and how long a flight is computed. @internal */
export interface FlightSettings {
  /** [m] */
  readonly tolerance: number;
  /** [s] */
  readonly timeLimit: number;
}

/** Reads the options of {@link fly} and fills in their defaults. @throws FairflightError @internal */
export function resolveFlightOptions(options: unknown, path = 'options'): FlightSettings {
  return settingsOf(readOptions(flightOptionFields, options, path));
}

/** Fills in the defaults of options already read. @internal */
export function settingsOf({
  tolerance = 1e-4,
  timeLimit = FLIGHT_TIME_LIMIT,
}: FlightOptionNumbers): FlightSettings {
  return { tolerance, timeLimit };
}

type FlightOptionNumbers = { readonly [K in keyof FlightOptions]: number };

/** Scratch of the compiled engine, made once: it calls nobody back, so no second flight can begin while one is in it. */
let compiled: CompiledEngine | undefined;

/**
 * Flies one ball from launch to its first contact with the ground.
 *
 * Position, velocity and spin rate are integrated with drag, lift and spin decay (see {@link AerodynamicModel}); the
 * spin axis stays fixed in space. Carry is the horizontal distance to where the ball first meets the ground plane of
 * the scene, by default the horizontal plane through the ball's start. The integration adds less than
 * `options.tolerance` to the landing point of an ordinary flight (default 0.1 mm; see {@link FlightOptions} for others);
 * how far the model is from a real ball is another matter, see docs/validation.md.
 *
 * @param launch - how the ball leaves; ball speed 1 to 110 m/s
 * @param scene - air, wind, ground, ball and coefficient model; each field has a default
 * @param options - tolerance and time limit
 * @throws `FairflightError` `invalid-input` or `outside-range`, naming field, value, unit and allowed range;
 *   `not-converged` when a user's own coefficient model is too rough to integrate
 * @example fly({ ballSpeed: mph(150), launchAngle: degrees(12), spinRate: rpm(2600) }).carry
 */
export function fly(launch: Launch, scene: Scene = {}, options: FlightOptions = {}): Flight {
  const settings = resolveFlightOptions(options);
  return flyIn(resolveScene(scene), readLaunch(launch), settings);
}

/** {@link fly} with inputs already read. @internal */
export function flyIn(
  scene: ResolvedScene,
  launch: Launch,
  { tolerance, timeLimit }: FlightSettings,
): Flight {
  const problem = flightProblem(launch, scene);
  compiled ??= createCompiledEngine(true);
  const engine = compiled;
  const flight = engine.fly(problem, tolerance, timeLimit);
  // What the compiled law or its kernel does not cover, the general engine flies with the exact law.
  if (flight === undefined) {
    return recordedFlight(launch, problem, (sink) =>
      createFlightEngine().fly(problem, tolerance, timeLimit, sink),
    );
  }
  return flightRecord(launch, problem, flight, engine.track(), flight.seen);
}

/** Flies a problem by an engine that hands its nodes to a sink, and makes the record of it. @internal */
export function recordedFlight(
  launch: Launch,
  problem: FlightProblem,
  run: (sink: NodeSink) => FlightEnd,
): Flight {
  const time: number[] = [];
  const state: number[] = [];
  const acceleration: number[] = [];
  const watch = rangeWatch(problem);
  const end = run((t, y, f) => {
    time.push(t);
    for (let i = 0; i < STATES; i++) state.push(y[i] as number);
    acceleration.push(f[3] as number, f[4] as number, f[5] as number);
    watch.note(y);
  });
  return flightRecord(launch, problem, end, { time, state, acceleration }, watch.seen);
}

/** What every engine reports of a flight. @internal */
export type FlightEnd = Pick<EngineResult, 'ending' | 'time' | 'apex' | 'apexAt' | 'state'>;

function flightRecord(
  launch: Launch,
  problem: FlightProblem,
  end: FlightEnd,
  track: GrowingTrack,
  seen: SeenRanges,
): Flight {
  const last = end.state;
  const [x, z] = [last[0] as number, last[2] as number];
  // Rounding leaves a landing some 1e-14 m off the plane; it is put onto it, and so is the end of its track.
  const y =
    end.ending === 'landed'
      ? groundAt(problem.elevation, problem.slopeX, problem.slopeZ, x, z)
      : (last[1] as number);
  track.state[track.state.length - STATES + 1] = y;
  const [vx, vy, vz] = [last[3] as number, last[4] as number, last[5] as number];
  const descent = si<Flight['descentAngle']>(descentAngle(vx, vy, vz));
  const carry = Math.sqrt(x * x + z * z);
  const band = end.ending === 'landed' ? bandOf(problem, launch.ballSpeed, carry) : undefined;
  const warnings = warningsOf(problem, end, seen, band);
  const flight: { -readonly [K in keyof Flight]: Flight[K] } = {
    ended: end.ending,
    launch,
    carry: si(carry),
    side: si(z),
    curve: si(curve(x, z, launch.launchDirection ?? 0)),
    apex: si(end.apex),
    apexAt: si(end.apexAt),
    hangTime: si(end.time),
    descentAngle: descent,
    landing: {
      time: si(end.time),
      position: { x, y, z },
      velocity: { x: vx, y: vy, z: vz },
      speed: si(Math.sqrt(vx * vx + vz * vz + vy * vy)),
      spinRate: si(last[6] as number),
      spinAxis: { x: problem.nx, y: problem.ny, z: problem.nz },
      descentAngle: descent,
    },
    aerodynamics: problem.model.id,
    track,
    warnings,
  };
  // Not spread into the literal, which would cost a tenth of the flight.
  if (band !== undefined) flight.carryBand = band.carry;
  return flight;
}

/** Warnings of a flight of which no record is made. @internal */
export function flightWarnings(
  problem: FlightProblem,
  ballSpeed: number,
  end: FlightEnd,
  seen: SeenRanges,
): ModelWarning[] {
  const carry = Math.hypot(end.state[0] as number, end.state[2] as number);
  const band = end.ending === 'landed' ? bandOf(problem, ballSpeed, carry) : undefined;
  return warningsOf(problem, end, seen, band);
}

function warningsOf(
  problem: FlightProblem,
  { ending, time }: FlightEnd,
  seen: SeenRanges,
  band: CarryEffect | undefined,
): ModelWarning[] {
  // Beyond the data the spread between the sources is what the extrapolation may be worth.
  const warnings = rangeWarnings(problem.model, seen, band);
  if (ending !== 'landed') warnings.push(endingWarning(ending, time, problem));
  return warnings;
}

/** Standard error of a carry; known for the default ball alone, and for the launches of its table. */
function bandOf(
  { model, radius, spin }: FlightProblem,
  ballSpeed: number,
  carry: number,
): CarryEffect | undefined {
  if (model !== fittedLaw) return undefined;
  const share = carryShare(ballSpeed, (radius * spin) / ballSpeed);
  return share === undefined ? undefined : { carry: si(carry * share), share };
}

const ENDING_CODES: Readonly<Record<Exclude<Flight['ended'], 'landed'>, WarningCode>> = {
  'time-limit': 'still-in-the-air',
  'below-ground': 'never-above-ground',
  topped: 'topped',
};

function endingWarning(
  ending: Exclude<Flight['ended'], 'landed'>,
  time: number,
  { model }: FlightProblem,
): ModelWarning {
  const range = { min: 0, max: ending === 'time-limit' ? time : 0 };
  return {
    code: ENDING_CODES[ending],
    severity: 'caution',
    model: model.id,
    quantity: 'ended',
    range,
    value: time,
  };
}
