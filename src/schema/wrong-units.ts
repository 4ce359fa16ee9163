import { describe } from '../errors.js';
import { refusal } from '../inputs/refuse.js';
import type { Unit } from '../units/unit.js';
import type { NumberName } from './column-names.js';
import type { Column } from './columns.js';
import { GROUP_UNITS, groupOf } from './find-units.js';
import type { Rejection } from './rejection.js';
import { headerOf } from './shot-header.js';
import type { Units, Weigh, Written } from './unit-evidence.js';
import { symbolOf } from './unit-names.js';

/**
 * Natural logarithm by which no weather, ground or ball explains a column: feet for yards and feet for metres are off
 * by a factor of 3 and more; winds of 8 m/s, landings 6 m up or down and another ball together hardly by 2, and by less
 * in the median of a session. A descent depends more on the ground; degrees for radians are off by 57.
 */
const WRONG = Math.log(2.2);
const WRONG_DESCENT = Math.log(10);
/** Misfit that is worth a look. */
const SUSPECT = 9;
/** Misfit that another unit must come down to. */
const RIGHT = 9;
/** Columns of fewer shots are not judged. */
const FEWEST = 3;

/** Columns that a flight starts from: read in another unit, all that follows changes. */
const STARTS = ['ballSpeed', 'launchAngle', 'spinRate', 'backspin', 'clubSpeed'] as const;
/** Columns that a flight foretells. */
const ENDS = ['carry', 'total', 'apex', 'hangTime', 'descentAngle'] as const;

/**
 * The columns whose unit in the header the shots contradict; they are to be left out.
 * @throws FairflightError `invalid-input` when it is a column that a flight starts from
 */
export function wrongUnits(
  shots: readonly Written[],
  units: Units,
  columns: readonly Column[],
  line: number,
  weigh: Weigh,
): readonly (Rejection & { readonly field: NumberName })[] {
  const found: (Rejection & { readonly field: NumberName })[] = [];
  const evidence = weigh(shots, units);
  if (evidence.misfit <= SUSPECT) return found;
  const isWrong = (field: (typeof ENDS)[number]): boolean =>
    Math.abs(evidence.off[field] ?? 0) > (field === 'descentAngle' ? WRONG_DESCENT : WRONG);
  const doubtful = ENDS.filter(isWrong);
  const misfit = (field: NumberName, unit: Unit): number => weigh(shots, { ...units, [field]: unit }).misfit;
  for (const field of STARTS) {
    const other = mended(shots, units, field, weigh);
    if (other === undefined) continue;
    // One column alone that agrees better in another unit is the likelier to be wrong.
    const [end] = doubtful;
    const own = end === undefined || doubtful.length > 1 ? undefined : mended(shots, units, end, weigh);
    if (end !== undefined && own !== undefined && misfit(end, own) <= misfit(field, other)) continue;
    const header = headerOf(columns, field);
    throw refusal(
      'csvText',
      `line ${line}, column ${describe(header)}: the shots contradict the unit; read as ${symbolOf(other)} they agree`,
      { hint: `write "(${symbolOf(other)})" in the header, or give the column by the option columns` },
    );
  }
  for (const field of doubtful) {
    if (shots.filter((shot) => shot[field] !== undefined).length < FEWEST) continue;
    const other = mended(shots, without(units, doubtful, field), field, weigh);
    const mend = other === undefined ? '' : `; read as ${symbolOf(other)} they would agree`;
    found.push({
      scope: 'column',
      reason: 'contradiction',
      line,
      column: headerOf(columns, field),
      field,
      message: `the values contradict the flight of the same shots: the unit in the header looks wrong${mend}; the column is not used`,
    });
  }
  return found;
}

/** Units of all columns but the doubtful ones, one of which is kept. */
function without(units: Units, doubtful: readonly NumberName[], kept: NumberName): Units {
  return Object.fromEntries(
    Object.entries(units).filter(([name]) => name === kept || !doubtful.some((field) => field === name)),
  );
}

/** The unit of one column that makes the shots agree; undefined when none does. */
function mended(shots: readonly Written[], units: Units, field: NumberName, weigh: Weigh): Unit | undefined {
  const group = groupOf(field);
  if (units[field] === undefined || group === undefined) return undefined;
  if (shots.filter((shot) => shot[field] !== undefined).length < FEWEST) return undefined;
  return GROUP_UNITS[group].find(
    (unit) => unit !== units[field] && weigh(shots, { ...units, [field]: unit }).misfit <= RIGHT,
  );
}
