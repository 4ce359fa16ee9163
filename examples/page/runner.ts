import type { Job, Told } from './protocol.js';

/** Runs one job after another in a worker; a new job ends the one before. */
export interface Runner {
  readonly run: (job: Job) => void;
  /** Ends the job that is running. */
  readonly stop: () => void;
  readonly busy: () => boolean;
}

/** A runner on a worker made of this code. `failed` is told when a calculation breaks. */
export function runnerOf(code: string, tell: (told: Told) => void, failed: () => void): Runner {
  const url = URL.createObjectURL(new Blob([code], { type: 'text/javascript' }));
  let running: number | undefined;
  let worker = started();

  function started(): Worker {
    const made = new Worker(url);
    made.onmessage = ({ data }: MessageEvent<Told>): void => {
      if (data.number !== running) return;
      if (data.kind === 'done') running = undefined;
      tell(data);
    };
    made.onerror = (event): void => {
      event.preventDefault();
      stop();
      failed();
    };
    return made;
  }

  function stop(): void {
    if (running === undefined) return;
    running = undefined;
    // A calculation under way hears no message: it is ended with its worker.
    worker.terminate();
    worker = started();
  }

  return {
    stop,
    busy: () => running !== undefined,
    run: (job) => {
      stop();
      running = job.number;
      worker.postMessage(job);
    },
  };
}
