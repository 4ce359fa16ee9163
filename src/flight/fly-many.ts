import { compiledLaw } from '../aerodynamics/compiled-law.js';
import { conformingBall } from '../ball/index.js';
import { FairflightError, requireRecord, requireWithin } from '../errors.js';
import type { Scene } from '../scene/index.js';
import { curve, descentAngle } from './curve-and-descent.js';
import { type BatchKernel, flyBatch } from './engine/batch.js';
import { createCompiledEngine } from './engine/compiled.js';
import type { CompiledEnd } from './engine/frame.js';
import { createFlightEngine, type Ending, type FlightEngine } from './engine/general.js';
import type { FlightOptions } from './flight.js';
import { type FlightEnd, resolveFlightOptions } from './fly.js';
import { groundAt } from './ground-plane.js';
import {
  LAUNCH_RANGES,
  SCENE_RANGES,
  sceneProblem,
  setAir,
  setLaunch,
  type WritableProblem,
} from './problem.js';

/** Launches as columns, one number a flight, SI units; columns left out are 0. */
export interface LaunchColumns {
  /** Ball speed [m/s], 1 to 110. */
  readonly ballSpeed: Float64Array;
  /** Launch angle [rad]. */
  readonly launchAngle: Float64Array;
  /** Spin rate across the launch direction [rad/s]. */
  readonly spinRate: Float64Array;
  /** Launch direction [rad], + right. */
  readonly launchDirection?: Float64Array;
  /** Tilt of the spin axis [rad], + right. */
  readonly spinAxisTilt?: Float64Array;
  /** Rifle spin [rad/s]. */
  readonly rifleSpin?: Float64Array;
}

/** Conditions that change from flight to flight; a column left out takes the scene's value. */
export interface ConditionColumns {
  /** Air density [kg/m³]. */
  readonly airDensity?: Float64Array;
  /** Air viscosity [Pa s]. */
  readonly airViscosity?: Float64Array;
  /** Wind down the target line [m/s], + tailwind. */
  readonly windAlong?: Float64Array;
  /** Wind across the target line [m/s], + toward the right. */
  readonly windAcross?: Float64Array;
  /** Elevation of the ground plane [m]. */
  readonly elevation?: Float64Array;
}

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

/** How each flight of a batch ended. */
export const ENDED: {
  readonly landed: 0;
  readonly timeLimit: 1;
  readonly belowGround: 2;
  readonly topped: 3;
} = {
  landed: 0,
  timeLimit: 1,
  belowGround: 2,
  topped: 3,
};

const ENDED_AS = {
  landed: ENDED.landed,
  'time-limit': ENDED.timeLimit,
  'below-ground': ENDED.belowGround,
  topped: ENDED.topped,
} as const satisfies Record<Ending, number>;

/** Flights as columns, SI units; the same quantities as {@link Flight}. */
export interface FlightColumns {
  /** One of {@link ENDED} for each flight. */
  readonly ended: Uint8Array;
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
}

const REQUIRED = ['ballSpeed', 'launchAngle', 'spinRate'] as const;
const OPTIONAL = ['launchDirection', 'spinAxisTilt', 'rifleSpin'] as const;
const CONDITIONS = ['airDensity', 'airViscosity', 'windAlong', 'windAcross', 'elevation'] as const;

/** Empty columns for a number of flights. @internal */
export function flightColumns(count: number): FlightColumns {
  const column = (): Float64Array => new Float64Array(count);
  return {
    ended: new Uint8Array(count),
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
  };
}

/**
 * Flies many launches through one scene: the same flights as {@link fly}, as columns, without a record or a track for
 * each.
 * @throws {@link FairflightError} as {@link fly}; the field names the column and the row, as `launches.ballSpeed[17]`
 */
export function flyMany(
  launches: LaunchColumns,
  scene: Scene = {},
  options: FlyManyOptions = {},
): FlightColumns {
  const { conditions = {}, kernel, ...flightOptions } = options;
  const { tolerance, timeLimit } = resolveFlightOptions(flightOptions);
  const count = checkColumns(launches, conditions);
  const problem = sceneProblem(scene);
  // A calm scene drops its profile, which a column of winds needs.
  if (conditions.windAlong !== undefined || conditions.windAcross !== undefined) {
    const profile = scene.wind?.profile;
    problem.profile = profile?.kind === 'uniform' ? undefined : profile;
  }
  const out = flightColumns(count);
  const zero = new Float64Array(count);
  const direction = launches.launchDirection ?? zero;
  const write = rowWriter(launches, conditions, problem, scene, zero);
  let general: FlightEngine | undefined;
  const keepRow = (i: number, flight: CompiledEnd | undefined): void => {
    if (flight === undefined) general ??= createFlightEngine();
    const end = flight ?? general?.fly(problem, tolerance, timeLimit);
    if (end === undefined) return;
    keep(out, i, end, direction[i] as number);
    // Onto the plane, as in fly. Where elevation is a column, the problem may hold that of a later row by now.
    const elevation = conditions.elevation?.[i] ?? problem.elevation;
    if (end.ending === 'landed')
      out.y[i] = groundAt(elevation, problem.slopeX, problem.slopeZ, out.x[i] as number, out.z[i] as number);
  };
  const law = kernel === undefined ? undefined : compiledLaw(problem.model);
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
  launches: LaunchColumns,
  conditions: ConditionColumns,
  problem: WritableProblem,
  scene: Scene,
  zero: Float64Array,
): (i: number) => void {
  const { ballSpeed, launchAngle, spinRate } = launches;
  const { launchDirection = zero, spinAxisTilt = zero, rifleSpin = zero } = launches;
  const { airDensity, airViscosity, windAlong, windAcross, elevation } = conditions;
  const ball = scene.ball ?? conformingBall;
  const density = problem.forceFactor * ((2 * ball.mass) / (Math.PI * ball.radius * ball.radius));
  const viscosity = (density * 2 * ball.radius) / problem.reynoldsPerSpeed;
  return (i) => {
    if (airDensity !== undefined || airViscosity !== undefined) {
      setAir(problem, airDensity?.[i] ?? density, airViscosity?.[i] ?? viscosity, ball);
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
  out.ended[i] = ENDED_AS[end.ending];
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

/** Checks every number of every column, and that the columns are equally long; returns their length. */
function checkColumns(launches: LaunchColumns, conditions: ConditionColumns): number {
  requireRecord('launches', launches, [...REQUIRED, ...OPTIONAL]);
  requireRecord('options.conditions', conditions, CONDITIONS);
  const count = launches.ballSpeed.length;
  for (const name of [...REQUIRED, ...OPTIONAL]) {
    const column = launches[name];
    if (column !== undefined) checkColumn(`launches.${name}`, column, count, LAUNCH_RANGES[name]);
  }
  for (const name of CONDITIONS) {
    const column = conditions[name];
    if (column !== undefined) checkColumn(`options.conditions.${name}`, column, count, SCENE_RANGES[name]);
  }
  return count;
}

function checkColumn(
  field: string,
  column: Float64Array,
  count: number,
  [minimum, maximum, unit]: readonly [number, number, string],
): void {
  if (column.length !== count) {
    throw new FairflightError(
      'invalid-input',
      `${field} has ${column.length} rows, launches.ballSpeed has ${count}`,
      {
        field,
        value: column.length,
      },
    );
  }
  for (let i = 0; i < count; i++) {
    const value = column[i] as number;
    if (!(value >= minimum && value <= maximum))
      requireWithin(`${field}[${i}]`, value, minimum, maximum, unit);
  }
}
