import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { attempt, KINDS, openBench, type Verdict } from './tries.js';

/**
 * `npm run faults -- --tries 200 --seed 1`: kills processes that write a sweep's file, breaks the disk under them, damages
 * what they leave, and lets two write at once, all by a seed. Ends with 1 when a file was not the same in the end, byte for
 * byte, or an error was not typed. `--try N` makes one try.
 */
const { values } = parseArgs({
  options: {
    tries: { type: 'string', default: '200' },
    seed: { type: 'string', default: '1' },
    try: { type: 'string' },
  },
});
const seed = Number(values.seed);
const numbers =
  values.try === undefined ? Array.from({ length: Number(values.tries) }, (_, i) => i) : [Number(values.try)];

const folder = mkdtempSync(join(tmpdir(), 'fairflight-faults-'));
const bench = await openBench(folder);
const verdicts: Verdict[] = [];
for (const number of numbers) {
  const verdict = await attempt(bench, seed, number);
  verdicts.push(verdict);
  for (const wrong of verdict.wrong) console.error(`try ${number}, ${verdict.kind}: ${wrong}`);
}
const failed = verdicts.filter(({ wrong }) => wrong.length > 0).length;
for (const kind of KINDS) {
  const of = verdicts.filter((verdict) => verdict.kind === kind);
  const sum = (count: 'killed' | 'refused'): number =>
    of.reduce((total, verdict) => total + verdict[count], 0);
  console.log(`${kind}: ${of.length} tries, ${sum('killed')} killed, ${sum('refused')} refused in words`);
}
console.log(`${verdicts.length - failed} of ${verdicts.length} ended in the same bytes (seed ${seed})`);
if (failed === 0) rmSync(folder, { recursive: true });
process.exitCode = failed === 0 ? 0 : 1;
