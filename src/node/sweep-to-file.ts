import { existsSync } from 'node:fs';
import { type FileHandle, rename, rm } from 'node:fs/promises';
import { choice, type Declared, flag, optional } from '../inputs/field.js';
import { frozen } from '../inputs/frozen.js';
import { readOptions } from '../inputs/read.js';
import { refusal } from '../inputs/refuse.js';
import type { Scene } from '../scene/index.js';
import type { Design, SweepAbout } from '../sweep/index.js';
import { readSweep } from '../sweep/request.js';
import { sweepBaseFields } from '../sweep/setup.js';
import { chunkControlFields } from '../sweep/sweep.js';
import type { PlacedChunk, SweepFormat } from './formats/format.js';
import { FORMATS, formatOf } from './formats/index.js';
import { chunkLine, recover, titleLine } from './journal.js';
import { openFile } from './open-file.js';
import { type ParallelOptions, type Run, startRun, threadControlFields } from './pool.js';
import type { EncodedResult } from './task.js';

/** Options of {@link sweepToFile}. */
export interface FileOptions extends Omit<ParallelOptions, 'start' | 'chunkSize'> {
  /**
   * Rows a chunk: a row group of Parquet, a record batch of Arrow; 1 to 2²⁴. Default a 64th of the rows, at least 8192
   * and at most 131,072. It changes no value.
   */
  readonly chunkSize?: number;
  /** Format; default what the ending of the path stands for: `.csv`, `.parquet`, `.arrow` or `.feather`. */
  readonly format?: SweepFormat;
  /** Resume an unfinished file of the same sweep, if there is one; default false. */
  readonly resume?: boolean;
  /** Replace what is at the path; default false. */
  readonly overwrite?: boolean;
}

/** What {@link sweepToFile} did. */
export interface SweepFileReport {
  /** Where the file is. */
  readonly path: string;
  /** Its format. */
  readonly format: SweepFormat;
  /** Rows in it. */
  readonly rows: number;
  /** Rows that were there already: 0 unless an unfinished file was resumed. */
  readonly resumedAt: number;
  /** Size [bytes]. */
  readonly bytes: number;
  /** What the file says of itself. */
  readonly about: SweepAbout;
}

/** Declaration of {@link FileOptions}. @internal */
export const fileOptionFields: Declared<FileOptions> = /* @__PURE__ */ frozen(() => {
  const { start: _, ...chunks } = chunkControlFields;
  return {
    ...sweepBaseFields,
    ...chunks,
    ...threadControlFields,
    format: optional(choice(Object.keys(FORMATS) as SweepFormat[], 'format')),
    resume: optional(flag('resume')),
    overwrite: optional(flag('overwrite')),
  };
});

/**
 * Sweeps a design into a CSV, Parquet or Arrow file, chunk by chunk, on worker threads. The file says of itself what a
 * paper needs to cite it: units, models, library version, design and seed. Missing values (see `RowStatus`) are
 * empty in CSV and NaN in the others; the last column, `status`, says why.
 *
 * While it is being written the file is called `path.partial`, with `path.journal` beside it, and takes its name when it
 * is whole: under that name there is never half a file. After a crash or an abort, the same call with `resume: true`
 * checks what is there, cuts off what is not whole, and goes on; the result is the same as in one go. Memory holds a
 * few chunks, and some ten kilobytes a chunk for the end of the file.
 * @throws `FairflightError` as `sweep`; `invalid-input` when something is in the way at the path, or the unfinished
 *   file is that of another sweep; `unsupported` when an optional package is missing; `aborted`
 */
export async function sweepToFile(
  path: string,
  design: Design,
  scene: Scene = {},
  options: FileOptions = {},
): Promise<SweepFileReport> {
  const control = readOptions(fileOptionFields, options);
  const format = formatOf(path, control.format);
  const run = await startRun(readSweep(design, scene, control), control, format);
  const { about } = run;
  const report = { path, format, rows: about.rows, about };
  const paths: Paths = { final: path, partial: `${path}.partial`, journal: `${path}.journal` };

  // What is no file would be found out only when the sweep is done and takes its name.
  if (existsSync(path)) await sizeOf(path);
  if (control.resume === true && existsSync(path)) {
    const found = await FORMATS[format].about(path);
    if (found !== undefined && JSON.stringify(found) === JSON.stringify(about)) {
      // A crash between the two last steps, the new name and this one, left it.
      if (!existsSync(paths.partial)) await rm(paths.journal, { force: true });
      control.onProgress?.({ done: about.rows, total: about.rows });
      return { ...report, resumedAt: about.rows, bytes: await sizeOf(path) };
    }
  }
  requireFree(paths, control);
  const resumedAt = await write(paths, format, run, control.resume === true);
  return { ...report, resumedAt, bytes: await sizeOf(path) };
}

