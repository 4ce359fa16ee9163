import type { CompiledLaw } from '../../aerodynamics/compiled-law.js';
import { refuseType } from '../../inputs/refuse.js';
import type { FlightProblem } from '../problem.js';
import {
  type CompiledEnd,
  compiledEnd,
  type KernelFrame,
  kernelFrame,
  packKernel,
  setFrame,
  toEnd,
} from './frame.js';
import { BATCH_RESULTS, PARAMETERS } from './kernel.generated.js';
import { LANDED, TIME_LIMIT } from './step-decisions.js';
import { APEX_RESTEP_BELOW, VELOCITY_TOLERANCE_PER_METRE } from './tolerance.js';

/** What src/wasm/batch.ts exports. @internal */
export interface BatchExports {
  readonly memory: { readonly buffer: ArrayBuffer };
  readonly spinTable: () => number;
  readonly reynoldsTable: () => number;
  readonly inputs: () => number;
  readonly results: () => number;
  readonly chunk: () => number;
  readonly configure: (
    timeLimit: number,
    perTolerance: number,
    restepApex: number,
    acrossOnly: number,
    sLow: number,
    sHigh: number,
    rLow: number,
    rHigh: number,
    reynoldsForm: number,
  ) => void;
  readonly run: (count: number) => void;
}

/**
 * The batch kernel in WebAssembly SIMD, made by `loadBatchKernel` of `fairflight/batch` and passed to
 * {@link flyMany}. It has memory of its own, so one kernel serves one thread.
 */
export interface BatchKernel {
  /** What it is, for reports. */
  readonly name: string;
  /** @internal */
  readonly exports: BatchExports;
  /** Room for the frames of a chunk of flights. @internal */
  readonly frames: readonly KernelFrame[];
}

/** Makes the kernel of what was instantiated. @internal */
export function batchKernel(exports: BatchExports): BatchKernel {
  const kernel: BatchKernel = Object.freeze({
    name: 'WebAssembly SIMD',
    exports,
    frames: Array.from({ length: exports.chunk() }, kernelFrame),
  });
  KERNELS.add(kernel);
  return kernel;
}

/**
 * Reads a kernel a caller passes.
 * @throws FairflightError `invalid-input` for anything else, a promise of one included
 * @internal
 */
export function readKernel(value: unknown, path: string): BatchKernel {
  if (!KERNELS.has(value as object)) throw refuseType(path, 'a kernel of loadBatchKernel', value);
  return value as BatchKernel;
}

/** The kernels made here: what a caller passes must be one of them. */
const KERNELS = new WeakSet<object>();

/** Numbers the batch gives back for a flight: the plain kernel's up to the work done, then how it ended. */
const RESULTS = BATCH_RESULTS + 1;

/** Called with a row and its flight, or without one where the general engine must fly it. */
type Keep = (row: number, flight: CompiledEnd | undefined) => void;

/** Flies rows 0 to `count` − 1; `write` fills `problem` with a row. @internal */
export function flyBatch(
  { exports, frames }: BatchKernel,
  law: CompiledLaw,
  problem: FlightProblem,
  count: number,
  tolerance: number,
  timeLimit: number,
  write: (row: number) => void,
  keep: Keep,
): void {
  const memory = new Float64Array(exports.memory.buffer);
  memory.set(law.spinTable, exports.spinTable() / 8);
  memory.set(law.reynoldsTable, exports.reynoldsTable() / 8);
  exports.configure(
    timeLimit,
    1 / (tolerance * VELOCITY_TOLERANCE_PER_METRE),
    tolerance < APEX_RESTEP_BELOW ? 1 : 0,
    problem.model.spinEntering === 'across' ? 1 : 0,
    law.spinCells.low,
    law.spinCells.high,
    law.reynoldsCells.low,
    law.reynoldsCells.high,
    law.reynoldsForm,
  );
  const inputs = exports.inputs() / 8;
  const results = exports.results() / 8;
  const chunk = exports.chunk();
  const rows = new Int32Array(chunk);
  const p = new Float64Array(PARAMETERS);
  const flight = compiledEnd();
  for (let row = 0; row < count; ) {
    let filled = 0;
    for (; filled < chunk && row < count; row++) {
      const frame = frames[filled]!;
      write(row);
      setFrame(frame, problem, law);
      if (packKernel(problem, law, frame, tolerance, timeLimit, p)) {
        memory.set(p, inputs + filled * PARAMETERS);
        rows[filled++] = row;
      } else keep(row, undefined);
    }
    exports.run(filled);
    for (let i = 0; i < filled; i++) {
      const at = results + i * RESULTS;
      const status = memory[at + RESULTS - 1]!;
      if (status !== LANDED && status !== TIME_LIMIT) {
        write(rows[i]!);
        keep(rows[i]!, undefined);
        continue;
      }
      flight.ending = status === LANDED ? 'landed' : 'time-limit';
      toEnd(frames[i]!, memory, at, flight);
      keep(rows[i]!, flight);
    }
  }
}
