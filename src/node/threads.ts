import { Worker } from 'node:worker_threads';
import { describe } from '../errors.js';
import { refusal } from '../inputs/refuse.js';
import { type Job, resultOf, type Task, type TaskReply, type TaskResult } from './task.js';

/** What a thread is given when it starts. @internal */
export interface ThreadData {
  readonly job: Job;
  /** Its pulse: a number that changes with every block of rows. */
  readonly pulse: Int32Array;
}

/** Threads that compute the tasks of one job. @internal */
export interface Threads {
  readonly run: (task: Task) => Promise<TaskResult>;
  readonly close: () => Promise<void>;
}

interface Waiting {
  readonly task: Task;
  readonly resolve: (result: TaskResult) => void;
  readonly reject: (error: unknown) => void;
}

interface Thread {
  readonly worker: Worker;
  readonly pulse: Int32Array;
  current: Waiting | undefined;
  seen: number;
  still: number;
}

/** How often a pulse is felt within the time after which a thread is given up. */
const LOOKS = 20;

/**
 * Starts threads. When one exits, fails or stands still, all of them are ended, and every task ends in a typed error.
 * @param stallAfter - time without a block of rows after which a busy thread is given up [s]
 * @internal
 */
export function openThreads(job: Job, count: number, stallAfter: number): Threads {
  const queue: Waiting[] = [];
  const threads: Thread[] = [];
  let ended: Error | undefined;

  const end = async (error: Error): Promise<void> => {
    if (ended !== undefined) return;
    ended = error;
    clearInterval(watch);
    for (const { reject } of [...threads.flatMap(({ current }) => current ?? []), ...queue]) reject(error);
    await Promise.all(threads.map(({ worker }) => worker.terminate()));
  };
  const next = (thread: Thread): void => {
    thread.current = queue.shift();
    thread.still = 0;
    if (thread.current !== undefined) thread.worker.postMessage(thread.current.task);
  };
  // Looks are counted, not seconds: a process that was suspended has not stood still.
  const watch = setInterval(
    () => {
      for (const thread of threads) {
        const pulse = Atomics.load(thread.pulse, 0);
        thread.still = thread.current === undefined || pulse !== thread.seen ? 0 : thread.still + 1;
        thread.seen = pulse;
        if (thread.still >= LOOKS) {
          void end(
            refuseThread(
              `has finished no rows for ${stallAfter} s`,
              'raise options.stallAfter if it is only slow, or',
            ),
          );
        }
      }
    },
    (stallAfter * 1000) / LOOKS,
  );

  for (let i = 0; i < count; i++) {
    const pulse = new Int32Array(new SharedArrayBuffer(4));
    const workerData: ThreadData = { job, pulse };
    const worker = new Worker(new URL('./node-worker.js', import.meta.url), { workerData });
    const thread: Thread = { worker, pulse, current: undefined, seen: 0, still: 0 };
    worker.on('message', (reply: TaskReply) => {
      const { current } = thread;
      next(thread);
      try {
        current?.resolve(resultOf(reply));
      } catch (error) {
        current?.reject(error);
      }
    });
    worker.on('error', (error: unknown) => {
      const reason = error instanceof Error ? error.message : describe(error);
      void end(refuseThread(`failed: ${reason}`));
    });
    worker.on('exit', (code) => void end(refuseThread(`ended by itself, with exit code ${code}`)));
    threads.push(thread);
  }

  return {
    run: (task) =>
      new Promise((resolve, reject) => {
        if (ended !== undefined) {
          reject(ended);
          return;
        }
        queue.push({ task, resolve, reject });
        const idle = threads.find(({ current }) => current === undefined);
        if (idle !== undefined) next(idle);
      }),
    close: () => end(refuseThread('was closed')),
  };
}

function refuseThread(what: string, before = ''): Error {
  return refusal(
    'options.workers',
    `a worker thread ${what}`,
    {
      hint: `${before} look at the coefficient model of options.modelFrom, if there is one; an unfinished file can be resumed with resume: true`.trim(),
    },
    'system',
  );
}
