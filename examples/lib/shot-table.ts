import type { Rejection, ShotTable } from 'fairflight/schema';
import { counted } from './text.js';

/** `line 7, column "spin (rpm)": …` */
export function rejectionLine({ scope, line, column, message }: Rejection): string {
  const where = column === '' ? '' : `, column ${JSON.stringify(column)}`;
  return `${LEFT_OUT[scope]}line ${line}${where}: ${message}`;
}

const LEFT_OUT: Readonly<Record<Rejection['scope'], string>> = {
  row: '',
  column: 'column left out, ',
  cell: 'value left out, ',
};

const REASONS: Readonly<Record<Rejection['reason'], string>> = {
  'not-a-number': 'text where a number should be',
  'impossible-value': 'an impossible value',
  contradiction: 'values that contradict each other',
  'missing-value': 'a value that is needed is missing',
  'malformed-row': 'a broken row',
  'unclear-header': 'an unclear or repeated header',
  'unknown-unit': 'a unit that is missing or unknown',
  'summary-row': 'an average or a sum of other rows',
};

/** One sentence: how many rows were read, left out, and why. */
export function readingSummary(table: ShotTable): string {
  const read = `${counted(table.rowsRead, 'row')} read, ${table.shots.length} used, ${table.rowsLeftOut} left out`;
  const columns = table.rejected.filter(({ scope }) => scope === 'column').length;
  const cells = table.rejected.filter(({ scope }) => scope === 'cell').length;
  const lines = new Map<string, Set<number>>();
  for (const { reason, line } of table.rejected.filter(({ scope }) => scope === 'row')) {
    lines.set(reason, (lines.get(reason) ?? new Set()).add(line));
  }
  const why = [...lines].map(([reason, at]) => `${REASONS[reason as Rejection['reason']]}: ${at.size}`);
  return [
    why.length === 0 ? read : `${read} (${why.join('; ')})`,
    ...(columns === 0 ? [] : [`${counted(columns, 'column')} left out`]),
    ...(cells === 0 ? [] : [`${counted(cells, 'value')} left out`]),
  ].join('; ');
}

/** Everything that was left out or set aside, a sentence each. */
export function tableNotes({ rejected, notes }: Pick<ShotTable, 'rejected' | 'notes'>): readonly string[] {
  return [...rejected.map(rejectionLine), ...notes.map((note) => `Note: ${note}.`)];
}

/** What the file says of itself, and what was read and left out, for the terminal. */
export function readingLines(table: ShotTable): readonly string[] {
  return [
    ...table.comments,
    `${readingSummary(table)}.`,
    ...table.rejected.map((each) => `  left out: ${rejectionLine(each)}`),
    ...table.notes.map((note) => `  note: ${note}`),
  ];
}
