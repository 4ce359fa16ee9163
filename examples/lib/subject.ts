import { basename, extname } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { ShotTable } from 'fairflight/schema';
import type { Given } from './command.js';

/** A file of invented shots that a program works on when it is given none. */
export interface Demo {
  readonly path: string;
  readonly player: string;
}

/** A file of shots, and whose they are as far as that is known without reading it. */
export interface ShotFile {
  readonly path: string;
  readonly player: string | undefined;
}

/** Bundled data, which lie in a folder beside the programs. */
export function demo(name: string, player: string, programs: string): Demo {
  return { path: fileURLToPath(new URL(`data/${name}`, programs)), player };
}

/** Whose shots a report is about, and of which day. */
export interface Subject {
  readonly who: string;
  readonly date: string;
}

/** A header, or the start of a line above the table, that stands for a player. */
const PLAYER = /^(?:player|golfer|player'?s? name|name)$/iu;

/** The player and the day of the shots: as typed, as the file says, or else by the name of the file and as of today. */
export function subjectOf(
  given: Pick<Given<'player'>, 'text'>,
  file: ShotFile,
  table: Pick<ShotTable, 'shots' | 'aside' | 'comments'>,
): Subject {
  const who = given.text('player') ?? file.player ?? playerIn(table);
  const days = table.shots.flatMap(({ date }) => date?.match(/^\d{4}-\d\d-\d\d/u) ?? []).sort();
  return { who: who ?? basename(file.path, extname(file.path)), date: days.at(-1) ?? today() };
}

/** The one player that a file names; undefined for none and for several. */
function playerIn({ aside, comments }: Pick<ShotTable, 'aside' | 'comments'>): string | undefined {
  const above = comments.flatMap((line) => {
    const [, word = '', name = ''] = /^([^:,;=]*)[:,;=]\s*(.+)$/u.exec(line) ?? [];
    return PLAYER.test(word.trim()) ? [name.trim()] : [];
  });
  const beside = aside.flatMap((row) =>
    Object.entries(row).flatMap(([header, text]) => (PLAYER.test(header.trim()) ? [text.trim()] : [])),
  );
  const names = new Set([...above, ...beside].filter((name) => name !== ''));
  return names.size === 1 ? [...names][0] : undefined;
}

/** Today where the program runs, as YYYY-MM-DD. */
export function today(): string {
  const now = new Date();
  const two = (value: number): string => String(value).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

/** Longest part of a file name that stands for one word or name. */
const LONGEST = 60;

/** Words as a part of a file name: letters and digits of any script, without accents, joined by hyphens. */
export function inFileName(text: string): string {
  const plain = text.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase();
  const joined = plain.replace(/[^\p{L}\p{N}]+/gu, '-').replace(/^-|-$/gu, '');
  return [...joined].slice(0, LONGEST).join('').replace(/-$/u, '');
}
