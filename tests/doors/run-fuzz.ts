/**
 * `npm run fuzz -- --calls 1000000 --seed 1 --from 0`: calls every public function with arguments spoilt here and there.
 * Ends with 1 when something other than a result or a typed refusal came of it.
 */
import { parseArgs } from 'node:util';
import { FAULTS, fuzzCall } from './fuzz/calls.js';

/** Faults that are printed; the rest are counted. */
const MOST_TOLD = 20;

const { values } = parseArgs({
  options: {
    calls: { type: 'string', default: '1000000' },
    seed: { type: 'string', default: '1' },
    from: { type: 'string', default: '0' },
  },
});
const [calls, seed, from] = [values.calls, values.seed, values.from].map((text) => {
  const number = Number(text);
  if (!Number.isSafeInteger(number) || number < 0) throw new Error(`${text} is not a whole number from 0 up`);
  return number;
}) as [number, number, number];

const counts = new Map<string, number>(FAULTS.map((kind) => [kind, 0]));
let refusals = 0;
let told = 0;
let said = performance.now();
const start = said;
for (let k = from; k < calls; k++) {
  const { door, changes, refused, faults } = await fuzzCall(seed, k);
  if (refused) refusals++;
  for (const [kind, what] of faults) {
    counts.set(kind, (counts.get(kind) ?? 0) + 1);
    if (told++ < MOST_TOLD) {
      console.log(
        `seed ${seed}, call ${k}, ${door}: ${kind}: ${what}\n    ${changes.join('; ') || 'nothing changed'}`,
      );
    }
  }
  if (performance.now() - said > 10_000) {
    said = performance.now();
    console.log(`${k + 1} of ${calls} calls; --seed ${seed} --from ${k + 1} goes on from here`);
  }
}
const seconds = (performance.now() - start) / 1000;
console.log(`\ncalls                  ${Math.max(calls - from, 0)} in ${seconds.toFixed(0)} s`);
console.log(`typed refusals         ${refusals}`);
for (const [kind, count] of counts) console.log(`${kind.padEnd(23)}${count}`);
// What a call left waiting must not keep the program.
process.exit([...counts.values()].some((count) => count > 0) ? 1 : 0);
