import { fly } from '../flight/index.js';
import type { Launch } from '../inputs/launch.js';
import { allows } from '../inputs/read.js';
import type { Scene } from '../scene/scene.js';
import { fromUnit, type Unit } from '../units/unit.js';
import type { NumberName } from './column-names.js';
import { numberColumns } from './columns.js';
import { SMASH_LIMIT } from './shot-checks.js';

/** Numbers of a shot as they are written, in no unit yet. */
export type Written = Readonly<Partial<Record<NumberName, number>>>;
/** Unit of each column. */
export type Units = Readonly<Partial<Record<NumberName, Unit>>>;

/** How well the shots agree with each other when their columns are read in some units. */
export interface Evidence {
  /**
   * Sum of squared misses over their room, so that 1 is a miss as weather, ground and another ball make it and 9 cannot
   * be. Infinite where a column could hold no shot.
   */
  readonly misfit: number;
  /** Natural logarithm of measured over foretold, by column, in the median; infinite where it could hold no shot. */
  readonly off: Readonly<Partial<Record<NumberName, number>>>;
  /** Median of the distance [m] by which flights miss the measured carry; undefined without carries. */
  readonly carryMiss: number | undefined;
}

/** A column that the flight of a launch predicts, and how far [natural logarithm] it may lie off for other reasons. */
interface Foretold {
  readonly field: NumberName;
  readonly of: (flight: { carry: number; apex: number; hangTime: number; descentAngle: number }) => number;
  readonly room: number;
}

/**
 * Rooms: winds of 8 m/s, a mile of altitude, landings 6 m up or down and another ball together change carry by a
 * quarter and apex by half as a rule; our own reckoning with the flight model.
 */
const FORETOLD: readonly Foretold[] = [
  { field: 'carry', of: (flight) => flight.carry, room: 0.12 },
  { field: 'total', of: (flight) => 1.08 * flight.carry, room: 0.18 },
  { field: 'apex', of: (flight) => flight.apex, room: 0.25 },
  { field: 'hangTime', of: (flight) => flight.hangTime, room: 0.12 },
  { field: 'descentAngle', of: (flight) => flight.descentAngle, room: 0.35 },
];

/** Carry over ball speed and over club speed [s] of full shots, from a slow wedge to a long drive. */
const CARRY_PER_SPEED: readonly (readonly [NumberName, number, number])[] = [
  ['ballSpeed', 1.7, 4.1],
  ['clubSpeed', 2.2, 6.2],
];
/** Ball speed over club speed of full shots: from a wedge that slides under the ball to a drive, with a misread's room. */
const SMASH: readonly [number, number] = [0.85, SMASH_LIMIT];
/** Misfit of a relation between two columns that no full shot has. */
const BROKEN = 16;
/** Misfit of a column whose values are no full swing's. */
const UNUSUAL = 4;

/** Weighs units by the agreement of the shots. */
export type Weigh = (shots: readonly Written[], units: Units) => Evidence;

/** Weighs by flights in a scene: where the shots were hit, as far as that is known. */
export function weighIn(scene: Scene): Weigh {
  return (shots, units) => weigh(shots, units, scene);
}

function weigh(shots: readonly Written[], units: Units, scene: Scene): Evidence {
  const quantities = shots.map((shot) => inSi(shot, units));
  let misfit = 0;
  for (const name of Object.keys(units) as NumberName[]) {
    const middle = median(quantities.flatMap((shot) => shot[name] ?? []));
    if (middle === undefined) continue;
    const { possible, usual } = numberColumns[name];
    if (!allows(possible, middle)) {
      return {
        misfit: Number.POSITIVE_INFINITY,
        off: { [name]: Number.POSITIVE_INFINITY },
        carryMiss: undefined,
      };
    }
    if (!allows(usual, middle)) misfit += UNUSUAL;
  }
  const off: Partial<Record<NumberName, number>> = {};
  const relation = (over: NumberName, under: NumberName, low: number, high: number): void => {
    const ratio = median(quantities.flatMap((shot) => ratioOf(shot[over], shot[under]) ?? []));
    if (ratio === undefined) return;
    if (ratio < low || ratio > high) misfit += BROKEN;
  };
  relation('ballSpeed', 'clubSpeed', ...SMASH);
  const flights = quantities.flatMap((shot) => flown(shot, scene) ?? []);
  if (flights.length === 0) {
    for (const [speed, low, high] of CARRY_PER_SPEED) relation('carry', speed, low, high);
  }
  for (const { field, of, room } of FORETOLD) {
    const ratio = median(flights.flatMap(({ shot, flight }) => ratioOf(shot[field], of(flight)) ?? []));
    if (ratio === undefined) continue;
    off[field] = Math.log(ratio);
    misfit += (Math.log(ratio) / room) ** 2;
  }
  const misses = flights.flatMap(({ shot, flight }) =>
    shot.carry === undefined ? [] : [Math.abs(shot.carry - flight.carry)],
  );
  return { misfit, off, carryMiss: median(misses) };
}

function inSi(shot: Written, units: Units): Written {
  const si: Partial<Record<NumberName, number>> = {};
  for (const [name, value] of Object.entries(shot) as [NumberName, number][]) {
    const unit = units[name];
    if (unit !== undefined) si[name] = fromUnit(unit, value);
  }
  const { clubSpeed, smashFactor, backspin, sidespin } = si;
  if (si.ballSpeed === undefined && clubSpeed !== undefined && smashFactor !== undefined) {
    si.ballSpeed = clubSpeed * smashFactor;
  }
  if (si.spinRate === undefined && backspin !== undefined) si.spinRate = Math.hypot(backspin, sidespin ?? 0);
  return si;
}

interface Flown {
  readonly shot: Written;
  readonly flight: { carry: number; apex: number; hangTime: number; descentAngle: number };
}

/** A shot with its flight; undefined when it has no launch, or none that could be a shot's. */
function flown(shot: Written, scene: Scene): Flown | undefined {
  const { ballSpeed, launchAngle, spinRate } = shot;
  if (ballSpeed === undefined || launchAngle === undefined || spinRate === undefined) return undefined;
  const possible =
    allows(numberColumns.ballSpeed.possible, ballSpeed) &&
    allows(numberColumns.launchAngle.possible, launchAngle) &&
    allows(numberColumns.spinRate.possible, spinRate);
  if (!possible || launchAngle <= 0) return undefined;
  return { shot, flight: fly({ ballSpeed, launchAngle, spinRate } as Launch, scene) };
}

function ratioOf(over: number | undefined, under: number | undefined): number | undefined {
  return over !== undefined && under !== undefined && over > 0 && under > 0 ? over / under : undefined;
}

/** The middle; of any numbers, since cells that no shot can have are told only later. */
function median(values: readonly number[]): number | undefined {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)];
}
