import { isFairflightError } from 'fairflight';
import { type ReadShotsOptions, readShots, type ShotTable } from 'fairflight/schema';
import type { MeasuredShot } from 'fairflight/session';
import {
  type Angle,
  type AngularSpeed,
  type Length,
  type Speed,
  toDegrees,
  toFeet,
  toKph,
  toMph,
  toRpm,
  toYards,
} from 'fairflight/units';
import { daysOf } from '../ladder/words.js';
import type { Display } from '../lib/display.js';
import { COLUMNS, shownBy } from '../lib/shot-quantities.js';
import { readingSummary, rejectionLine } from '../lib/shot-table.js';
import { fixed, grouped } from '../lib/text.js';
import type { Messages } from './catalogue/messages.js';
import type { ReadFile } from './protocol.js';
import type { StudyFile } from './study.js';

/** A file as it was read, and what the page shows of that. */
export interface FileReading {
  readonly table: ShotTable | undefined;
  readonly view: ReadFile;
}

/** Rows of the preview, and lines listed of what was left out; a page of thousands helps nobody. */
const PREVIEW_ROWS = 6;
const MOST_LISTED = 60;

/** Reads the table of a file: shots that can be flown or, failing that, a log of club speeds. */
export function tableOf({ text, columns, dates }: StudyFile): ShotTable {
  const options: ReadShotsOptions = { columns, ...(dates !== '' && { dateOrder: dates }) };
  try {
    const table = readShots(text, options);
    if (table.shots.length > 0) return table;
    const log = readShots(text, { ...options, needs: 'club-speed' });
    return log.shots.length > 0 ? log : table;
  } catch (error) {
    try {
      return readShots(text, { ...options, needs: 'club-speed' });
    } catch {
      throw error;
    }
  }
}

/** Reads a file and says what was read; nothing that a file holds makes it throw. */
export function fileReading(file: StudyFile, display: Display, words: Messages): FileReading {
  const none = { name: file.name, comments: [], notes: [], leftOut: [], clubs: [], days: '' };
  try {
    const table = tableOf(file);
    const view: ReadFile = {
      ...none,
      says: `${readingSummary(table)}.`,
      problem: table.shots.length > 0 ? '' : words.page.problem,
      comments: table.comments,
      notes: table.notes,
      columns: table.columns.map((column) => ({ ...column, sample: sampleOf(column, table) })),
      leftOut: listedUpTo(table.rejected.map(rejectionLine), words),
      preview: previewOf(table.shots, display, words),
      clubs: clubsOf(table.shots),
      days: daysOf(table.shots),
    };
    return { table: table.shots.length > 0 ? table : undefined, view };
  } catch (error) {
    if (!isFairflightError(error)) throw error;
    return {
      table: undefined,
      view: {
        ...none,
        says: '',
        problem: error.message,
        columns: headersOf(file.text),
        preview: { columns: [], rows: [] },
      },
    };
  }
}

function listedUpTo(lines: readonly string[], words: Messages): readonly string[] {
  if (lines.length <= MOST_LISTED) return lines;
  return [...lines.slice(0, MOST_LISTED), words.page.more(lines.length - MOST_LISTED)];
}

/** Names of the clubs, most shots first. */
export function clubsOf(shots: readonly MeasuredShot[]): readonly string[] {
  const counts = new Map<string, number>();
  for (const { club } of shots) if (club !== undefined) counts.set(club, (counts.get(club) ?? 0) + 1);
  return [...counts].sort(([, a], [, b]) => b - a).map(([club]) => club);
}

/** Quantities of the preview that a shot holds itself. */
type Shown = 'clubSpeed' | 'ballSpeed' | 'launchAngle' | 'spinRate' | 'carry';

function previewOf(shots: readonly MeasuredShot[], display: Display, words: Messages): ReadFile['preview'] {
  const shown = COLUMNS.filter(
    ({ name }) => name !== 'smashFactor' && shots.some((shot) => shot[name as Shown] !== undefined),
  );
  const line = words.page.quantities.line;
  return {
    columns: [
      { head: line },
      ...shown.map((each) => ({
        head: words.page.quantities[each.name as Shown],
        unit: shownBy(each, display).unit,
      })),
    ],
    rows: shots.slice(0, PREVIEW_ROWS).map((shot) => [
      { value: String(shot.line ?? '') },
      ...shown.map((each) => {
        const si = shot[each.name as Shown];
        const { of, decimals } = shownBy(each, display);
        if (typeof si !== 'number') return { value: '–' };
        return { value: decimals === 0 ? grouped(of(si)) : fixed(of(si), decimals) };
      }),
    ]),
  };
}

/** The first value of a column in its own unit, as a check on what it was read as. */
function sampleOf({ header, field, unit }: ShotTable['columns'][number], table: ShotTable): string {
  if (field === undefined) return (table.aside[0]?.[header] ?? '').slice(0, LONGEST_SAMPLE);
  if (field === 'smashFactor' || field === 'backspin' || field === 'sidespin') return '';
  const value = table.shots.find((shot) => shot[field] !== undefined)?.[field];
  if (typeof value !== 'number') return String(value ?? '').slice(0, LONGEST_SAMPLE);
  const read = IN_UNIT[unit ?? ''];
  return read === undefined ? '' : `${String(Number(read(value).toFixed(2)))} ${unit}`;
}

/** Readers of a number in SI, by the symbol of the unit. */
const IN_UNIT: Readonly<Record<string, (si: number) => number>> = {
  mph: (v) => toMph(v as Speed),
  'km/h': (v) => toKph(v as Speed),
  'm/s': (v) => v,
  yd: (v) => toYards(v as Length),
  ft: (v) => toFeet(v as Length),
  m: (v) => v,
  deg: (v) => toDegrees(v as Angle),
  rad: (v) => v,
  rpm: (v) => toRpm(v as AngularSpeed),
  'rad/s': (v) => v,
  s: (v) => v,
};

/** Letters of a cell that are shown. */
const LONGEST_SAMPLE = 24;
/** Lines in which a header is looked for. */
const FARTHEST_HEADER = 40;

/** The cells of the line that looks most like a header, for a file that the reader refused. */
function headersOf(text: string): ReadFile['columns'] {
  const lines = text.split(/\r?\n/, FARTHEST_HEADER).filter((line) => !line.startsWith('#'));
  const split = (line: string): string[] => {
    const separator = [';', '\t', ','].find((each) => line.includes(each)) ?? ',';
    return line.split(separator).map((cell) => cell.trim().replace(/^"|"$/g, ''));
  };
  const named = (cells: readonly string[]): number => cells.filter((cell) => /\p{L}/u.test(cell)).length;
  const rows = lines.map(split);
  const at = rows.reduce((best, cells, i) => (named(cells) > named(rows[best] ?? []) ? i : best), 0);
  return (rows[at] ?? []).flatMap((header, i) =>
    header === '' ? [] : [{ header, sample: (rows[at + 1]?.[i] ?? '').slice(0, LONGEST_SAMPLE) }],
  );
}
