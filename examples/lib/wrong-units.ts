import { median } from 'd3-array';
import { playShot, type Scene, type Shot } from 'fairflight';
import type { Rejection, ShotTable } from 'fairflight/schema';
import type { MeasuredShot } from 'fairflight/session';
import { fixed } from './text.js';

/** A column whose values the flight of a measured launch predicts. */
interface Foretold {
  readonly field: keyof MeasuredShot;
  readonly of: (shot: Shot) => number;
  /** The column is in another unit when the median of measured over flown is above this, or below its reciprocal. */
  readonly room: number;
}

/**
 * Feet for yards and feet for metres are off by a factor of 3 and more; winds of 8 m/s, landings 6 m up or down and
 * another ball together hardly by 2, and by less in the median of a session. A descent depends more on the ground; degrees for radians are off by 57.
 */
const FORETOLD: readonly Foretold[] = [
  { field: 'carry', of: (shot) => shot.carry, room: 2.2 },
  { field: 'total', of: (shot) => shot.total, room: 2.2 },
  { field: 'apex', of: (shot) => shot.flight.apex, room: 2.2 },
  { field: 'hangTime', of: (shot) => shot.flight.hangTime, room: 2.2 },
  { field: 'descentAngle', of: (shot) => shot.flight.descentAngle, room: 10 },
];

/** Columns of fewer shots are not judged. */
const FEWEST = 3;

/** The table without the columns that the model's flights show to be in another unit; each is listed with the reason. */
export function withoutWrongUnits(table: ShotTable, scene: Scene): ShotTable {
  const flown = table.shots.flatMap((measured) => {
    const { ballSpeed, launchAngle, spinRate } = measured;
    if (ballSpeed === undefined || launchAngle === undefined || spinRate === undefined) return [];
    return [{ measured, model: playShot({ ballSpeed, launchAngle, spinRate }, scene) }];
  });
  const found = FORETOLD.flatMap(({ field, of, room }) => {
    const ratios = flown.flatMap(({ measured, model }) => {
      const value = measured[field];
      return typeof value === 'number' && of(model) > 0 ? [value / of(model)] : [];
    });
    const ratio = median(ratios);
    if (ratio === undefined || ratios.length < FEWEST || (ratio < room && ratio > 1 / room)) return [];
    return [{ field, rejection: rejectionOf(table, field, ratio) }];
  });
  if (found.length === 0) return table;
  const wrong = new Set<string>(found.map(({ field }) => field));
  return {
    ...table,
    shots: table.shots.map(
      (shot) =>
        Object.fromEntries(Object.entries(shot).filter(([field]) => !wrong.has(field))) as MeasuredShot,
    ),
    rejected: [...found.map(({ rejection }) => rejection), ...table.rejected],
  };
}

function rejectionOf(table: ShotTable, field: keyof MeasuredShot, ratio: number): Rejection {
  return {
    scope: 'column',
    reason: 'contradiction',
    line: table.headerLine,
    column: table.headers[field] ?? field,
    message: `the values are ${fixed(ratio, 2)} times what the model flies from the launches of the same rows: the unit in the header looks wrong; the column is not used`,
  };
}
