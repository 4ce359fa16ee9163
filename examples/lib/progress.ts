import { Presets, SingleBar } from 'cli-progress';

/** Reports work that may take long. */
export interface Progress {
  readonly tick: (done: number) => void;
  readonly stop: () => void;
}

const PATIENCE = 1000;

/** A bar on the error stream that appears only when the work has taken over a second and someone is watching. */
export function progress(total: number, what: string): Progress {
  const start = Date.now();
  let bar: SingleBar | undefined;
  return {
    tick: (done) => {
      if (bar === undefined && process.stderr.isTTY && Date.now() - start > PATIENCE) {
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
