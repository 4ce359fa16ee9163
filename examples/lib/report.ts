import { join, relative } from 'node:path';
import { type Given, type Option, oneOf, UsageError, writeFiles } from './command.js';
import { type Display, displays } from './display.js';

/** Names of {@link reportOptions}. */
export type ReportOption = 'out' | 'json' | 'units';

/** Options by which every example is told where to write and how to speak. */
export function reportOptions(folder: string): Readonly<Record<ReportOption, Option>> {
  return {
    out: {
      type: 'string',
      value: 'DIR',
      help: `folder for what is written (default ${join('out', folder)})`,
    },
    json: { type: 'boolean', help: 'print JSON instead of tables' },
    units: {
      type: 'string',
      value: 'NAME',
      help: 'imperial (mph, yd, ft) or metric (km/h, m); default imperial',
    },
  };
}

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
export function fileFrom({ files }: Pick<Given<never>, 'files'>, bundled: string): string {
  if (files.length > 1) throw new UsageError(`one file at a time; got ${files.join(', ')}`);
  return files[0] ?? bundled;
}

/** @throws UsageError when a file is given to an example that reads none */
export function noFile({ files }: Pick<Given<never>, 'files'>): void {
  if (files.length > 0) throw new UsageError(`no file is read; got ${files.join(', ')}`);
}

/** Folder to write into. */
export function folderFrom(given: Pick<Given<'out'>, 'text'>, byDefault: string): string {
  return given.text('out') ?? join('out', byDefault);
}

/** What an example has to say, in its three forms. */
export interface Report {
  /** Folder to write into unless --out names another. */
  readonly folder: string;
  /** Name of both files, without their endings. */
  readonly name: string;
  /** HTML. */
  readonly page: string;
  readonly record: unknown;
  /** For the terminal, ending with a line break. */
  readonly text: string;
  /** Files written before, named with the others. */
  readonly before?: readonly string[];
}

/** Writes page and JSON, and prints the text or, when asked for, the JSON. */
export function deliver(given: Pick<Given<'out' | 'json'>, 'text' | 'flag'>, report: Report): void {
  const { folder, name, page, record, text, before = [] } = report;
  const json = `${JSON.stringify(record, null, 2)}\n`;
  const paths = writeFiles(folderFrom(given, folder), { [`${name}.html`]: page, [`${name}.json`]: json });
  const written = [...before, ...paths].map((path) => relative('.', path) || path).join(', ');
  process.stdout.write(given.flag('json') ? json : `${text}\nWritten: ${written}\n`);
}
