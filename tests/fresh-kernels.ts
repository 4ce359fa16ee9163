import { runScript, timesBelow } from './fresh-build.js';

/** Files written by `npm run generate`. */
const WRITTEN = 5;

/** Generates the kernels anew when what they are made of is newer, so that no test runs on yesterday's kernels. */
export default function setup(): void {
  const times = (generated: boolean): number[] =>
    ['src/flight/engine', 'src/wasm', 'src/numerics/tableaux'].flatMap((folder) =>
      timesBelow(folder, (name) => name.includes('.generated.') === generated),
    );
  const written = times(true);
  if (written.length < WRITTEN || Math.min(...written) < Math.max(...times(false))) runScript('generate');
}
