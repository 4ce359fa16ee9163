import table from '../data/bearman-harvey-1976.json' with { type: 'json' };
import air from '../data/outside-air.json' with { type: 'json' };
import bounce from '../data/outside-bounce.json' with { type: 'json' };
import carry from '../data/outside-carry.json' with { type: 'json' };
import coefficients from '../data/outside-coefficients.json' with { type: 'json' };
import effects from '../data/outside-effects.json' with { type: 'json' };
import launches from '../data/outside-launches.json' with { type: 'json' };
import laws from '../data/outside-laws.json' with { type: 'json' };
import optimum from '../data/outside-optimum.json' with { type: 'json' };
import practice from '../data/outside-practice.json' with { type: 'json' };
import spin from '../data/outside-spin.json' with { type: 'json' };
import strike from '../data/outside-strike.json' with { type: 'json' };
import turf from '../data/outside-turf.json' with { type: 'json' };
import wind from '../data/outside-wind.json' with { type: 'json' };
import tours from '../data/tour-averages.json' with { type: 'json' };
import type { Conditions } from './conditions.js';
import { pointOf } from './figure.js';
import type { Group, OutsideRow } from './row.js';

/** A file of rows. Its words for grades and measures are checked where they are used. */
interface RowFile {
  readonly about: { readonly what: string; readonly use: string; readonly confidence: string };
  readonly assumed?: Conditions;
  readonly rows: readonly object[];
}

function groupOf(title: string, file: RowFile): Group {
  return {
    title,
    about: `${file.about.what}. ${file.about.use} ${file.about.confidence}`,
    ...(file.assumed !== undefined && { assumed: file.assumed }),
    rows: file.rows as readonly OutsideRow[],
  };
}

/** Three rows to each tour average. */
function tourRows(): OutsideRow[] {
  const misfits: Readonly<Record<string, string>> = tours.misfits;
  const causes: Readonly<Record<string, string>> = tours.worsened;
  return tours.rows.flatMap((row) => {
    const rowOf = (name: keyof typeof tours.tolerances, measure: string, expected: number) => {
      const id = `${row.id}-${name}`;
      const misfit = misfits[id];
      const worsened = causes[id];
      return {
        id,
        quantity: `${name}, tour`,
        what: row.id,
        expected,
        ...tours.tolerances[name],
        grade: 'D' as const,
        measure,
        given: {
          ballSpeed: `${row.ballSpeed} m/s`,
          launchAngle: `${row.launchAngleDegrees}°`,
          spin: `${row.backspinRpm} rpm`,
        },
        usedInFit: true,
        ...(misfit !== undefined && { misfit }),
        ...(worsened !== undefined && { worsened }),
      };
    };
    return [
      rowOf('carry', 'carry', row.carry / 0.9144),
      rowOf('apex', 'apex', row.apex / 0.9144),
      rowOf('descent', 'descent angle', row.descentAngleDegrees),
    ];
  });
}

const tourAverages: Group = {
  title: 'Tour averages',
  about: `${tours.about.what}. ${tours.about.source}; ${tours.about.confidence}. ${tours.about.limits}`,
  assumed: tours.assumed,
  rows: tourRows(),
};

/** Two rows to each cell of the table of Bearman and Harvey. */
function bearmanHarveyRows(): OutsideRow[] {
  const { drag, lift } = table.tolerances;
  return table.spins.flatMap((spin, i) =>
    table.airSpeeds.flatMap((speed, j) => {
      const given = { airSpeed: `${speed} m/s`, spin: `${spin} rpm` };
      const rowOf = (
        quantity: 'drag coefficient' | 'lift coefficient',
        expected = Number.NaN,
        tolerance: number,
      ) => ({
        id: `${quantity} ${speed} ${spin}`,
        quantity,
        what: `${speed} m/s, ${spin} rpm`,
        expected,
        tolerance,
        unit: '',
        grade: 'A' as const,
        measure: quantity,
        given,
        source: table.about.source,
        setAside: table.setAside,
      });
      return [
        rowOf('drag coefficient', table.drag[i]?.[j], pointOf(given)[0] < 1e5 ? drag.below : drag.above),
        rowOf('lift coefficient', table.lift[i]?.[j], lift.tolerance),
      ];
    }),
  );
}

const bearmanHarvey: Group = {
  title: 'The table of Bearman and Harvey',
  about: `${table.about.what}. ${table.about.source}; ${table.about.confidence}. ${table.about.use} Tolerance of drag ${table.tolerances.drag.below} and ${table.tolerances.drag.above}: ${table.tolerances.drag.limits} Of lift ${table.tolerances.lift.tolerance}: ${table.tolerances.lift.limits} Computed less table:`,
  rows: bearmanHarveyRows(),
  matrix: { along: 'airSpeed', down: 'spin' },
};

/** Every comparison with the outside, in the order of the page. */
export const groups: readonly Group[] = [
  groupOf('Carry and total', carry),
  groupOf('Wind', wind),
  groupOf('Air', air),
  tourAverages,
  groupOf('Drag and lift coefficients', coefficients),
  groupOf('Laws of drag and lift', laws),
  bearmanHarvey,
  groupOf('Spin in flight', spin),
  groupOf('Launch from delivery', launches),
  groupOf('Effects of the strike on launch', effects),
  groupOf('Effects of the strike on distance and curve', strike),
  groupOf('Run', turf),
  groupOf('Bounce', bounce),
  groupOf('Best loft, launch and spin', optimum),
  groupOf('Common practice', practice),
];
