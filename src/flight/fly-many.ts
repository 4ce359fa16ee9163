import { compiledLaw } from '../aerodynamics/compiled-law.js';
import { spinDecayField } from '../aerodynamics/model-fields.js';
import { scaleFields } from '../aerodynamics/scaled.js';
import { changesWithHeight } from '../air/wind-ratio.js';
import { airFields } from '../inputs/air.js';
import { type NumberColumn, readColumns } from '../inputs/columns.js';
import { custom, type Declared, optional, type QuantityField } from '../inputs/field.js';
import { type FlightOptions, flightOptionFields } from '../inputs/flight-options.js';
import { frozen } from '../inputs/frozen.js';
import { groundFields } from '../inputs/ground.js';
import { launchFields } from '../inputs/launch.js';
import { readOptions } from '../inputs/read.js';
import { windFields } from '../inputs/wind.js';
import { type ResolvedScene, resolveScene, type Scene } from '../scene/scene.js';
import { curve, descentAngle } from './curve-and-descent.js';
import { type BatchKernel, flyBatch, readKernel } from './engine/batch.js';
import { createCompiledEngine } from './engine/compiled.js';
import type { CompiledEnd } from './engine/frame.js';
import { createFlightEngine, type FlightEngine } from './engine/general.js';
import type { Flight } from './flight.js';
import { type FlightEnd, type FlightSettings, settingsOf } from './fly.js';
import { groundAt } from './ground-plane.js';
import { sceneProblem, setAir, setLaunch, type WritableProblem } from './problem.js';
import { rangeBits, rangeWatch, type SeenRanges } from './range-watch.js';

/** Launches as columns, one number a flight, SI units; columns left out are 0. */
export interface LaunchColumns {
  /** Ball speed [m/s], 1 to 110. */
  readonly ballSpeed: NumberColumn;
  /** Launch angle [rad], + up. */
  readonly launchAngle: NumberColumn;
  /** Spin rate across the launch direction [rad/s]. */
  readonly spinRate: NumberColumn;
  /** Launch direction [rad], + right. */
  readonly launchDirection?: NumberColumn;
  /** Tilt of the spin axis [rad], + right. */
  readonly spinAxisTilt?: NumberColumn;
  /** Rifle spin [rad/s]. */
  readonly rifleSpin?: NumberColumn;
}

/** Conditions that change from flight to flight; a column left out takes the scene's value. */
export interface ConditionColumns {
  /** Air density [kg/m³]. */
  readonly airDensity?: NumberColumn;
  /** Air viscosity [Pa s]. */
  readonly airViscosity?: NumberColumn;
  /** Wind down the target line [m/s], + tailwind. */
  readonly windAlong?: NumberColumn;
  /** Wind across the target line [m/s], + toward the right. */
  readonly windAcross?: NumberColumn;
  /** Elevation of the ground plane [m]. */
  readonly elevation?: NumberColumn;
  /** Factor on the model's drag coefficient, 0.2 to 5. */
  readonly dragScale?: NumberColumn;
  /** Factor on the model's lift coefficient, 0.2 to 5. */
  readonly liftScale?: NumberColumn;
  /** Spin decay constant in place of the model's (see {@link AerodynamicModel}), 0 to 0.001. */
  readonly spinDecay?: NumberColumn;
}

/** Launches as typed arrays, checked. @internal */
export type LaunchArrays = Arrays<LaunchColumns>;
/** Conditions as typed arrays, checked. @internal */
export type ConditionArrays = Arrays<ConditionColumns>;
type Arrays<T> = { readonly [K in keyof T]: Float64Array };

/** Options of {@link flyMany}. */
export interface FlyManyOptions extends FlightOptions {
  /** Conditions that change from flight to flight. */
  readonly conditions?: ConditionColumns;
  /**
   * The WebAssembly kernel of `fairflight/batch`, some 1.7 times as fast; without it the JavaScript engine flies. Both
   * give the same flights to within a thousandth of the tolerance: their steps are written by one template, and they
   * make the same decisions in between.
   */
  readonly kernel?: BatchKernel | undefined;
}

/** How a flight of a batch ended, by its number in {@link FlightColumns.ended}. */
export const flightEndings: readonly Flight['ended'][] = /* @__PURE__ */ frozen(() => [
  'landed',
  'time-limit',
  'below-ground',
  'topped',
]);

