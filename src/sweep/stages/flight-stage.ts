import { type AerodynamicModel, resolveModel } from '../../aerodynamics/index.js';
import { isFairflightError } from '../../errors.js';
import type { BatchKernel } from '../../flight/engine/batch.js';
import { resolveFlightOptions } from '../../flight/fly.js';
import {
  type ConditionColumns,
  type FlightColumns,
  type FlightOptions,
  flyMany,
} from '../../flight/index.js';
import { sceneProblem, setLaunch } from '../../flight/problem.js';
import type { Scene } from '../../scene/index.js';
import { si } from '../../units/index.js';
import { type FactorName, isWithin } from '../factors.js';
import { type Inputs, valueAt } from '../inputs.js';
import { STATUS_CODE } from '../status.js';
import type { RowScene, SceneRows } from './scene-rows.js';
import type { Stage } from './strike-stage.js';
import type { Work, WorkColumn } from './work.js';

const LAUNCH = [
  'launch.ballSpeed',
  'launch.launchAngle',
  'launch.launchDirection',
  'launch.spinRate',
  'launch.spinAxisTilt',
  'launch.rifleSpin',
] as const satisfies readonly FactorName[];

/** Which column of the flights goes where. */
const KEPT: readonly (readonly [WorkColumn, Exclude<keyof FlightColumns, 'ended' | 'y'>])[] = [
  ['carry', 'carry'],
  ['flight.side', 'side'],
  ['flight.curve', 'curve'],
  ['flight.apex', 'apex'],
  ['flight.apexAt', 'apexAt'],
  ['flight.hangTime', 'hangTime'],
  ['flight.descentAngle', 'descentAngle'],
  ['flight.landing.spinRate', 'landingSpin'],
  ['landing.x', 'x'],
  ['landing.z', 'z'],
  ['landing.vx', 'vx'],
  ['landing.vy', 'vy'],
  ['landing.vz', 'vz'],
];

/** How a flight ended, by the code of flyMany. */
const ENDINGS = [STATUS_CODE.landed, STATUS_CODE.timeLimit, STATUS_CODE.belowGround] as const;

/** Puts the launch of each row where the strike would have put it. @internal */
export function launchStage(inputs: Inputs): Stage {
  return (columns, work, count) => {
    for (const name of LAUNCH) {
      const input = inputs.find(name);
      const column = work.column(name);
      for (let i = 0; i < count; i++) column[i] = input === undefined ? 0 : valueAt(input, columns, i);
    }
  };
}

/** The flight of each row, and the axis of its spin when a run is to follow. @throws {@link FairflightError} for bad options or scene @internal */
export function flightStage(
  scenes: SceneRows,
  scene: Scene,
  options: FlightOptions = {},
  kernel?: BatchKernel,
  axesToo = true,
): Stage {
  resolveFlightOptions(options);
  const flights: Flights = { scenes, model: resolveModel(scene.aerodynamics), options, kernel };
  return (columns, work, count) => {
    const rows = flyable(work, columns, count, scenes);
    if (rows.length === 0) return;
    if (scenes.batch) flyRows(flights, columns, work, rows);
    else for (let k = 0; k < rows.length; k++) flyRows(flights, columns, work, rows.subarray(k, k + 1));
    if (axesToo) keepAxes(work, rows);
  };
}

interface Flights {
  readonly scenes: SceneRows;
  readonly model: AerodynamicModel;
  readonly options: FlightOptions;
  readonly kernel: BatchKernel | undefined;
}

/** Rows with a launch and a scene that can be flown; the others are told so in their status. */
function flyable(work: Work, columns: readonly Float64Array[], count: number, scenes: SceneRows): Int32Array {
  const launch = LAUNCH.map((name) => [name, work.column(name)] as const);
  const rows = new Int32Array(count);
  let found = 0;
  for (let i = 0; i < count; i++) {
    if (work.status[i] !== STATUS_CODE.landed) continue;
    const fits = launch.every(([name, column]) => isWithin(name, column[i] as number));
    if (fits && scenes.at(columns, i) !== undefined) rows[found++] = i;
    else work.status[i] = STATUS_CODE.outsideRange;
  }
  return rows.subarray(0, found);
}

