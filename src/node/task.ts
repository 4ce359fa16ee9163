import { loadBatchKernel } from '../batch.js';
import { FairflightError } from '../errors.js';
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

/** Checks a job and makes it ready. @throws `FairflightError` @internal */
export async function runnerOf({ request, model, webAssembly, format }: Job): Promise<Runner> {
  const kernel = webAssembly ? await loadBatchKernel() : undefined;
  const plan: SweepPlan = sweepPlan(await withModel(request, model), kernel);
  const { about } = plan;
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
