import { loadBatchKernel } from '../batch.js';
import { FairflightError } from '../errors.js';
import { refusal } from '../inputs/refuse.js';
import type { SweepAbout, SweepRows } from '../sweep/index.js';
import { type SweepPlan, sweepPlan } from '../sweep/plan.js';
import type { SweepRequest } from '../sweep/request.js';
import { chunkOf } from '../sweep/sweep.js';
import type { EncodedChunk, Encoder, SweepFormat } from './formats/format.js';
import { FORMATS } from './formats/index.js';
import { type ModelAddress, withModel } from './model-from.js';

/** What a thread must know of a sweep. Plain data. @internal */
export interface Job {
  readonly request: SweepRequest;
  readonly model: ModelAddress | undefined;
  /** True to fly with the WebAssembly kernel where the runtime has it. */
  readonly webAssembly: boolean;
  /** Chunks are wanted as bytes of this format; undefined: as columns. */
  readonly format: SweepFormat | undefined;
  /** What the sweep must turn out to be: a module may have changed since it was first imported. */
  readonly about?: SweepAbout;
}

/** Rows to compute. @internal */
export interface Task {
  readonly start: number;
  readonly count: number;
}

/** A chunk as columns. @internal */
export interface ColumnsResult {
  readonly rows: Omit<SweepRows, 'about'>;
  readonly encoded?: never;
}

/** A chunk as bytes of a file. @internal */
export interface EncodedResult {
  readonly encoded: EncodedChunk;
  readonly rows?: never;
}

/** @internal */
export type TaskResult = ColumnsResult | EncodedResult;

/** What comes back from a thread: a chunk, or the particulars of a library error. @internal */
export type TaskReply =
  | { readonly result: TaskResult; readonly fault?: never }
  | {
      readonly fault: Pick<
        FairflightError,
        'code' | 'message' | 'field' | 'value' | 'unit' | 'range' | 'hint'
      >;
    };

/** The chunk of a reply. @throws `FairflightError` the one that was thrown in the thread @internal */
export function resultOf(reply: TaskReply): TaskResult {
  if (reply.fault === undefined) return reply.result;
  const { code, message, ...details } = reply.fault;
  const given = Object.entries(details).filter(([, detail]) => detail !== undefined);
  throw new FairflightError(code, message, Object.fromEntries(given));
}

/** Computes tasks of one job. @internal */
export interface Runner {
  readonly about: SweepAbout;
  readonly run: (task: Task) => TaskResult;
}

/**
 * Checks a job and makes it ready.
 * @param beat - called before each block of rows
 * @throws `FairflightError`
 * @internal
 */
export async function runnerOf(job: Job, beat: () => void = () => undefined): Promise<Runner> {
  const { request, model, webAssembly, format } = job;
  const kernel = webAssembly ? await loadBatchKernel() : undefined;
  const { about, first, evaluate } = sweepPlan(await withModel(request, model), kernel);
  if (job.about !== undefined && JSON.stringify(job.about) !== JSON.stringify(about)) {
    throw refusal(
      'options.modelFrom',
      'the coefficient model of a worker thread is not that of the thread that called',
      {
        value: model?.url,
        hint: 'leave the module alone while it is in use, and let it export the same everywhere',
      },
    );
  }
  const plan: SweepPlan = {
    about,
    first,
    evaluate: (start, count) => {
      beat();
      return evaluate(start, count);
    },
  };
  const encoder: Encoder | undefined =
    format === undefined ? undefined : await FORMATS[format].encoder(about);
  return {
    about,
    run: ({ start, count }) => {
      const { about: _, ...rows } = chunkOf(plan, start, count);
      return encoder === undefined ? { rows } : { encoded: encoder.chunk({ about, ...rows }) };
    },
  };
}