/** Flies rows whose scenes differ in no more than a batch can take. */
function flyRows(flights: Flights, columns: readonly Float64Array[], work: Work, rows: Int32Array): void {
  try {
    keep(work, rows, flyBatch(flights, columns, work, rows));
  } catch (error) {
    // Everything was checked, so that the only fault of a row is an integration that gives up.
    if (!isFairflightError(error) || error.code !== 'not-converged') throw error;
    if (rows.length === 1) work.status[rows[0] as number] = STATUS_CODE.notConverged;
    else for (let k = 0; k < rows.length; k++) flyRows(flights, columns, work, rows.subarray(k, k + 1));
  }
}

function flyBatch(
  { scenes, model, options, kernel }: Flights,
  columns: readonly Float64Array[],
  work: Work,
  rows: Int32Array,
): FlightColumns {
  const launch = (name: (typeof LAUNCH)[number]): Float64Array => {
    const column = work.column(name);
    return Float64Array.from(rows, (i) => column[i] as number);
  };
  const first = scenes.at(columns, rows[0] as number) as RowScene;
  const conditions = scenes.constant ? {} : conditionsOf(scenes, columns, rows);
  return flyMany(
    {
      ballSpeed: launch('launch.ballSpeed'),
      launchAngle: launch('launch.launchAngle'),
      launchDirection: launch('launch.launchDirection'),
      spinRate: launch('launch.spinRate'),
      spinAxisTilt: launch('launch.spinAxisTilt'),
      rifleSpin: launch('launch.rifleSpin'),
    },
    { ...sceneOf(first), aerodynamics: model },
    { ...options, conditions, kernel },
  );
}

function conditionsOf(
  scenes: SceneRows,
  columns: readonly Float64Array[],
  rows: Int32Array,
): ConditionColumns {
  const of = (read: (scene: RowScene) => number): Float64Array =>
    Float64Array.from(rows, (i) => read(scenes.at(columns, i) as RowScene));
  return {
    airDensity: of(({ air }) => air.density),
    airViscosity: of(({ air }) => air.viscosity),
    windAlong: of(({ windAlong }) => windAlong),
    windAcross: of(({ windAcross }) => windAcross),
    elevation: of(({ ground }) => ground.elevation ?? 0),
  };
}

function sceneOf({ air, windAlong, windAcross, profile, ground, ball }: RowScene): Scene {
  const wind = { along: si<never>(windAlong), across: si<never>(windAcross) };
  return { air, wind: profile === undefined ? wind : { ...wind, profile }, ground, ball };
}

function keep(work: Work, rows: Int32Array, flights: FlightColumns): void {
  for (const [name, key] of KEPT) {
    const column = work.column(name);
    const values = flights[key];
    for (let k = 0; k < rows.length; k++) column[rows[k] as number] = values[k] as number;
  }
  const speed = work.column('flight.landing.speed');
  const { ended, vx, vy, vz } = flights;
  for (let k = 0; k < rows.length; k++) {
    const i = rows[k] as number;
    work.status[i] = ENDINGS[ended[k] as 0 | 1 | 2];
    speed[i] = Math.hypot(vx[k] as number, vy[k] as number, vz[k] as number);
  }
}

/** The axis of the spin stays fixed in space, so the run needs the one of the launch. */
function keepAxes(work: Work, rows: Int32Array): void {
  const [speed, angle, direction, spin, tilt, rifle] = LAUNCH.map((name) => work.column(name)) as [
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
  ];
  const axes = [work.column('axis.x'), work.column('axis.y'), work.column('axis.z')] as const;
  const problem = sceneProblem({});
  for (const i of rows) {
    setLaunch(
      problem,
      speed[i] as number,
      angle[i] as number,
      direction[i] as number,
      spin[i] as number,
      tilt[i] as number,
      rifle[i] as number,
    );
    axes[0][i] = problem.nx;
    axes[1][i] = problem.ny;
    axes[2][i] = problem.nz;
  }
}
