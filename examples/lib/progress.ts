import { Presets, SingleBar } from 'cli-progress';

/** Reports work that may take long. */
export interface Progress {
  readonly tick: (done: number) => void;
  readonly stop: () => void;
}

/** Milliseconds before a bar appears. */
const PATIENCE = 1000;

/**
 * A bar on the error stream that appears only when the work has taken over a second and someone is watching. Work that
 * is known to take longer in one piece shows it at once with a patience of 0.
 */
export function progress(total: number, what: string, patience: number = PATIENCE): Progress {
  const start = Date.now();
  let bar: SingleBar | undefined;
  return {
    tick: (done) => {
      if (bar === undefined && process.stderr.isTTY && Date.now() - start >= patience) {
        const format = `${what} {bar} {percentage} %, {eta} s left`;
        bar = new SingleBar(
          { format, stream: process.stderr, clearOnComplete: true },
          Presets.shades_classic,
        );
        bar.start(total, done);
      }
      bar?.update(done);
    },
    stop: () => bar?.stop(),
  };
}

/** Does work under a bar, which goes away however the work ends. */
export function watched<T>(total: number, what: string, work: (bar: Progress) => T, patience?: number): T {
  const bar = progress(total, what, patience);
  try {
    return work(bar);
  } finally {
    bar.stop();
  }
}

/** The part of a bar `from` one place `to` another, for work that counts its own steps up to `total`. */
export function partOf({ tick, stop }: Progress, from: number, to: number, total: number): Progress {
  return { tick: (done) => tick(from + ((to - from) * done) / total), stop };
}
