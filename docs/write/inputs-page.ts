import type { Field, QuantityField } from '../../src/inputs/field.js';
import { inUnit } from '../../src/units/unit.js';
import { type Declaration, type DeclaredField, declarations } from './declarations.js';
import { saidNumber, saidRange } from './ranges.js';

/** The page docs/inputs.md: every input record, its fields, their units, ranges and ordinary values. */

/** Where a record is told of, by the folder of its declaration; in the order of the page. */
const CHAPTERS: readonly (readonly [title: string, intro: string, names: readonly string[]])[] = [
  ['The shot', '', ['Delivery', 'StrikeOffset', 'Launch', 'LandingBall', 'MeasuredShot']],
  [
    'The scene',
    '',
    [
      'Scene',
      'Air',
      'AirState',
      'AirPlace',
      'ReducedPressure',
      'Wind',
      'WindReading',
      'Ground',
      'Turf',
      'Ball',
    ],
  ],
  ['The clubhead', '', ['Clubhead', 'RestitutionLaw']],
  [
    'Coefficient models',
    '',
    ['CoefficientGrid', 'CoefficientScale', 'FittedModernConstants', 'AerodynamicModel'],
  ],
  ['Accuracy of readings', '', ['ReadingErrors', 'FlightReadingErrors', 'StrikePriors', 'CalibrationPriors']],
];

const SYMBOLS: Readonly<Record<string, string>> = {
  deg: '°',
  'deg/s': '°/s',
  'kg m2': 'kg m²',
  'g cm2': 'g cm²',
  'kg/m3': 'kg/m³',
  C: '°C',
};
/** A unit after its number; no blank before a degree sign. */
function after(number: string, unit: string): string {
  const symbol = SYMBOLS[unit] ?? unit;
  return symbol === '°' ? `${number}°` : `${number} ${symbol}`;
}

/** Digits enough for a table. */
function short(value: number): string {
  return saidNumber(Number(value.toPrecision(4)));
}

function cell(text: string): string {
  return text.replaceAll('|', '\\|').replace(/\s+/g, ' ').trim();
}

interface Row {
  readonly unit: string;
  readonly range: string;
  readonly said: string;
  readonly example: string;
}

function quantityRow(field: QuantityField): Row {
  const { said, si, min, max, example } = field;
  const spoken = said.symbol !== si;
  const inSaid = (value: number): string => short(inUnit(said, value));
  return {
    unit: si === '' ? '' : (SYMBOLS[si] ?? si),
    range: saidRange(field),
    said: spoken ? `${inSaid(min)} to ${after(inSaid(max), said.symbol)}` : '',
    example: spoken ? after(inSaid(example), said.symbol) : short(example),
  };
}

function rowOf(field: Field): Row {
  const none = { unit: '', range: '', said: '', example: '' };
  switch (field.kind) {
    case 'quantity':
      return quantityRow(field);
    case 'count':
      return { ...none, range: `${saidRange(field)}, whole`, example: saidNumber(field.example) };
    case 'choice':
      return {
        ...none,
        range: field.names.map((name) => `\`${name}\``).join(', '),
        example: `\`${field.example}\``,
      };
    case 'text':
      return { ...none, range: 'text', example: `\`${field.example}\`` };
    case 'flag':
      return { ...none, range: '`true`, `false`' };
    case 'named':
      return {
        ...none,
        range: `a record, or ${Object.keys(field.presets)
          .map((name) => `\`${name}\``)
          .join(', ')}`,
        example: `\`${field.example}\``,
      };
    case 'variant':
      return {
        ...none,
        range: `by \`${field.by}\`: ${Object.keys(field.cases)
          .map((name) => `\`${name}\``)
          .join(', ')}`,
      };
    case 'list': {
      const most = field.most < 2 ** 20 ? ` to ${saidNumber(field.most)}` : ' or more';
      const each = rowOf(field.of);
      return { ...each, range: `${saidNumber(field.least)}${most} of ${each.range || 'records'}` };
    }
    case 'record':
      return { ...none, range: 'a record' };
    case 'custom':
      return none;
  }
}

/** What a comment says is taken where the field is left out. */
function defaultIn(comment: string): string {
  return /\bdefault:? (.+?)(?:[.;](?:\s|$)|$)/.exec(comment)?.[1] ?? '';
}

function fieldRow({ name, field, comment }: DeclaredField): string {
  const { unit, range, said, example } = rowOf(field);
  const left = field.optional === true ? defaultIn(comment) || 'may be left out' : 'required';
  const cells = [`\`${name}\``, field.label, unit, range, said, example, left];
  return `| ${cells.map(cell).join(' | ')} |`;
}

