import { isList, isReadable, isRecord } from '../errors.js';
import { readKernel } from '../flight/engine/batch.js';
import type { BatchKernel } from '../flight/index.js';
import { isTyped } from '../inputs/columns.js';
import { count, custom, type Declared, optional } from '../inputs/field.js';
import { frozen } from '../inputs/frozen.js';
import { readChoice, readList, readOptions } from '../inputs/read.js';
import { refusal, refuseType } from '../inputs/refuse.js';
import type { Scene } from '../scene/index.js';
import { rowWarnings } from '../warnings/bits.js';
import { type ColumnAbout, columnsField, type SweepAbout } from './about.js';
import type { Design } from './design.js';
import { type SweepPlan, sweepPlan } from './plan.js';
import { readSweep } from './request.js';
import { MOST_IN_MEMORY, requireRows } from './row-range.js';
import { type SweepBase, sweepBaseFields } from './setup.js';

/** Rows of a sweep, one array a column. */
export interface SweepRows {
  /** Columns, units, models, version, design and seed. */
  readonly about: SweepAbout;
  /** Index of the first row in the design. */
  readonly start: number;
  /** Number of rows here. */
  readonly count: number;
  /** Values in SI units, in the order of `about.columns`. See {@link RowStatus} for what is NaN. */
  readonly values: readonly Float64Array[];
  /** How each row ended: `rowStatuses[status[i]]`. */
  readonly status: Uint8Array;
  /** Rows here that raise each warning of `about.warnings`, in that order. */
  readonly warningCounts: readonly number[];
}

/** A whole sweep. */
export type SweepResult = SweepRows;

/** One piece of a sweep. */
export type SweepChunk = SweepRows;

/** How far a sweep has come. */
export interface SweepProgress {
  /** Rows computed. */
  readonly done: number;
  /** Rows of the whole sweep. */
  readonly total: number;
}

/** The part of an AbortSignal that a sweep looks at, between chunks. */
export interface AbortLike {
  /** True once the caller wants to stop. */
  readonly aborted: boolean;
  /** Why. */
  readonly reason?: unknown;
}

/** Options of {@link sweep}. */
export interface SweepOptions extends SweepBase {
  /** The WebAssembly kernel of `fairflight/batch`; without it the JavaScript engine flies. */
  readonly kernel?: BatchKernel | undefined;
}

/** How a sweep is cut into chunks. */
export interface ChunkControl {
  /** Rows a chunk, 1 to 2²⁴; default 8192. It changes no result. */
  readonly chunkSize?: number;
  /** Stops the sweep between chunks. */
  readonly signal?: AbortLike;
  /** Called after each chunk. */
  readonly onProgress?: (progress: SweepProgress) => void;
}

/** Options of {@link sweepChunks}. */
export interface ChunkOptions extends SweepOptions, ChunkControl {}

/** Rows a chunk when nothing is said. @internal */
export const DEFAULT_CHUNK = 8192;

/** Declaration of {@link ChunkControl}. @internal */
export const chunkControlFields: Declared<ChunkControl> = /* @__PURE__ */ frozen(() => ({
  chunkSize: optional(count(1, 2 ** 24, DEFAULT_CHUNK, 'rows a chunk')),
  signal: custom(readSignal, 'signal'),
  onProgress: custom(readFunction, 'progress'),
}));

/** Declaration of {@link SweepOptions}. @internal */
export const sweepOptionFields: Declared<SweepOptions> = /* @__PURE__ */ frozen(() => ({
  ...sweepBaseFields,
  kernel: custom(readKernel, 'batch kernel'),
}));

/** Declaration of {@link ChunkOptions}. @internal */
export const chunkOptionFields: Declared<ChunkOptions> = /* @__PURE__ */ frozen(() => ({
  ...sweepOptionFields,
  ...chunkControlFields,
}));

function readSignal(value: unknown, path: string): AbortLike {
  if (isReadable(value) && typeof value['aborted'] === 'boolean') return value as unknown as AbortLike;
  throw refuseType(path, 'an AbortSignal', value);
}

function readFunction(value: unknown, path: string): unknown {
  if (typeof value === 'function') return value;
  throw refuseType(path, 'a function', value);
}

