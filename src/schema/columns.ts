import { describe } from '../errors.js';
import { type Field, type Fields, type QuantityField, quantity } from '../inputs/field.js';
import { frozen } from '../inputs/frozen.js';
import { launchFields } from '../inputs/launch.js';
import { measuredShotFields } from '../inputs/measured-shot.js';
import { RATIO, type SiUnit, type Unit } from '../units/unit.js';
import { columnBounds } from './column-bounds.js';
import { aliases, type HelperName, type NumberName, type WordName } from './column-names.js';
import { squashed } from './plain-text.js';
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
  | { readonly kind: 'number'; readonly field: NumberName; readonly unit: Unit | undefined }
  | { readonly kind: 'text'; readonly field: WordName }
  | { readonly kind: 'unknown' }
  /** Holds what a column before it holds, cell for cell. */
  | { readonly kind: 'twin' }
  | {
      readonly kind: 'refused';
      readonly reason: 'unknown-unit' | 'unclear-header';
      readonly message: string;
    };

/** Fields by what their columns may be called, {@link squashed}. */
export const columnNames: ReadonlyMap<string, NumberName | WordName> = /* @__PURE__ */ new Map(
  /* @__PURE__ */ Object.entries(allFields).flatMap(([key, { kind, label }]) => {
    if (kind !== 'quantity' && kind !== 'text' && kind !== 'choice') return [];
    const field = key as NumberName | WordName;
    return [label, ...(aliases[field] ?? [])].map((name) => [squashed(name), field] as const);
  }),
);

/** One column of the file. */
export interface Column {
  readonly header: string;
  readonly heading: Heading;
}

const UNKNOWN: Heading = { kind: 'unknown' };

/**
 * Reads one header cell, for example `club speed (mph)`, `clubSpeed_mph` or `Club Speed`. Case, blanks and marks
 * between words do not matter; the unit stands in brackets or at the end, or is not said.
 */
export function readHeading(text: string): Heading {
  const name = squashed(text);
  const whole = columnNames.get(name);
  if (whole !== undefined) return headingOf(whole, '');
  const { before, inBrackets } = splitBrackets(text.trim());
  const field = inBrackets === '' ? undefined : columnNames.get(squashed(before));
  if (field !== undefined) return headingOf(field, inBrackets);
  return unitAtTheEnd(name) ?? UNKNOWN;
}

function headingOf(field: NumberName | WordName, unitText: string): Heading {
  const declared: Field = allFields[field];
  if (declared.kind !== 'quantity') return { kind: 'text', field: field as WordName };
  const { si, said, label } = declared;
  if (unitText === '' || SIDES.test(unitText)) {
    return { kind: 'number', field: field as NumberName, unit: undefined };
  }
  const unit = unitIn(si, unitText);
  if (unit !== undefined) return { kind: 'number', field: field as NumberName, unit };
  const wish = `write for example "${label} (${symbolOf(said)})"; units known here: ${unitSymbols(si)}`;
  const message = `${describe(unitText)} is not a unit of ${UNIT_KINDS[si].name} known here; ${wish}`;
  return { kind: 'refused', reason: 'unknown-unit', message };
}

/** Words on which side is which, as `L-/R+`, stand where a unit may stand. */
const SIDES = /^(?:[+\-−±=/,:;\s]|left|right|[lr](?![a-z]))+$/iu;

/** Longest unit with words beside it, as in `yd, + right`. */
const LONGEST_UNIT = 40;

/** The unit a text names, alone or among other words. */
export function unitIn(si: SiUnit, text: string): Unit | undefined {
  if (text.length > LONGEST_UNIT) return undefined;
  const found = findUnit(si, text);
  if (found !== undefined) return found;
  for (const word of text.split(/[\s,;:+]+/u)) {
    const unit = findUnit(si, word);
    if (unit !== undefined && word !== '1') return unit;
  }
  return undefined;
}

/** Units by how they are written at the end of a name, {@link squashed}; some spellings stand for several. */
const unitEndings: ReadonlyMap<string, readonly Unit[]> = /* @__PURE__ */ (() => {
  const endings = new Map<string, readonly Unit[]>();
  for (const { units } of Object.values(UNIT_KINDS)) {
    for (const { unit, spellings } of units) {
      for (const ending of new Set(spellings.map(squashed))) {
        if (ending !== '') endings.set(ending, [...(endings.get(ending) ?? []), unit]);
      }
    }
  }
  return endings;
})();
const LONGEST_ENDING = 18;

/** `carryyd`, `ballspeedmph`: a known name with a unit of its quantity behind it. */
function unitAtTheEnd(name: string): Heading | undefined {
  for (let length = Math.min(name.length - 1, LONGEST_ENDING); length > 0; length--) {
    const units = unitEndings.get(name.slice(-length));
    const field = units === undefined ? undefined : columnNames.get(name.slice(0, -length));
    if (units === undefined || field === undefined) continue;
    const declared: Field = allFields[field];
    if (declared.kind !== 'quantity') continue;
    const unit = units.find(({ si }) => si === declared.si);
    if (unit !== undefined) return { kind: 'number', field: field as NumberName, unit };
  }
  return undefined;
}

/** The text in round or square brackets at the end, and what stands before them. */
function splitBrackets(text: string): { readonly before: string; readonly inBrackets: string } {
  const [open, close] = text.endsWith(')') ? ['(', ')'] : ['[', ']'];
  const start = text.lastIndexOf(open);
  const end = text.length - 1;
  // The first closing bracket after the last opening one must be the end of the text.
  if (start < 0 || text.indexOf(close, start) !== end) return { before: text, inBrackets: '' };
  return { before: text.slice(0, start), inBrackets: text.slice(start + 1, end).trim() };
}
