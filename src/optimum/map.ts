import { type FlightSettings, settingsOf } from '../flight/fly.js';
import { type FlightColumns, flightEndings, flyColumns } from '../flight/fly-many.js';
import { between, type QuantityRange } from '../inputs/between.js';
import { count, type Declared, flag, optional } from '../inputs/field.js';
import { type FlightOptions, flightOptionFields } from '../inputs/flight-options.js';
import { frozen } from '../inputs/frozen.js';
import { launchFields } from '../inputs/launch.js';
import { readOptions, readRecord } from '../inputs/read.js';
import { type ResolvedScene, resolveScene, type Scene } from '../scene/scene.js';
import { createGroundRun } from '../shot/ground-run.js';
import type { Angle, AngularSpeed, Speed } from '../units/index.js';

/** Which launches a {@link carryMap} covers. */
export interface MapQuestion {
  /** Ball speed [m/s], 1 to 110. */
  readonly ballSpeed: Speed;
  /** Launch angles [rad], −π/2 to π/2 each end. */
  readonly launchAngle: QuantityRange<Angle>;
  /** Spin rates [rad/s], 0 to 2,100 each end. */
  readonly spinRate: QuantityRange<AngularSpeed>;
}

/** Options of {@link carryMap}. */
export interface MapOptions extends FlightOptions {
  /** Launch angles on the map, 2 to 2,000, both ends included; default 200. */
  readonly columns?: number;
  /** Spin rates on the map, 2 to 2,000, both ends included; default 200. */
  readonly rows?: number;
  /** Whether to run every ball out as well; default false, and then `total` is absent. */
  readonly withRun?: boolean;
}

/** Declaration of {@link MapQuestion}. @internal */
export const mapQuestionFields: Declared<MapQuestion> = /* @__PURE__ */ frozen(() => ({
  ballSpeed: launchFields.ballSpeed,
  launchAngle: between(launchFields.launchAngle, 'launch angle'),
  spinRate: between(launchFields.spinRate, 'spin rate'),
}));

/** Declaration of {@link MapOptions}. @internal */
export const mapOptionFields: Declared<MapOptions> = /* @__PURE__ */ frozen(() => ({
  ...flightOptionFields,
  columns: optional(count(2, 2000, 200, 'launch angles on the map')),
  rows: optional(count(2, 2000, 200, 'spin rates on the map')),
  withRun: optional(flag('run out')),
}));

/**
 * Carry over launch angle and spin rate. Cell (row, column) is at `row * columns + column`. Where `landed` is 0 the ball
 * did not land (a raised green), and carry, descent angle and total are 0.
 */
export interface CarryMap {
  /** Number of launch angles. */
  readonly columns: number;
  /** Number of spin rates. */
  readonly rows: number;
  /** Launch angle of each column [rad]. */
  readonly launchAngle: Float64Array;
  /** Spin rate of each row [rad/s]. */
  readonly spinRate: Float64Array;
  /** 1 where the ball landed, else 0. */
  readonly landed: Uint8Array;
  /** Carry [m]. */
  readonly carry: Float64Array;
  /** Apex [m]. */
  readonly apex: Float64Array;
  /** Descent angle below the horizontal [rad]. */
  readonly descentAngle: Float64Array;
  /** Carry and run [m]; only when asked for. */
  readonly total?: Float64Array;
}

/**
 * Carry, apex and descent angle on a grid of launch angles and spin rates at one ball speed, for charts. It shows what
 * would happen, not what can be delivered: far from the pairs a club gives, the coefficient models have no data.
 * @throws `FairflightError` `invalid-input` or `outside-range` naming the field
 */
export function carryMap(question: MapQuestion, scene: Scene = {}, options: MapOptions = {}): CarryMap {
  const map = readMap(question, scene, options);
  const { columns, rows, ballSpeed, launchAngle, spinRate } = map;
  const cells = rows * columns;
  const launches = {
    ballSpeed: new Float64Array(cells).fill(ballSpeed),
    launchAngle: Float64Array.from({ length: cells }, (_, cell) => launchAngle[cell % columns] as number),
    spinRate: Float64Array.from(
      { length: cells },
      (_, cell) => spinRate[Math.floor(cell / columns)] as number,
    ),
  };
  const flown = flyColumns(map.scene, launches, {}, map.settings);
  return mapOf(map, flown, map.withRun ? totals(flown, map.scene) : undefined);
}

/** A map as asked for, with its axes and its defaults filled in. @internal */
export interface MapAsked extends Pick<CarryMap, 'columns' | 'rows' | 'launchAngle' | 'spinRate'> {
  readonly ballSpeed: number;
  readonly scene: ResolvedScene;
  readonly settings: FlightSettings;
  readonly withRun: boolean;
}

/** Reads what is asked of a map. @throws FairflightError @internal */
export function readMap(
  question: unknown,
  scene: unknown,
  options: unknown,
  fields: Declared<Omit<MapOptions, 'tolerance'>> = mapOptionFields,
): MapAsked {
  const { ballSpeed, launchAngle, spinRate } = readRecord(mapQuestionFields, question, 'launch');
  const {
    columns = 200,
    rows = 200,
    withRun = false,
    ...rest
  } = readOptions(fields as Declared<MapOptions>, options);
  return {
    columns,
    rows,
    ballSpeed,
    launchAngle: spaced(launchAngle.min, launchAngle.max, columns),
    spinRate: spaced(spinRate.min, spinRate.max, rows),
    scene: resolveScene(scene),
    settings: settingsOf(rest),
    withRun,
  };
}

/** What a map shows of a flight in each cell. @internal */
export type MapCells = Pick<FlightColumns, 'ended' | 'carry' | 'apex' | 'descentAngle'>;

/** The map of flights, whose columns become its own, and of where their balls rest. @internal */
export function mapOf(
  { columns, rows, launchAngle, spinRate }: MapAsked,
  flown: MapCells,
  total?: Float64Array,
): CarryMap {
  const { ended, carry, apex, descentAngle } = flown;
  const landed = new Uint8Array(ended.length);
  for (let cell = 0; cell < landed.length; cell++) {
    if (ended[cell] === LANDED) landed[cell] = 1;
    else carry[cell] = descentAngle[cell] = 0;
  }
  return {
    columns,
    rows,
    launchAngle,
    spinRate,
    landed,
    carry,
    apex,
    descentAngle,
    ...(total && { total }),
  };
}

/** How far each ball rests, 0 for one that did not land. @internal */
export function totals(flown: FlightColumns, scene: ResolvedScene): Float64Array {
  const ground = createGroundRun(scene);
  const at = (column: Float64Array, i: number): number => column[i] as number;
  return flown.carry.map((_, i) => {
    if (flown.ended[i] !== LANDED) return 0;
    const spin = at(flown.landingSpin, i);
    ground.run(
      at(flown.vx, i),
      at(flown.vy, i),
      at(flown.vz, i),
      spin * at(flown.spinAxisX, i),
      spin * at(flown.spinAxisY, i),
      spin * at(flown.spinAxisZ, i),
    );
    return Math.hypot(at(flown.x, i) + ground.x, at(flown.z, i) + ground.z);
  });
}

/** How a flight that landed ended. */
const LANDED: number = /* @__PURE__ */ flightEndings.indexOf('landed');

function spaced(from: number, to: number, count: number): Float64Array {
  return Float64Array.from({ length: count }, (_, i) => from + ((to - from) * i) / (count - 1));
}
