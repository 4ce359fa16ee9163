import { describe } from '../errors.js';
import { type Field, type Fields, type QuantityField, quantity } from '../inputs/field.js';
import { frozen } from '../inputs/frozen.js';
import { launchFields } from '../inputs/launch.js';
import { measuredShotFields } from '../inputs/measured-shot.js';
import { RATIO, type Unit } from '../units/unit.js';
import { columnBounds } from './column-bounds.js';
import { aliases, type HelperName, type NumberName, type TextName } from './column-names.js';
import { SMASH_LIMIT } from './shot-checks.js';
import { findUnit, symbolOf, UNIT_KINDS, unitSymbols } from './unit-names.js';

/** What a column of numbers may hold; the same quantity, within the column's bounds. */
export interface NumberColumn {
  readonly possible: QuantityField;
  readonly usual: QuantityField;
}

/** Declarations of the columns that a shot has no field for. */
const helperFields: Readonly<Record<HelperName, QuantityField>> = /* @__PURE__ */ frozen(() => {
  const { said, max, example } = launchFields.spinRate;
  return {
    smashFactor: quantity(RATIO, 0, SMASH_LIMIT, 1.45, 'smash factor'),
    backspin: quantity(said, -max, max, example, 'backspin'),
    sidespin: quantity(said, -max, max, 0, 'sidespin'),
  };
});

const allFields = /* @__PURE__ */ frozen(() => ({ ...measuredShotFields, ...helperFields }));

/** The columns of numbers: each declaration within its {@link columnBounds}. */
export const numberColumns: Readonly<Record<NumberName, NumberColumn>> = /* @__PURE__ */ frozen(() => {
  const columns = Object.entries(allFields as Fields).flatMap(([name, field]) => {
    if (field.kind !== 'quantity') return [];
    const { possible = [field.min, field.max], usual = possible } = columnBounds[name as NumberName] ?? {};
    const within = ([min, max]: readonly [number, number]): QuantityField => ({ ...field, min, max });
    return [[name, { possible: within(possible), usual: within(usual) }]];
  });
  return Object.fromEntries(columns) as Record<NumberName, NumberColumn>;
});

/** What one header cell turned out to be. */
export type Heading =
  | { readonly kind: 'number'; readonly field: NumberName; readonly unit: Unit }
  | { readonly kind: 'text'; readonly field: TextName }
  | { readonly kind: 'unknown' }
  | {
      readonly kind: 'refused';
      readonly reason: 'unknown-unit' | 'unclear-header';
      readonly message: string;
    };

/** Fields by what their columns may be called. */
export const columnNames: Readonly<Record<string, NumberName | TextName>> = /* @__PURE__ */ frozen(() =>
  Object.fromEntries(
    Object.entries(allFields).flatMap(([key, { kind, label }]) => {
      if (kind !== 'quantity' && kind !== 'text') return [];
      const field = key as NumberName | TextName;
      return [label, ...(aliases[field] ?? [])].map((name) => [name, field] as const);
    }),
  ),
);

/** More words than any name has, where splitting a hostile one may stop. */
const MORE_WORDS = 8;

const UNKNOWN: Heading = { kind: 'unknown' };

/** Reads one header cell, for example `club speed (mph)`. Case, underscores, hyphens and extra blanks do not matter. */
export function readHeading(text: string): Heading {
  const { before, unitText } = splitUnit(text.trim());
  const name = before
    .toLowerCase()
    .split(/[\s_-]+/u, MORE_WORDS)
    .join(' ')
    .trim();
  const field = Object.hasOwn(columnNames, name) ? columnNames[name] : undefined;
  if (field === undefined) return UNKNOWN;
  const declared: Field = allFields[field];
  if (declared.kind !== 'quantity') return { kind: 'text', field: field as TextName };
  const { si, said } = declared;
  const unit = findUnit(si, si === '' && unitText === '' ? '1' : unitText);
  if (unit !== undefined) return { kind: 'number', field: field as NumberName, unit };
  const wish = `write for example "${name} (${symbolOf(said)})"; units known here: ${unitSymbols(si)}`;
  const message =
    unitText === ''
      ? `the header does not say the unit; ${wish}`
      : `${describe(unitText)} is not a unit of ${UNIT_KINDS[si].name} known here; ${wish}`;
  return { kind: 'refused', reason: 'unknown-unit', message };
}

/** The unit in round or square brackets at the end, and what stands before them. */
function splitUnit(text: string): { readonly before: string; readonly unitText: string } {
  const [open, close] = text.endsWith(')') ? ['(', ')'] : ['[', ']'];
  const start = text.lastIndexOf(open);
  const end = text.length - 1;
  // The first closing bracket after the last opening one must be the end of the text.
  if (start < 0 || text.indexOf(close, start) !== end) return { before: text, unitText: '' };
  return { before: text.slice(0, start), unitText: text.slice(start + 1, end).trim() };
}