/**
 * Computes every row of a design in one call.
 *
 * A row whose figures cannot be computed keeps its inputs, says why in `status`, and holds NaN in the outputs that are
 * missing. Row i depends on the design, its seed and i alone.
 * @param design - which inputs to visit
 * @param scene - air, wind, ground, turf, ball and coefficient model of every row, but for what the design varies
 * @param options - what stays the same, which outputs to compute, and the kernel, when there is one
 * @throws `FairflightError` `invalid-input` or `outside-range` for a design or options that make no sense; it names
 *   the factor and its allowed range
 * @example
 * sweep({ kind: 'sobol', count: 4096, factors: [{ name: 'launch.spinRate', from: rpm(1500), to: rpm(4000) }] },
 *   { turf: 'firm' }, { from: { ballSpeed: mph(150), launchAngle: degrees(12), spinRate: rpm(2500) } })
 */
export function sweep(design: Design, scene: Scene = {}, options: SweepOptions = {}): SweepResult {
  const read = readOptions(sweepOptionFields, options);
  const plan = sweepPlan(readSweep(design, scene, read), read.kernel);
  const { rows } = plan.about;
  requireRows(undefined, rows, MOST_IN_MEMORY);
  return chunkOf(plan, 0, rows);
}

/**
 * Computes a design in chunks, one at a time and only when the next is asked for, so that memory does not grow with the
 * number of rows. The chunks in order are the rows of {@link sweep}, bit for bit, for any chunk size.
 * @throws `FairflightError` as {@link sweep}, at the first chunk; `aborted` when the signal says so
 * @example for await (const chunk of sweepChunks(design, scene, { from })) total += chunk.count;
 */
export async function* sweepChunks(
  design: Design,
  scene: Scene = {},
  options: ChunkOptions = {},
): AsyncGenerator<SweepChunk, void, undefined> {
  const read = readOptions(chunkOptionFields, options);
  const { chunkSize = DEFAULT_CHUNK, signal, onProgress } = read;
  const plan = sweepPlan(readSweep(design, scene, read), read.kernel);
  const total = plan.about.rows;
  for (let start = 0; start < total; ) {
    requireNotAborted(signal);
    const chunk = chunkOf(plan, start, Math.min(chunkSize, total - start));
    start += chunk.count;
    onProgress?.({ done: start, total });
    yield chunk;
    // Lets timers and events run between chunks, so that a signal can arrive.
    await new Promise<void>((resume) => setTimeout(resume, 0));
  }
}

/** The values of one column. @throws `FairflightError` `invalid-input` when there is no such column */
export function columnOf(rows: SweepRows, name: string): Float64Array {
  const about: unknown = isRecord(rows) ? rows.about : undefined;
  const values: unknown = isRecord(rows) ? rows.values : undefined;
  if (!isRecord(about) || !isList(values)) throw refuseType('rows', 'rows of a sweep', rows);
  const columns = readList(columnsField, about['columns'], 'rows.about.columns') as readonly ColumnAbout[];
  const names = columns.map((column) => column.name);
  const column = values[names.indexOf(readChoice(names, name, 'name'))];
  if (isTyped(column)) return column;
  throw refuseType(`rows.values[${names.indexOf(name)}]`, 'a Float64Array', column);
}

/** Rows computed at a time: few enough that the scratch of all stages stays in cache. */
const BLOCK = 2048;

/** Rows from `start` on, counted from the first of the sweep. @internal */
export function chunkOf(plan: SweepPlan, start: number, count: number): SweepChunk {
  const { about, first } = plan;
  if (count <= BLOCK) return { about, start: first + start, count, ...plan.evaluate(start, count) };
  const values = about.columns.map(() => new Float64Array(count));
  const status = new Uint8Array(count);
  const warningCounts = rowWarnings.map(() => 0);
  for (let at = 0; at < count; at += BLOCK) {
    const block = plan.evaluate(start + at, Math.min(BLOCK, count - at));
    block.values.forEach((column, j) => {
      values[j]?.set(column, at);
    });
    status.set(block.status, at);
    block.warningCounts.forEach((rows, k) => {
      (warningCounts[k] as number) += rows;
    });
  }
  return { about, start: first + start, count, values, status, warningCounts };
}

/** @throws `FairflightError` `aborted` @internal */
export function requireNotAborted(signal: AbortLike | undefined): void {
  if (signal?.aborted !== true) return;
  throw refusal('options.signal', 'the sweep was stopped by its signal', { value: signal.reason }, 'aborted');
}
