import { isFairflightError } from 'fairflight';
import { type ReadShotsOptions, readShots, type ShotTable, type UnitGroup } from 'fairflight/schema';
import { EXIT, type Given, type Option, oneOf, UsageError } from './command.js';
import type { ProgramName } from './programs.js';
import { readingSummary, rejectionLine } from './shot-table.js';
import { remark } from './terminal.js';
import { counted } from './text.js';
import { readTextFile } from './text-file.js';

/** Options that give a unit, by the group of columns they give it for. */
const GROUPS: Readonly<Record<UnitGroup, UnitOption>> = {
  speed: 'speed',
  distance: 'distance',
  height: 'apex',
  angle: 'angle',
  spin: 'spin',
};

type UnitOption = 'speed' | 'distance' | 'apex' | 'angle' | 'spin';
type ReadingOption = UnitOption | 'column' | 'dates';

/** Options that say how a file is to be read. */
export const READING_OPTIONS: Readonly<Record<ReadingOption, Option>> = {
  speed: { type: 'string', value: 'mph', help: 'unit of speeds where the file gives none: mph, km/h or m/s' },
  distance: { type: 'string', value: 'yd', help: 'unit of distances where the file gives none: yd, m or ft' },
  apex: { type: 'string', value: 'ft', help: 'unit of heights where the file gives none: ft, m or yd' },
  angle: { type: 'string', value: 'deg', help: 'unit of angles where the file gives none: deg or rad' },
  spin: { type: 'string', value: 'rpm', help: 'unit of spin where the file gives none: rpm, rev/s or rad/s' },
  column: {
    type: 'string',
    many: true,
    value: '"Ball V=ball speed (mph)"',
    help: 'what a column is; may be given several times',
  },
  dates: { type: 'string', value: 'ORDER', help: 'day-first or month-first, for dates like 3/5/2026' },
};

/** How the file is to be read, as typed. @throws UsageError */
export function readingFrom(given: Given<ReadingOption>): ReadShotsOptions {
  const units = (Object.keys(GROUPS) as UnitGroup[]).flatMap((group) => {
    const text = given.text(GROUPS[group]);
    return text === undefined ? [] : [[group, text] as const];
  });
  const columns = given.texts('column').map((text) => {
    const at = text.indexOf('=');
    if (at > 0) return [text.slice(0, at), text.slice(at + 1)] as const;
    throw new UsageError(`--column must be like "Ball V=ball speed (mph)", got ${JSON.stringify(text)}`);
  });
  const dates = given.text('dates');
  return {
    units: Object.fromEntries(units),
    columns: Object.fromEntries(columns),
    ...(dates !== undefined && { dateOrder: oneOf('dates', dates, ['day-first', 'month-first']) }),
  };
}

/** Reads a CSV of shots. @throws UsageError when it holds no usable shot, with every reason */
export function readShotFile(file: string, options: ReadShotsOptions): ShotTable {
  const { text, notes } = readTextFile(file);
  const table = tableOf(file, text, options);
  if (table.shots.length > 0) return { ...table, notes: [...notes, ...table.notes] };
  const lines = table.rejected.map((each) => `\n  ${rejectionLine(each)}`).join('');
  throw new UsageError(`no usable shot in ${file}: ${readingSummary(table)}${lines}`);
}

function tableOf(file: string, text: string, options: ReadShotsOptions): ShotTable {
  try {
    return readShots(text, options);
  } catch (error) {
    if (!isFairflightError(error) || error.hint === undefined) throw error;
    const what = error.message.replace(`; ${error.hint}`, '');
    throw new UsageError(
      `${file}: ${what}\nSay it in the header, or with --speed, --distance, --apex, --angle, --spin, or --column "NAME IN FILE=ball speed (mph)".`,
    );
  }
}

/** The shots of one club; clubs are never mixed. @throws UsageError when there are several and none is named */
export function oneClub(table: ShotTable, asked: string | undefined): ShotTable {
  const clubs = [...new Set(table.shots.map(({ club }) => club ?? 'no club named'))];
  if (asked === undefined && clubs.length === 1) return table;
  const known = clubs.map((club) => JSON.stringify(club)).join(', ');
  if (asked === undefined)
    throw new UsageError(`the file holds several clubs (${known}); choose one with --club`);
  const plain = (name = ''): string => name.toLowerCase().replace(/[^\p{L}\p{N}]/gu, '');
  const shots = table.shots.filter(({ club }) => club !== undefined && plain(club) === plain(asked));
  if (shots.length === 0)
    throw new UsageError(`--club: no shot with ${JSON.stringify(asked)}; the file has ${known}`);
  const others = table.shots.length - shots.length;
  const note = `${counted(others, 'shot')} with other clubs not used (--club ${asked})`;
  return others === 0 ? table : { ...table, shots, notes: [...table.notes, note] };
}

/** The hand asked for, or the one the file names, or the right. @throws UsageError when the file names both */
export function handOf(table: ShotTable, asked: string | undefined): 'right' | 'left' {
  if (asked !== undefined) return oneOf('hand', asked, ['right', 'left']);
  const hands = new Set(table.shots.map(({ hand }) => hand ?? 'right'));
  if (hands.size > 1)
    throw new UsageError('the file holds shots of right- and left-handed players; choose with --hand');
  return hands.has('left') ? 'left' : 'right';
}

/** Exit code after reading, and a line on the error stream when something was left out. */
export function codeAfterReading(command: ProgramName, table: ShotTable): number {
  if (table.rejected.length === 0) return EXIT.done;
  remark(`${command}: ${readingSummary(table)}\n`);
  return EXIT.partial;
}
