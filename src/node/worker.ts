import { Tinypool } from 'tinypool';
import { isFairflightError } from '../errors.js';
import { type Job, type Runner, runnerOf, type Task, type TaskReply, type TaskResult } from './task.js';

let runner: Promise<Runner> | undefined;

/** What a worker thread does: computes a chunk and hands its memory over without copying it. */
export default async function work(task: Task): Promise<unknown> {
  try {
    runner ??= runnerOf(Tinypool.workerData as Job);
    const result = ownMemory((await runner).run(task));
    const buffers =
      result.rows === undefined
        ? [result.encoded.bytes.buffer]
        : [...result.rows.values.map(({ buffer }) => buffer), result.rows.status.buffer];
    const reply: TaskReply = { result };
    return Tinypool.move({ [Tinypool.transferableSymbol]: buffers, [Tinypool.valueSymbol]: reply } as never);
  } catch (error) {
    // An error loses its class on the way between threads.
    if (!isFairflightError(error)) throw error;
    const { code, message, field, unit, range, hint } = error;
    // Not every value can travel.
    const value =
      typeof error.value === 'object' || typeof error.value === 'function' ? undefined : error.value;
    return { fault: { code, message, field, value, unit, range, hint } } satisfies TaskReply;
  }
}

/** Bytes that share their memory with others are copied: only what is theirs alone can be handed over. */
function ownMemory(result: TaskResult): TaskResult {
  if (result.encoded === undefined) return result;
  const { bytes, note } = result.encoded;
  if (bytes.byteLength === bytes.buffer.byteLength) return result;
  return { encoded: { bytes: new Uint8Array(bytes), note } };
}
