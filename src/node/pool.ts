import { availableParallelism } from 'node:os';
import { count, type Declared, flag, optional, quantity, record } from '../inputs/field.js';
import { frozen } from '../inputs/frozen.js';
import { readOptions } from '../inputs/read.js';
import { refusal } from '../inputs/refuse.js';
import type { Scene } from '../scene/index.js';
import type { ChunkControl, Design, SweepAbout, SweepBase, SweepChunk } from '../sweep/index.js';
import { readSweep, type SweepRequest } from '../sweep/request.js';
import { sweepBaseFields } from '../sweep/setup.js';
import { chunkControlFields, DEFAULT_CHUNK, requireNotAborted } from '../sweep/sweep.js';
import type { Duration } from '../units/index.js';
import { SECONDS } from '../units/unit.js';
import type { SweepFormat } from './formats/format.js';
import { inOrder } from './in-order.js';
import { addressOf, type ModelModule, modelModuleFields, requireSendable } from './model-from.js';
import {
  type ColumnsResult,
  type EncodedResult,
  type Job,
  runnerOf,
  type Task,
  type TaskResult,
} from './task.js';
import { openThreads } from './threads.js';

/** How a sweep is spread over threads. */
export interface ThreadControl {
  /**
   * Worker threads, 0 to 256; default one a processor. 0 computes in the calling thread. It changes no result.
   */
  readonly workers?: number;
  /**
   * A worker thread that has finished no rows for so long is given up, with an error [s]: 1 to 86,400, default 60. By then
   * it is mostly a coefficient model of the user's own that does not return.
   */
  readonly stallAfter?: Duration;
  /** Fly with the WebAssembly kernel where the runtime has it, else in JavaScript; default true. */
  readonly webAssembly?: boolean;
  /** A coefficient model of the user's own, for the threads to import. */
  readonly modelFrom?: ModelModule;
}

/** Options of a sweep on worker threads. */
export interface ParallelOptions extends SweepBase, ChunkControl, ThreadControl {}

/** Declaration of {@link ThreadControl}. @internal */
export const threadControlFields: Declared<ThreadControl> = /* @__PURE__ */ frozen(() => ({
  workers: optional(count(0, 256, 2, 'worker threads')),
  stallAfter: optional(quantity(SECONDS, 1, 86_400, 60, 'patience with a thread')),
  webAssembly: optional(flag('WebAssembly')),
  modelFrom: optional(record(modelModuleFields, 'module of a model')),
}));

export const parallelOptionFields: Declared<ParallelOptions> = /* @__PURE__ */ frozen(() => ({
  ...sweepBaseFields,
  ...chunkControlFields,
  ...threadControlFields,
}));

/** Time a thread is given without rows when nothing is said [s]. */
const DEFAULT_PATIENCE = 60;

/** Chunks under way or waiting for each worker: one at work and one next. */
const AHEAD = 2;

/**
 * Computes a design in chunks on worker threads and yields the chunks in order: bit for bit the rows of a sweep on one
 * thread, for any number of workers and any chunk size. At most two chunks a worker exist at a time, so memory does not
 * grow with the number of rows. The threads end with the loop, also when it is left early.
 * @throws `FairflightError` as `sweep`, at the first chunk; `aborted` when the signal says so; `unsupported` for a
 *   coefficient model that is a function and has no `modelFrom`; `system` when a thread exits, fails or stands still
 */
export async function* sweepInParallel(
  design: Design,
  scene: Scene = {},
  options: ParallelOptions = {},
): AsyncGenerator<SweepChunk, void, undefined> {
  const read = readOptions(parallelOptionFields, options);
  const run = await startRun(readSweep(design, scene, read), read, undefined);
  for await (const { rows } of run.results(0)) {
    yield { about: run.about, ...rows };
  }
}

/** A sweep that is ready to be computed, in this thread or on others. @internal */
export interface Run<Result> {
  readonly about: SweepAbout;
  /** Chunks from a row on, in order, with progress reported and the signal watched. */
  readonly results: (start: number) => AsyncGenerator<Result & { readonly count: number }, void, undefined>;
}

/** Checks everything in this thread, so that a fault is thrown here and not in a worker. @internal */
export function startRun(
  request: SweepRequest,
  options: ChunkControl & ThreadControl,
  format: undefined,
): Promise<Run<ColumnsResult>>;
/** With a format the chunks come as bytes of that format, made where they were computed. @internal */
export function startRun(
  request: SweepRequest,
  options: ChunkControl & ThreadControl,
  format: SweepFormat,
): Promise<Run<EncodedResult>>;
export async function startRun(
  request: SweepRequest,
  options: ChunkControl & ThreadControl,
  format: SweepFormat | undefined,
): Promise<Run<TaskResult>> {
  const workers = options.workers ?? availableParallelism();
  const model = addressOf(options.modelFrom);
  if (model !== undefined && request.scene.aerodynamics !== undefined) {
    throw refusal('options.modelFrom', 'scene.aerodynamics and options.modelFrom are two models', {
      value: model.url,
    });
  }
  if (workers > 0 && model === undefined) requireSendable(request);
  const job: Job = {
    request,
    model,
    webAssembly: options.webAssembly ?? true,
    format,
  };
  const runner = await runnerOf(job);
  const total = runner.about.rows;
  const size = format === undefined ? (options.chunkSize ?? DEFAULT_CHUNK) : fileChunk(total);

  function* tasks(start: number): Generator<Task> {
    for (let at = start; at < total; at += size) yield { start: at, count: Math.min(size, total - at) };
  }

  async function* results(start: number): ReturnType<Run<TaskResult>['results']> {
    requireNotAborted(options.signal);
    const pool =
      workers > 0
        ? openThreads({ ...job, about: runner.about }, workers, options.stallAfter ?? DEFAULT_PATIENCE)
        : undefined;
    // In this thread a chunk is computed when it is asked for, after timers and events had their turn.
    const here = async (task: Task): Promise<TaskResult> => {
      await new Promise<void>((resume) => setImmediate(resume));
      return runner.run(task);
    };
    const queue = inOrder(tasks(start), pool?.run ?? here, pool === undefined ? 1 : AHEAD * workers);
    let done = start;
    try {
      for await (const result of queue) {
        requireNotAborted(options.signal);
        const count = Math.min(size, total - done);
        done += count;
        options.onProgress?.({ done, total });
        yield { ...result, count };
      }
    } finally {
      await pool?.close();
    }
  }

  return { about: runner.about, results };
}

/**
 * Rows a chunk of a file: more for more rows, so that the list of chunks that the end of the file needs stays short,
 * but never so many that a few of them fill the memory. A matter of the rows alone, so that the same sweep gives the
 * same file on any machine.
 */
function fileChunk(rows: number): number {
  return Math.min(2 ** 17, Math.max(DEFAULT_CHUNK, Math.ceil(rows / 64)));
}