interface Paths {
  readonly final: string;
  readonly partial: string;
  readonly journal: string;
}

function requireFree({ final, partial }: Paths, { resume = false, overwrite = false }: FileOptions): void {
  if (overwrite) return;
  if (existsSync(final)) {
    const hint = 'pass overwrite: true, or another path';
    throw refusal('path', `${final} exists and is not this sweep, whole`, { value: final, hint });
  }
  if (existsSync(partial) && !resume) {
    const hint = 'pass resume: true to go on with it, or overwrite: true to begin again';
    throw refusal('path', `${partial} is an unfinished sweep`, { value: partial, hint });
  }
}

/** Writes the file and returns the number of rows that were there already. */
async function write(
  paths: Paths,
  format: SweepFormat,
  run: Run<EncodedResult>,
  resume: boolean,
): Promise<number> {
  const { about } = run;
  const encoder = await FORMATS[format].encoder(about);
  const head = encoder.head();
  const identity = JSON.stringify({ format, about });
  const found = resume ? await recover(paths.partial, paths.journal, identity, head) : undefined;
  const file = await openFile(paths.partial, found === undefined ? 'w' : 'r+');
  const journal = await openFile(paths.journal, found === undefined ? 'w' : 'r+');
  try {
    const chunks: PlacedChunk[] = [...(found?.chunks ?? [])];
    let length = found?.length ?? 0;
    let noted = found?.journalLength ?? 0;
    const append = async (bytes: Uint8Array): Promise<void> => {
      await writeAll(file, bytes, length);
      length += bytes.length;
    };
    const note = async (line: string): Promise<void> => {
      // A chunk is noted only when it is on the disk itself, not on its way there.
      await file.datasync();
      const bytes = Buffer.from(line);
      await writeAll(journal, bytes, noted);
      noted += bytes.length;
    };
    if (found === undefined) {
      await append(head);
      await note(titleLine(identity, head.length));
    } else {
      await file.truncate(length);
      await journal.truncate(noted);
    }
    const resumedAt = chunks.reduce((sum, { rows }) => sum + rows, 0);
    for await (const { encoded, count } of run.results(resumedAt)) {
      const offset = length;
      await append(encoded.bytes);
      await note(chunkLine(count, encoded));
      chunks.push({ offset, rows: count, note: encoded.note });
    }
    await append(encoder.tail(chunks, length));
    await file.sync();
    await rename(paths.partial, paths.final);
    await rm(paths.journal);
    return resumedAt;
  } finally {
    await file.close();
    await journal.close();
  }
}

async function writeAll(file: FileHandle, bytes: Uint8Array, position: number): Promise<void> {
  for (let done = 0; done < bytes.length; ) {
    done += (await file.write(bytes, done, bytes.length - done, position + done)).bytesWritten;
  }
}

async function sizeOf(path: string): Promise<number> {
  const file = await openFile(path, 'r');
  try {
    return (await file.stat()).size;
  } finally {
    await file.close();
  }
}

/** What {@link inspectSweepFile} found. */
export interface SweepFileState {
  /** Format of the file. */
  readonly format: SweepFormat;
  /** `whole`: it has its end. `cut-short`: it has not, and must not be used. */
  readonly state: 'whole' | 'cut-short';
  /** What the file says of itself; only when it is whole. */
  readonly about?: SweepAbout;
}

/**
 * Tells whether a file of {@link sweepToFile} is whole, and reads which sweep it holds.
 * @throws `FairflightError` `invalid-input` for an unknown ending or no file at the path, `unsupported` when the package that reads the
 *   format is missing (hyparquet, apache-arrow)
 */
export async function inspectSweepFile(path: string, format?: SweepFormat): Promise<SweepFileState> {
  const known = formatOf(path, format, 'format');
  await sizeOf(path);
  const about = await FORMATS[known].about(path);
  return about === undefined
    ? { format: known, state: 'cut-short' }
    : { format: known, state: 'whole', about };
}
