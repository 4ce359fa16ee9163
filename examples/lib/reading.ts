import { type ReadShotsOptions, type Rejection, readShots, type ShotTable } from 'fairflight/schema';
import { EXIT, UsageError } from './command.js';
import { counted } from './text.js';
import { readTextFile } from './text-file.js';

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

/** Reads a CSV of shots. @throws UsageError when it holds no usable shot, with every reason */
export function readShotFile(file: string, options: ReadShotsOptions = {}): ShotTable {
  const { text, notes } = readTextFile(file);
  const table = readShots(text, options);
  if (table.shots.length > 0) return { ...table, notes: [...notes, ...table.notes] };
  const lines = table.rejected.map((each) => `\n  ${rejectionLine(each)}`).join('');
  throw new UsageError(`no usable shot in ${file}: ${readingSummary(table)}${lines}`);
}

/** The shots of one club; clubs are never mixed. @throws UsageError when there are several and none is named */
export function oneClub(table: ShotTable, asked: string | undefined): ShotTable {
  const clubs = [...new Set(table.shots.map(({ club }) => club ?? 'no club named'))];
  if (asked === undefined && clubs.length === 1) return table;
  const known = clubs.map((club) => JSON.stringify(club)).join(', ');
  if (asked === undefined)
    throw new UsageError(`the file holds several clubs (${known}); choose one with --club`);
  const shots = table.shots.filter(({ club }) => club?.toLowerCase() === asked.toLowerCase());
  if (shots.length === 0)
    throw new UsageError(`--club: no shot with ${JSON.stringify(asked)}; the file has ${known}`);
  const others = table.shots.length - shots.length;
  const note = `${counted(others, 'shot')} with other clubs not used (--club ${asked})`;
  return others === 0 ? table : { ...table, shots, notes: [...table.notes, note] };
}

/** Exit code after reading, and a line on the error stream when something was left out. */
export function codeAfterReading(command: string, table: ShotTable): number {
  if (table.rejected.length === 0) return EXIT.done;
  process.stderr.write(`${command}: ${readingSummary(table)}\n`);
  return EXIT.partial;
}
