import { parentPort, type TransferListItem, workerData } from 'node:worker_threads';
import { isFairflightError } from '../errors.js';
import { type Runner, runnerOf, type Task, type TaskReply, type TaskResult } from './task.js';
import type { ThreadData } from './threads.js';

const { job, pulse } = workerData as ThreadData;
let runner: Promise<Runner> | undefined;

/** What a worker thread does: computes a chunk and hands its memory over without copying it. */
parentPort?.on('message', async (task: Task) => {
  const reply = await replyTo(task);
  parentPort?.postMessage(reply, reply.fault === undefined ? buffersOf(reply.result) : []);
});

async function replyTo(task: Task): Promise<TaskReply> {
  try {
    runner ??= runnerOf(job, () => Atomics.add(pulse, 0, 1));
    return { result: ownMemory((await runner).run(task)) };
  } catch (error) {
    // An error loses its class on the way between threads; one that is not of this library ends the thread.
    if (!isFairflightError(error)) throw error;
    const { code, message, field, unit, range, hint } = error;
    // Not every value can travel.
    const value =
      typeof error.value === 'object' || typeof error.value === 'function' ? undefined : error.value;
    return { fault: { code, message, field, value, unit, range, hint } };
  }
}

function buffersOf(result: TaskResult): TransferListItem[] {
  const buffers =
    result.rows === undefined
      ? [result.encoded.bytes.buffer]
      : [...result.rows.values.map(({ buffer }) => buffer), result.rows.status.buffer];
  return buffers as TransferListItem[];
}

/** Bytes that share their memory with others are copied: only what is theirs alone can be handed over. */
function ownMemory(result: TaskResult): TaskResult {
  if (result.encoded === undefined) return result;
  const { bytes, warningCounts, note } = result.encoded;
  if (bytes.byteLength === bytes.buffer.byteLength) return result;
  return { encoded: { bytes: new Uint8Array(bytes), warningCounts, note } };
}
