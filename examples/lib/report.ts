import { relative } from 'node:path';
import { type Given, type Option, oneOf, UsageError } from './command.js';
import { type Display, displays } from './display.js';
import { writeNamed } from './files.js';
import type { ProgramName } from './programs.js';
import { type Demo, inFileName, type ShotFile, type Subject } from './subject.js';
import { say, shownJson } from './terminal.js';

/** Names of {@link REPORT_OPTIONS}. */
export type ReportOption = 'out' | 'replace' | 'player' | 'full' | 'json' | 'units';

/** Options by which every program that writes a report is told where to write and how to speak. */
export const REPORT_OPTIONS: Readonly<Record<ReportOption, Option>> = {
  out: { type: 'string', value: 'DIR', help: 'folder for what is written (default the working folder)' },
  replace: {
    type: 'boolean',
    help: 'write over files of the same name; without it the new ones get a number',
  },
  player: {
    type: 'string',
    value: 'NAME',
    help: 'whose shots they are, for the names of the files (default from the file, else its name)',
  },
  full: { type: 'boolean', help: 'print the whole report, not only what matters most' },
  json: { type: 'boolean', help: 'print JSON instead of tables' },
  units: {
    type: 'string',
    value: 'NAME',
    help: 'imperial (mph, yd, ft) or metric (km/h, m); default imperial',
  },
};

/** Option of examples that read the shots of one club. */
export const CLUB_OPTION: Option = {
  type: 'string',
  value: 'NAME',
  help: 'which club, when the file holds several (as written in its club column)',
};

/** Option of examples that look for outliers. */
export const KEEP_OUTLIERS_OPTION: Option = {
  type: 'boolean',
  help: 'count outliers instead of leaving them out',
};

/** The units asked for. @throws UsageError for any but the two */
export function displayFrom(given: Pick<Given<'units'>, 'text'>): Display {
  return displays[oneOf('units', given.text('units') ?? 'imperial', ['imperial', 'metric'])];
}

/** The one file given, or the bundled data. @throws UsageError for several */
export function fileFrom({ files }: Pick<Given<never>, 'files'>, bundled: Demo): ShotFile {
  if (files.length > 1) throw new UsageError(`one file at a time; got ${files.join(', ')}`);
  const [path] = files;
  return path === undefined ? bundled : { path, player: undefined };
}

/** @throws UsageError when a file is given to a program that reads none */
export function noFile({ files }: Pick<Given<never>, 'files'>): void {
  if (files.length > 0) throw new UsageError(`no file is read; got ${files.join(', ')}`);
}

/** Folder to write into. */
export function folderFrom(given: Pick<Given<'out'>, 'text'>): string {
  return given.text('out') ?? '.';
}

/** What a program has to say, in its forms. */
export interface Report {
  readonly program: ProgramName;
  /** Whose shots and of which day; the files are named after them. */
  readonly subject: Subject;
  /** HTML. */
  readonly page: string;
  readonly record: unknown;
  /** What matters most, for one screen, and everything; both end with a line break. */
  readonly screen: string;
  readonly full: string;
  /** Files written before, named with the others. */
  readonly before?: readonly string[];
}

/** `ladder-imo-feldspar-2026-03-11`. */
export function fileName(program: ProgramName, { who, date }: Subject): string {
  return [program, inFileName(who), date].filter((part) => part !== '').join('-');
}

/** Writes page and JSON, and prints what was asked for: one screen, everything, or JSON. */
export function deliver(
  given: Pick<Given<'out' | 'json' | 'full' | 'replace'>, 'text' | 'flag'>,
  report: Report,
): void {
  const { program, subject, page, record, before = [] } = report;
  const json = shownJson(record);
  const contents = { '.html': page, '.json': json };
  const paths = writeNamed(folderFrom(given), fileName(program, subject), contents, given.flag('replace'));
  if (given.flag('json')) {
    say(json);
    return;
  }
  const written = [...before, ...paths].map((path) => relative('.', path) || path).join(', ');
  const rest = given.flag('full') ? '' : 'Everything is on the page, and printed with --full.\n';
  say(`${given.flag('full') ? report.full : report.screen}\n${rest}Written: ${written}\n`);
}
