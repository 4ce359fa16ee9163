import { type FairflightError, isFairflightError } from '../../errors.js';
import type { BatchKernel } from '../../flight/engine/batch.js';
import type { FlightSettings } from '../../flight/fly.js';
import { type ConditionArrays, type FlightColumns, flyColumns } from '../../flight/fly-many.js';
import { refusal } from '../../inputs/refuse.js';
import type { ResolvedScene } from '../../scene/scene.js';
import { type FactorName, isWithin } from '../factors.js';
import { type Inputs, valueAt } from '../inputs.js';
import { STATUS_CODE } from '../status.js';
import type { SceneRows } from './scene-rows.js';
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
const KEPT: readonly (readonly [WorkColumn, Exclude<keyof FlightColumns, 'ended' | 'outsideData' | 'y'>])[] =
  [
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
    ['axis.x', 'spinAxisX'],
    ['axis.y', 'spinAxisY'],
    ['axis.z', 'spinAxisZ'],
  ];

/** How a flight ended, by the code of flyMany. */
const ENDINGS = [
  STATUS_CODE.landed,
  STATUS_CODE.timeLimit,
  STATUS_CODE.belowGround,
  STATUS_CODE.topped,
] as const;

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

/** The flight of each row. @internal */
export function flightStage(
  inputs: Inputs,
  scenes: SceneRows,
  settings: FlightSettings,
  kernel?: BatchKernel,
): Stage {
  const flights: Flights = { inputs, scenes, settings, kernel };
  return (columns, work, count) => {
    const rows = flyable(work, columns, count, scenes);
    if (rows.length === 0) return;
    if (scenes.batch) flyRows(flights, columns, work, rows);
    else for (let k = 0; k < rows.length; k++) flyRows(flights, columns, work, rows.subarray(k, k + 1));
  };
}

interface Flights {
  readonly inputs: Inputs;
  readonly scenes: SceneRows;
  readonly settings: FlightSettings;
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
    // Everything was checked, so that what can be wrong is a user's model: it throws, or cannot be integrated.
    if (!isFairflightError(error)) throw error;
    const [row = 0] = rows;
    if (rows.length === 1) {
      if (error.code !== 'not-converged') throw atRow(error, work.first + row);
      work.status[row] = STATUS_CODE.notConverged;
    } else for (let k = 0; k < rows.length; k++) flyRows(flights, columns, work, rows.subarray(k, k + 1));
  }
}

/** The same error, with the row of the design. */
function atRow({ code, message, field = 'scene.aerodynamics', value }: FairflightError, row: number): Error {
  return refusal(field, `row ${row} of the design: ${message}`, { value }, code);
}

function flyBatch(
  { inputs, scenes, settings, kernel }: Flights,
  columns: readonly Float64Array[],
  work: Work,
  rows: Int32Array,
): FlightColumns {
  const launch = (name: (typeof LAUNCH)[number]): Float64Array => {
    const column = work.column(name);
    return Float64Array.from(rows, (i) => column[i] as number);
  };
  const first = scenes.at(columns, rows[0] as number) as ResolvedScene;
  const launches = {
    ballSpeed: launch('launch.ballSpeed'),
    launchAngle: launch('launch.launchAngle'),
    launchDirection: launch('launch.launchDirection'),
    spinRate: launch('launch.spinRate'),
    spinAxisTilt: launch('launch.spinAxisTilt'),
    rifleSpin: launch('launch.rifleSpin'),
  };
  const conditions = scenes.constant ? {} : conditionsOf(scenes, columns, rows);
  return flyColumns(first, launches, { ...conditions, ...ofModel(inputs, columns, rows) }, settings, kernel);
}

/** What is said of the coefficient model's numbers. */
function ofModel(inputs: Inputs, columns: readonly Float64Array[], rows: Int32Array): ConditionArrays {
  return Object.fromEntries(
    inputs
      .group('aerodynamics')
      .map((input) => [
        input.name.slice('aerodynamics.'.length),
        Float64Array.from(rows, (i) => valueAt(input, columns, i)),
      ]),
  );
}

function conditionsOf(
  scenes: SceneRows,
  columns: readonly Float64Array[],
  rows: Int32Array,
): ConditionArrays {
  const of = (read: (scene: ResolvedScene) => number): Float64Array =>
    Float64Array.from(rows, (i) => read(scenes.at(columns, i) as ResolvedScene));
  return {
    airDensity: of(({ air }) => air.density),
    airViscosity: of(({ air }) => air.viscosity),
    windAlong: of(({ windAlong }) => windAlong),
    windAcross: of(({ windAcross }) => windAcross),
    elevation: of(({ elevation }) => elevation),
  };
}

function keep(work: Work, rows: Int32Array, flights: FlightColumns): void {
  for (const [name, key] of KEPT) {
    const column = work.column(name);
    const values = flights[key];
    for (let k = 0; k < rows.length; k++) column[rows[k] as number] = values[k] as number;
  }
  const speed = work.column('flight.landing.speed');
  const { ended, outsideData, vx, vy, vz } = flights;
  for (let k = 0; k < rows.length; k++) {
    const i = rows[k] as number;
    work.status[i] = ENDINGS[ended[k] as 0 | 1 | 2 | 3];
    (work.warnings[i] as number) |= outsideData[k] as number;
    speed[i] = Math.hypot(vx[k] as number, vy[k] as number, vz[k] as number);
  }
}
