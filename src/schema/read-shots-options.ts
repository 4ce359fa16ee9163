import { isRecord } from '../errors.js';
import { type CustomField, choice, custom, type Declared, optional, record, text } from '../inputs/field.js';
import { frozen } from '../inputs/frozen.js';
import { readField } from '../inputs/read.js';
import { memberPath, refuseType } from '../inputs/refuse.js';
import { readScene, type Scene } from '../scene/scene.js';
import type { Unit } from '../units/unit.js';
import type { DateOrder } from './dates.js';
import { GROUP_UNITS, type UnitGroup } from './find-units.js';
import type { DecimalMark } from './number-text.js';
import type { NamedColumns, ShotNeeds } from './shot-header.js';
import { findUnit, symbolOf } from './unit-names.js';

/** Units for columns whose header gives none, as they are written: `{ speed: 'mph', distance: 'yd' }`. */
export type ColumnUnits = Readonly<Partial<Record<UnitGroup, string>>>;

/** Options of `readShots`. */
export interface ReadShotsOptions {
  /** Field separator; default found from the header. */
  readonly separator?: ',' | ';' | '\t';
  /** Decimal mark; default found from the numbers. */
  readonly decimalMark?: DecimalMark;
  /** Units of columns whose header gives none; default found from the shots. */
  readonly units?: ColumnUnits;
  /**
   * What columns are, by the header they have in the file: `{ 'Ball V': 'ball speed (mph)' }`. A name that is not
   * known, as `not used`, sets a column aside.
   */
  readonly columns?: NamedColumns;
  /** Which comes first in dates like 3/5/2026; default what the other dates show, else the day. */
  readonly dateOrder?: DateOrder;
  /**
   * What a row must hold to be a shot: `flight` (default), a launch or a delivery that can be flown, or `club-speed`,
   * as in a log of speed training.
   */
  readonly needs?: ShotNeeds;
  /** Where the shots were hit: the flights by which units are found and checked are flown there. Default still standard air. */
  readonly scene?: Scene;
}

/** Signs that may part the fields of a row. */
export const SEPARATORS = [',', ';', '\t'] as const;

/** One of some signs, which a message must quote to be read. */
function sign(signs: readonly string[], label: string): CustomField & { readonly optional: true } {
  const wanted = `one of ${signs.map((one) => JSON.stringify(one)).join(' ')}`;
  return custom((value, path) => {
    if (value === undefined || signs.some((one) => one === value)) return value;
    throw refuseType(path, wanted, value);
  }, label);
}

/** The unit that a text names, of those a group can have. */
function unitField(group: UnitGroup): CustomField & { readonly optional: true } {
  const units = GROUP_UNITS[group];
  return custom((value, path) => {
    if (value === undefined) return undefined;
    const unit = typeof value === 'string' ? findUnit(units[0]?.si ?? '', value) : undefined;
    if (unit === undefined) throw refuseType(path, `one of ${units.map(symbolOf).join(', ')}`, value);
    return value;
  }, `unit of ${group}`);
}

const columnName = /* @__PURE__ */ frozen(() => text('club speed (mph)', 'name of a column'));

/** Most columns that are named. */
const MOST_COLUMNS = 500;

function readNamedColumns(value: unknown, path: string): NamedColumns | undefined {
  if (value === undefined) return undefined;
  if (!isRecord(value)) throw refuseType(path, 'a record of names by header', value);
  const names = Object.entries(value).slice(0, MOST_COLUMNS);
  return Object.fromEntries(
    names.map(([header, name]) => [
      header.trim(),
      readField(columnName, name, memberPath(path, header)) as string,
    ]),
  );
}

/** Declaration of {@link ReadShotsOptions}. @internal */
export const readShotsOptionFields: Declared<ReadShotsOptions> = /* @__PURE__ */ frozen(() => ({
  separator: sign(SEPARATORS, 'separator'),
  decimalMark: sign(['.', ','], 'decimal mark'),
  units: optional(
    record<ColumnUnits>(
      {
        speed: unitField('speed'),
        distance: unitField('distance'),
        height: unitField('height'),
        angle: unitField('angle'),
        spin: unitField('spin'),
      },
      'units of columns',
    ),
  ),
  columns: custom(readNamedColumns, 'names of columns'),
  dateOrder: optional(choice<DateOrder>(['day-first', 'month-first'], 'order of dates')),
  needs: optional(choice<ShotNeeds>(['flight', 'club-speed'], 'what a shot must hold')),
  scene: custom(
    (value, path) => (value === undefined ? undefined : readScene(value, path) && value),
    'where the shots were hit',
  ),
}));

/** The units that the caller gives for columns without one. */
export function askedUnits(units: ColumnUnits = {}): Readonly<Partial<Record<UnitGroup, Unit>>> {
  const found = Object.entries(units).map(([group, name]) => {
    return [group, findUnit(GROUP_UNITS[group as UnitGroup][0]?.si ?? '', name ?? '')];
  });
  return Object.fromEntries(found);
}