/** Flights as columns, SI units; the same quantities as {@link Flight}. */
export interface FlightColumns {
  /** Place in {@link flightEndings} for each flight. */
  readonly ended: Uint8Array;
  /** Sum of 1 for Reynolds numbers outside the model's data and 2 for spin ratios; 0 within both. */
  readonly outsideData: Uint8Array;
  /** Carry [m]. */
  readonly carry: Float64Array;
  /** Sideways position at landing [m], + right. */
  readonly side: Float64Array;
  /** Distance from the initial launch line [m], + right. */
  readonly curve: Float64Array;
  /** Apex above the start [m]. */
  readonly apex: Float64Array;
  /** Horizontal distance to the apex [m]. */
  readonly apexAt: Float64Array;
  /** Time in the air [s]. */
  readonly hangTime: Float64Array;
  /** Descent angle [rad], + down. */
  readonly descentAngle: Float64Array;
  /** Position at landing along the target line [m]. */
  readonly x: Float64Array;
  /** Height at landing [m], + up. */
  readonly y: Float64Array;
  /** Position at landing across the target line [m], + right. */
  readonly z: Float64Array;
  /** Velocity at landing along the target line [m/s]. */
  readonly vx: Float64Array;
  /** Velocity at landing [m/s], + up. */
  readonly vy: Float64Array;
  /** Velocity at landing across the target line [m/s], + right. */
  readonly vz: Float64Array;
  /** Spin rate at landing [rad/s]. */
  readonly landingSpin: Float64Array;
  /** Unit spin axis, fixed in space: its part along the target line. */
  readonly spinAxisX: Float64Array;
  /** Its part upward. */
  readonly spinAxisY: Float64Array;
  /** Its part to the right; backspin is +1. */
  readonly spinAxisZ: Float64Array;
}

/** Declaration of {@link ConditionColumns}. @internal */
export const conditionFields: Readonly<
  Record<keyof ConditionColumns, QuantityField & { readonly optional: true }>
> = /* @__PURE__ */ frozen(() => ({
  airDensity: optional(airFields.density),
  airViscosity: optional(airFields.viscosity),
  windAlong: optional(windFields.along),
  windAcross: optional(windFields.across),
  elevation: groundFields.elevation,
  dragScale: scaleFields.drag,
  liftScale: scaleFields.lift,
  spinDecay: optional(spinDecayField),
}));

/** Declaration of {@link FlyManyOptions}. @internal */
export const flyManyOptionFields: Declared<FlyManyOptions> = /* @__PURE__ */ frozen(() => ({
  ...flightOptionFields,
  conditions: custom((value) => value, 'conditions'),
  kernel: custom(readKernel, 'batch kernel'),
}));

/** Empty columns for a number of flights. @internal */
export function flightColumns(count: number): FlightColumns {
  const column = (): Float64Array => new Float64Array(count);
  return {
    ended: new Uint8Array(count),
    outsideData: new Uint8Array(count),
    carry: column(),
    side: column(),
    curve: column(),
    apex: column(),
    apexAt: column(),
    hangTime: column(),
    descentAngle: column(),
    x: column(),
    y: column(),
    z: column(),
    vx: column(),
    vy: column(),
    vz: column(),
    landingSpin: column(),
    spinAxisX: column(),
    spinAxisY: column(),
    spinAxisZ: column(),
  };
}

/**
 * Flies many launches through one scene: the same flights as {@link fly}, as columns, without a record or a track for
 * each.
 * @throws `FairflightError` as {@link fly}; the field names the column and the row, as `launches.ballSpeed[17]`
 */
export function flyMany(
  launches: LaunchColumns,
  scene: Scene = {},
  options: FlyManyOptions = {},
): FlightColumns {
  const { conditions = {}, kernel, ...given } = readOptions(flyManyOptionFields, options);
  const { columns, count } = readColumns(launchFields, launches, 'launches');
  const like = { count, like: 'launches.ballSpeed' };
  const varied = readColumns(conditionFields, conditions, 'options.conditions', like).columns;
  return flyColumns(resolveScene(scene), columns as LaunchArrays, varied, settingsOf(given), kernel);
}

