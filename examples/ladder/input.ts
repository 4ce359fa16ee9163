import type { Rejection, ShotTable } from 'fairflight/schema';
import { counted } from '../lib/text.js';

/** `line 7, column "spin (rpm)": …` */
export function rejectionLine({ scope, line, column, message }: Rejection): string {
  const where = column === '' ? '' : `, column ${JSON.stringify(column)}`;
  return `${scope === 'column' ? 'column left out, ' : ''}line ${line}${where}: ${message}`;
}

const REASONS: Readonly<Record<Rejection['reason'], string>> = {
  'not-a-number': 'text where a number should be',
  'impossible-value': 'an impossible value',
  contradiction: 'values that contradict each other',
  'missing-value': 'a value that is needed is missing',
  'malformed-row': 'a broken row',
  'unclear-header': 'an unclear or repeated header',
  'unknown-unit': 'a unit that is missing or unknown',
};

/** One sentence: how many rows were read, left out, and why. */
export function readingSummary(table: ShotTable): string {
  const read = `${counted(table.rowsRead, 'row')} read, ${table.shots.length} used, ${table.rowsLeftOut} left out as bad`;
  const columns = table.rejected.filter(({ scope }) => scope === 'column').length;
  const lines = new Map<string, Set<number>>();
  for (const { reason, line } of table.rejected.filter(({ scope }) => scope === 'row')) {
    lines.set(reason, (lines.get(reason) ?? new Set()).add(line));
  }
  const why = [...lines].map(([reason, at]) => `${REASONS[reason as Rejection['reason']]}: ${at.size}`);
  return [
    why.length === 0 ? read : `${read} (${why.join('; ')})`,
    ...(columns === 0 ? [] : [`${counted(columns, 'column')} left out`]),
  ].join('; ');
}
