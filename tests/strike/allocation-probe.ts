/**
 * Prints the bytes of heap that a strike takes, as JSON by kind of head. Run with --expose-gc and a young generation so
 * large that nothing is collected in between.
 */
import { balls } from '../../src/ball/index.js';
import { clubheads } from '../../src/clubhead/index.js';
import { squareStrike } from '../../src/strike/impact.js';
import { createStriker } from '../../src/strike/striker.js';

/** So many that what a compiler at work on another thread leaves on the heap does not count. */
const STRIKES = 1_000_000;

function bytesPerStrike(name: keyof typeof clubheads): number {
  const striker = createStriker({ clubhead: clubheads[name], ball: balls.conforming });
  const input = squareStrike(45.5, 0.01, 0.3);
  const run = (): void => {
    for (let i = 0; i < STRIKES; i++) {
      input.toe = 0.02 * Math.sin(i);
      input.high = 0.01 * Math.cos(i);
      if (typeof striker.strike(input) === 'string') throw new Error('no strike');
    }
  };
  run();
  globalThis.gc?.();
  const before = process.memoryUsage().heapUsed;
  run();
  return (process.memoryUsage().heapUsed - before) / STRIKES;
}

console.log(JSON.stringify({ constant: bytesPerStrike('driver'), oblique: bytesPerStrike('midIron') }));