/** {@link flyMany} with inputs already read. @internal */
export function flyColumns(
  scene: ResolvedScene,
  launches: LaunchArrays,
  conditions: ConditionArrays,
  { tolerance, timeLimit }: FlightSettings,
  kernel?: BatchKernel,
): FlightColumns {
  const count = launches.ballSpeed.length;
  const problem = sceneProblem(scene);
  // A calm scene drops its profile, which a column of winds needs.
  if (conditions.windAlong !== undefined || conditions.windAcross !== undefined) {
    problem.profile = scene.profile;
  }
  const out = flightColumns(count);
  const zero = new Float64Array(count);
  const direction = launches.launchDirection ?? zero;
  const writeProblem = rowWriter(launches, conditions, problem, scene, zero);
  const write = (i: number): void => {
    writeProblem(i);
    // Kept now: a batch has written later rows by the time it hands this one back.
    out.spinAxisX[i] = problem.nx;
    out.spinAxisY[i] = problem.ny;
    out.spinAxisZ[i] = problem.nz;
  };
  let general: FlightEngine | undefined;
  const flyGeneral = (): FlightEnd & { readonly seen: SeenRanges } => {
    general ??= createFlightEngine();
    const { note, seen } = rangeWatch(problem);
    return { ...general.fly(problem, tolerance, timeLimit, (_, state) => note(state)), seen };
  };
  const keepRow = (i: number, flight: CompiledEnd | undefined): void => {
    const end = flight ?? flyGeneral();
    keep(out, i, end, direction[i] as number);
    out.outsideData[i] = rangeBits(problem.model, end.seen);
    // Onto the plane, as in fly. Where elevation is a column, the problem may hold that of a later row by now.
    const elevation = conditions.elevation?.[i] ?? problem.elevation;
    if (end.ending === 'landed')
      out.y[i] = groundAt(elevation, problem.slopeX, problem.slopeZ, out.x[i] as number, out.z[i] as number);
  };
  // The batch kernel knows uniform wind alone.
  const law =
    kernel === undefined || changesWithHeight(problem.profile) ? undefined : compiledLaw(problem.model);
  if (kernel !== undefined && law !== undefined) {
    flyBatch(kernel, law, problem, count, tolerance, timeLimit, write, keepRow);
    return out;
  }
  const compiled = createCompiledEngine(false);
  for (let i = 0; i < count; i++) {
    write(i);
    keepRow(i, compiled.fly(problem, tolerance, timeLimit));
  }
  return out;
}

/** Makes a function that writes row `i` into the problem. */
function rowWriter(
  launches: LaunchArrays,
  conditions: ConditionArrays,
  problem: WritableProblem,
  { ball, air: { density, viscosity } }: ResolvedScene,
  zero: Float64Array,
): (i: number) => void {
  const { ballSpeed, launchAngle, spinRate } = launches;
  const { launchDirection = zero, spinAxisTilt = zero, rifleSpin = zero } = launches;
  const { windAlong, windAcross, elevation, ...constants } = conditions;
  const { airDensity, airViscosity, dragScale, liftScale, spinDecay } = constants;
  const { model } = problem;
  const setsConstants = Object.values(constants).some((column) => column !== undefined);
  return (i) => {
    if (setsConstants) {
      setAir(
        problem,
        airDensity?.[i] ?? density,
        airViscosity?.[i] ?? viscosity,
        ball,
        dragScale?.[i] ?? 1,
        liftScale?.[i] ?? 1,
        spinDecay?.[i] ?? model.spinDecay,
      );
    }
    if (windAlong !== undefined) problem.windAlong = windAlong[i] as number;
    if (windAcross !== undefined) problem.windAcross = windAcross[i] as number;
    if (elevation !== undefined) problem.elevation = elevation[i] as number;
    setLaunch(
      problem,
      ballSpeed[i] as number,
      launchAngle[i] as number,
      launchDirection[i] as number,
      spinRate[i] as number,
      spinAxisTilt[i] as number,
      rifleSpin[i] as number,
    );
  };
}

function keep(out: FlightColumns, i: number, end: FlightEnd, direction: number): void {
  const s = end.state;
  const x = s[0] as number;
  const z = s[2] as number;
  const vx = s[3] as number;
  const vy = s[4] as number;
  const vz = s[5] as number;
  out.ended[i] = flightEndings.indexOf(end.ending);
  out.carry[i] = Math.sqrt(x * x + z * z);
  out.side[i] = z;
  out.curve[i] = curve(x, z, direction);
  out.apex[i] = end.apex;
  out.apexAt[i] = end.apexAt;
  out.hangTime[i] = end.time;
  out.descentAngle[i] = descentAngle(vx, vy, vz);
  out.x[i] = x;
  out.y[i] = s[1] as number;
  out.z[i] = z;
  out.vx[i] = vx;
  out.vy[i] = vy;
  out.vz[i] = vz;
  out.landingSpin[i] = s[6] as number;
}
