import { choice, type Declared, flag, optional } from '../inputs/field.js';
import { frozen } from '../inputs/frozen.js';
import { readOptions } from '../inputs/read.js';
import { refusal } from '../inputs/refuse.js';
import type { Scene } from '../scene/index.js';
import type { Design, SweepAbout } from '../sweep/index.js';
import { readSweep } from '../sweep/request.js';
import { sweepBaseFields } from '../sweep/setup.js';
import { chunkControlFields } from '../sweep/sweep.js';
import { sizeAt } from './disk.js';
import { type SweepFormat, type WarningCounts, warningsOf } from './formats/format.js';
import { FORMATS, formatOf } from './formats/index.js';
import { inspectSweepFile } from './inspect.js';
import { identityOf, type Recovered, recover } from './journal.js';
import { beginPartial, discard, type Partial, partialsOf, takeOver } from './partial.js';
import { type ParallelOptions, startRun, threadControlFields } from './pool.js';
import { openUnfinished } from './unfinished.js';

/** Options of {@link sweepToFile}. */
export interface FileOptions extends Omit<ParallelOptions, 'chunkSize'> {
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
  /** Rows that raise a warning, by its code; the file says so too. */
  readonly warnings: WarningCounts;
  /** What the file says of itself. */
  readonly about: SweepAbout;
}

/** Declaration of {@link FileOptions}. @internal */
export const fileOptionFields: Declared<FileOptions> = /* @__PURE__ */ frozen(() => {
  const { chunkSize: _, ...control } = chunkControlFields;
  return {
    ...sweepBaseFields,
    ...control,
    ...threadControlFields,
    format: optional(choice(Object.keys(FORMATS) as SweepFormat[], 'format')),
    resume: optional(flag('resume')),
    overwrite: optional(flag('overwrite')),
  };
});

/**
 * Sweeps a design into a CSV, Parquet or Arrow file, chunk by chunk, on worker threads. The same study gives the same
 * bytes, however it was computed. The file says of itself what a paper needs to cite it: units, models, library version,
 * design and seed. Missing values (see `RowStatus`) are empty in CSV and null in the others; the last column, `status`,
 * says why. docs/files.md tells how other programs read it.
 *
 * While it is being written the file lies in a folder `path.xxxxxxxx.partial`, and takes its name when it is whole: under
 * that name there is never half a file. After a crash or an abort, the same call with `resume: true` checks what is there
 * and goes on; the result is the same as in one go. Of two processes that write to one path, the one that came first stops
 * with an error, or both finish and one whole file stays. Memory holds a few chunks, and some ten kilobytes a chunk for
 * the end of the file.
 * @throws `FairflightError` as `sweep`, before anything is computed: `invalid-input` when nothing can be written at the path,
 *   something is in the way there, or the unfinished file is that of another sweep; `unsupported` when an optional package
 *   is missing. Later: `system` when the disk, a worker thread or another process gets in the way, with what to do about it;
 *   `aborted`
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
  const { rows } = about;
  const report = { path, format, rows, about };
  const identity = JSON.stringify({ format, about });

  const there = await sizeAt(path);
  const finished =
    there !== undefined && control.resume === true ? await finishedAs(path, format, about) : undefined;
  if (there !== undefined && finished !== undefined) {
    const left = await partialsOf(path);
    await discardAll(path, control.overwrite === true ? left : await ofStudy(left, identity));
    control.onProgress?.({ done: rows, total: rows });
    return { ...report, warnings: finished, resumedAt: rows, bytes: there };
  }
  const partials = await partialsOf(path);
  requireFree(path, there !== undefined, partials, control);
  const encoder = await FORMATS[format].encoder(about);
  const head = encoder.head();
  const { partial, found } = await placeFor(path, partials, control, identity, head);
  const file = await openUnfinished(path, partial, identity, head, found);
  try {
    for await (const { encoded, count } of run.results(file.resumedAt)) await file.append(encoded, count);
    const bytes = await file.finish(encoder.tail, control.overwrite === true);
    return { ...report, warnings: warningsOf(file.chunks), resumedAt: file.resumedAt, bytes };
  } finally {
    await file.close();
  }
}

/** The warnings of the file at the path when it is this sweep, whole. */
async function finishedAs(
  path: string,
  format: SweepFormat,
  about: SweepAbout,
): Promise<WarningCounts | undefined> {
  const found = await inspectSweepFile(path, format);
  return found.state === 'whole' && JSON.stringify(found.about) === JSON.stringify(about)
    ? found.warnings
    : undefined;
}

async function ofStudy(partials: readonly Partial[], identity: string): Promise<readonly Partial[]> {
  const known = await Promise.all(partials.map(({ journal }) => identityOf(journal)));
  return partials.filter((_, i) => known[i] === identity);
}

async function discardAll(path: string, partials: readonly Partial[]): Promise<void> {
  for (const partial of partials) await discard(path, partial);
}

function requireFree(
  path: string,
  taken: boolean,
  [partial]: readonly Partial[],
  { resume = false, overwrite = false }: FileOptions,
): void {
  if (overwrite) return;
  if (taken) {
    const hint = 'pass overwrite: true, or another path';
    throw refusal('path', `${path} exists and is not this sweep, whole`, { value: path, hint });
  }
  if (partial !== undefined && !resume) {
    const hint = 'pass resume: true to go on with it, or overwrite: true to begin again';
    throw refusal('path', `${partial.folder} is an unfinished sweep`, { value: partial.folder, hint });
  }
}

/** The unfinished file to write: one that can be gone on with, or a new one in the place of those that are there. */
async function placeFor(
  path: string,
  partials: readonly Partial[],
  { resume = false, overwrite = false }: FileOptions,
  identity: string,
  head: Uint8Array,
): Promise<{ readonly partial: Partial; readonly found: Recovered | undefined }> {
  const known = await Promise.all(partials.map(({ journal }) => identityOf(journal)));
  const foreign = known.findIndex((each) => each !== undefined && each !== identity);
  if (foreign >= 0 && !overwrite) {
    const folder = partials[foreign]?.folder;
    throw refusal(
      'path',
      `${folder} is an unfinished file of another sweep: design, scene, models, options or library version differ`,
      { value: folder, hint: 'pass overwrite: true, or another path' },
    );
  }
  let best: { readonly partial: Partial; readonly found: Recovered } | undefined;
  const rest: Partial[] = [];
  for (const [i, each] of partials.entries()) {
    if (!resume || known[i] !== identity) {
      rest.push(each);
      continue;
    }
    const partial = await takeOver(path, each);
    const found = await recover(partial.rows, partial.journal, head);
    if (found === undefined || found.length <= (best?.found.length ?? 0)) {
      rest.push(partial);
    } else {
      if (best !== undefined) rest.push(best.partial);
      best = { partial, found };
    }
  }
  const place = best ?? { partial: await beginPartial(path), found: undefined };
  await discardAll(path, rest);
  return place;
}