/** Fields within records, and the cases of variants, each by its dotted name. */
function rows({ name, field, comment, type }: DeclaredField): readonly DeclaredField[] {
  const below = (fields: Readonly<Record<string, Field>>, mark = ''): readonly DeclaredField[] =>
    Object.entries(fields).flatMap(([key, part]) =>
      rows({ name: `${name}.${key}${mark}`, field: part, comment: '', type }),
    );
  const own = { name, field, comment, type };
  if (field.kind === 'record') return [own, ...below(field.fields)];
  if (field.kind === 'variant') {
    return [own, ...Object.entries(field.cases).flatMap(([kind, fields]) => below(fields, ` (${kind})`))];
  }
  return [own];
}

/** A field of which its type says nothing of its own. */
function plainField([name, field]: readonly [string, Field]): DeclaredField {
  return { name, field, comment: '', type: '' };
}

function section(
  { name, summary, own, fields, extends: bases }: Declaration,
  told: ReadonlySet<string>,
): string {
  const all = own.length > 0 || bases.length > 0 ? own : Object.entries(fields).map(plainField);
  const outer = all.filter((field) => !all.some((other) => field.name.startsWith(`${other.name}.`)));
  const shown = outer.flatMap((field) => {
    const elsewhere = (field.type.match(/\w+/g) ?? []).some((word) => told.has(word));
    return elsewhere ? [field] : rows(field);
  });
  const more =
    bases.length === 0 ? '' : `\n\nAlso the fields of ${bases.map((base) => `\`${base}\``).join(', ')}.`;
  const head = ['field', 'what it is', 'SI', 'range', 'as people say it', 'for example', 'left out'];
  const table =
    shown.length === 0
      ? ''
      : `\n\n| ${head.join(' | ')} |\n|${head.map(() => ' --- |').join('')}\n${shown.map(fieldRow).join('\n')}`;
  return `### ${name}\n\n${cell(summary.replace(/\{@link (\S+?)\}/g, '`$1`').replace(/ @\w+.*$/, ''))}${table}${more}`;
}

const HEAD = `# Inputs

Every record that the library takes, field by field: written by \`npm run docs:inputs\` from the declarations that the
functions themselves read by (\`src/inputs\`, and beside the type where a record belongs to one room). Both ends of a range
are allowed. A function refuses what lies outside, a field that is missing, and one it does not know, and names it with
its path.

A quantity is passed in SI: \`mph(95)\` makes one. In CSV and JSON the unit stands with the number.`;

/** The page. */
export async function renderInputsPage(): Promise<string> {
  const all = (await declarations()).filter(({ name }) => name !== 'ModelWarning');
  const told = new Set(all.map(({ name }) => name));
  const named = new Set(CHAPTERS.flatMap(([, , names]) => names));
  const chapters = CHAPTERS.map(
    ([title, , names]) => [title, names.flatMap((name) => all.filter((each) => each.name === name))] as const,
  );
  const rest = all.filter(({ name }) => !named.has(name));
  const isOptions = ({ name }: Declaration): boolean => /(Options|Control|Base)$/.test(name);
  const parts = [
    ...chapters,
    ['Questions', rest.filter((each) => !isOptions(each))] as const,
    ['Options', rest.filter(isOptions)] as const,
  ];
  const text = parts.map(
    ([title, records]) => `## ${title}\n\n${records.map((each) => section(each, told)).join('\n\n')}`,
  );
  return `${[HEAD, ...text].join('\n\n')}\n`;
}
