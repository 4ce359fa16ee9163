import { FairflightError, requireRecord, requireWithin } from '../errors.js';
import { ENDED, type FlightColumns, type FlightOptions, flyMany } from '../flight/index.js';
import type { Scene } from '../scene/index.js';
import { createGroundRun } from '../shot/ground-run.js';
import type { Angle, AngularSpeed, Speed } from '../units/index.js';
import { requireBetween, requireLimit } from './deliverer.js';
import type { Between } from './optimum.js';

/** Which launches a {@link carryMap} covers. */
export interface MapQuestion {
  /** Ball speed [m/s], 1 to 110. */
  readonly ballSpeed: Speed;
  /** Launch angles [rad]. */
  readonly launchAngle: Between<Angle>;
  /** Spin rates [rad/s]. */
  readonly spinRate: Between<AngularSpeed>;
  /** Launch angles on the map, 2 to 2,000, both ends included; default 200. */
  readonly columns?: number;
  /** Spin rates on the map, 2 to 2,000, both ends included; default 200. */
  readonly rows?: number;
  /** Scene; default as its fields say. */
  readonly scene?: Scene;
  /** Integration options. */
  readonly flight?: FlightOptions;
  /** Whether to run every ball out as well; default false, and then `total` is absent. */
  readonly withRun?: boolean;
}

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
 * @throws {@link FairflightError} `invalid-input` or `outside-range` naming the field
 */
export function carryMap(question: MapQuestion): CarryMap {
  requireRecord('question', question, [
    'ballSpeed',
    'launchAngle',
    'spinRate',
    'columns',
    'rows',
    'scene',
    'flight',
    'withRun',
  ]);
  const ballSpeed = requireLimit('ballSpeed', question.ballSpeed);
  const [lowest, highest] = requireBetween('launchAngle', question.launchAngle);
  const [least, most] = requireBetween('spinRate', question.spinRate);
  const columns = requireCount('columns', question.columns ?? 200);
  const rows = requireCount('rows', question.rows ?? 200);
  const angles = spaced(lowest, highest, columns);
  const spins = spaced(least, most, rows);
  const cells = rows * columns;
  const launches = {
    ballSpeed: new Float64Array(cells).fill(ballSpeed),
    launchAngle: Float64Array.from({ length: cells }, (_, cell) => angles[cell % columns] as number),
    spinRate: Float64Array.from({ length: cells }, (_, cell) => spins[Math.floor(cell / columns)] as number),
  };
  const flown = flyMany(launches, question.scene, question.flight);
  const landed = flown.ended.map((ending) => (ending === ENDED.landed ? 1 : 0));
  const whereLanded = (column: Float64Array): Float64Array =>
    column.map((value, i) => (landed[i] ? value : 0));
  return {
    columns,
    rows,
    launchAngle: angles,
    spinRate: spins,
    landed,
    carry: whereLanded(flown.carry),
    apex: flown.apex,
    descentAngle: whereLanded(flown.descentAngle),
    ...(question.withRun === true && { total: totals(flown, landed, question.scene) }),
  };
}

/** Where each ball rests; backspin stays about the horizontal axis across the target line. */
function totals(flown: FlightColumns, landed: Uint8Array, scene: Scene | undefined): Float64Array {
  const ground = createGroundRun(scene);
  const at = (column: Float64Array, i: number): number => column[i] as number;
  return flown.carry.map((_, i) => {
    if (landed[i] !== 1) return 0;
    ground.run(at(flown.vx, i), at(flown.vy, i), at(flown.vz, i), 0, 0, at(flown.landingSpin, i));
    return Math.hypot(at(flown.x, i) + ground.x, at(flown.z, i) + ground.z);
  });
}

function spaced(from: number, to: number, count: number): Float64Array {
  return Float64Array.from({ length: count }, (_, i) => from + ((to - from) * i) / (count - 1));
}

function requireCount(field: string, value: number): number {
  requireWithin(field, value, 2, 2000, '');
  if (Number.isInteger(value)) return value;
  throw new FairflightError('invalid-input', `${field} must be a whole number, got ${value}`, {
    field,
    value,
  });
}
