import { settingsOf } from '../flight/fly.js';
import {
  type ConditionArrays,
  type ConditionColumns,
  conditionFields,
  type FlightColumns,
  flightColumns,
  flightEndings,
  type LaunchArrays,
  type LaunchColumns,
} from '../flight/fly-many.js';
import { groundAt } from '../flight/ground-plane.js';
import { readColumns } from '../inputs/columns.js';
import { custom, type Declared } from '../inputs/field.js';
import { type FlightOptions, flightOptionFields } from '../inputs/flight-options.js';
import { frozen } from '../inputs/frozen.js';
import { launchFields } from '../inputs/launch.js';
import { readOptions } from '../inputs/read.js';
import { type ResolvedScene, resolveScene, type Scene } from '../scene/scene.js';
import type { Card } from './card.js';
import { flyLeft, flyRun, mostFlights, noteEndings, prepareFlights } from './flown.js';
import type { Source } from './scene-numbers.js';
import type { InputName } from './wgsl/problem.js';

/** Options of {@link Gpu.flyMany}. */
export interface GpuFlyOptions extends Pick<FlightOptions, 'timeLimit'> {
  /** Conditions that change from flight to flight. */
  readonly conditions?: ConditionColumns;
}

/** Flights of a graphics card. */
export interface GpuFlights extends FlightColumns {
  /**
   * Flights that the processor flew: balls that start below the ground, or on it without rising, what leaves the table of a
   * coefficient model, and rare paths whose landing a step may hide.
   */
  readonly onProcessor: number;
}

const optionFields: Declared<GpuFlyOptions> = /* @__PURE__ */ frozen(() => ({
  timeLimit: flightOptionFields.timeLimit,
  conditions: custom((value) => value, 'conditions'),
}));

/** What comes back of a flight, each a column. @internal */
export const FLIGHT_QUANTITIES: readonly (Exclude<keyof FlightColumns, 'ended' | 'outsideData'> | 'flags')[] =
  [
    'x',
    'y',
    'z',
    'vx',
    'vy',
    'vz',
    'landingSpin',
    'hangTime',
    'apex',
    'apexAt',
    'carry',
    'side',
    'curve',
    'descentAngle',
    'spinAxisX',
    'spinAxisY',
    'spinAxisZ',
    'flags',
  ];

/** Flies launches on a card; see {@link Gpu.flyMany}. @internal */
export async function flyManyOn(
  card: Card,
  launches: LaunchColumns,
  scene: Scene = {},
  options: GpuFlyOptions = {},
): Promise<GpuFlights> {
  const { conditions = {}, ...given } = readOptions(optionFields, options);
  const { columns, count } = readColumns(launchFields, launches, 'launches');
  const like = { count, like: 'launches.ballSpeed' };
  const varied = readColumns(conditionFields, conditions, 'options.conditions', like).columns;
  // The card reads on while the caller goes on: what they change meanwhile must reach no flight.
  const copied = <T extends object>(arrays: T): T =>
    Object.fromEntries(
      Object.entries(arrays as Readonly<Record<string, Float64Array>>).map(([name, column]) => [
        name,
        column.slice(),
      ]),
    ) as T;
  const { timeLimit } = settingsOf(given);
  return flyColumnsOn(card, resolveScene(scene), copied(columns as LaunchArrays), copied(varied), timeLimit);
}

async function flyColumnsOn(
  card: Card,
  scene: ResolvedScene,
  launches: LaunchArrays,
  conditions: ConditionArrays,
  timeLimit: number,
): Promise<GpuFlights> {
  const count = launches.ballSpeed.length;
  const out = flightColumns(count);
  const given = Object.entries({ ...launches, ...conditions }) as [InputName, Float64Array][];
  const left: number[] = [];
  const most = mostFlights(card, Math.max(FLIGHT_QUANTITIES.length, given.length));
  for (let start = 0; start < count; start += most) {
    const flights = Math.min(most, count - start);
    const sources = given.map(([name, column]): [InputName, Source] => [
      name,
      { kind: 'column', numbers: new Float32Array(column.subarray(start, start + flights)) },
    ]);
    const prepared = prepareFlights(scene, timeLimit, Object.fromEntries(sources));
    await flyRun(card, prepared, FLIGHT_QUANTITIES, flights, (columnOf, flags) => {
      for (const name of FLIGHT_QUANTITIES) if (name !== 'flags') out[name].set(columnOf(name), start);
      noteEndings(flags, start, out, left);
    });
  }
  const picked = <T extends object>(columns: T): T =>
    Object.fromEntries(
      Object.entries(columns as Readonly<Record<string, Float64Array>>).map(([name, column]) => [
        name,
        Float64Array.from(left, (row) => column[row] as number),
      ]),
    ) as T;
  flyLeft({ scene, timeLimit }, left, picked(launches), picked(conditions), out);
  putOnGround(out, scene, conditions);
  return { ...out, onProcessor: left.length };
}

/** A landing lies on the plane, as in `flyMany`. */
function putOnGround(out: FlightColumns, scene: ResolvedScene, { elevation }: ConditionArrays): void {
  const [slopeX, slopeZ] = [Math.tan(scene.slope), Math.tan(scene.crossSlope)];
  for (let i = 0; i < out.y.length; i++) {
    if (flightEndings[out.ended[i] as number] !== 'landed') continue;
    const height = elevation?.[i] ?? scene.elevation;
    out.y[i] = groundAt(height, slopeX, slopeZ, out.x[i] as number, out.z[i] as number);
  }
}
