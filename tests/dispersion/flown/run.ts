/**
 * Does the answer of fasterOrStraighter hold when it is flown? Prints every clear statement beside strokes flown with
 * other draws, on holes with a stream across the fairway and on ten drawn ones.
 *
 * `npm run flown` flies 200,000 shots each; `-- --shots N`, `-- --holes FROM-TO`.
 */
import { parseArgs } from 'node:util';
import { fasterOrStraighter } from '../../../src/dispersion/index.js';
import { drawnHoles, golfer, streams } from './holes.js';
import { flownOn, judged } from './judge.js';

const { values } = parseArgs({
  options: {
    shots: { type: 'string', default: '200000' },
    holes: { type: 'string', default: '1-13' },
  },
});
const [from = 1, to = 13] = values.holes.split('-').map(Number);
let wrong = 0;
for (const { name, hole } of [...streams, ...drawnHoles(10)].slice(from - 1, to)) {
  console.log(`\n${name}`);
  const answer = fasterOrStraighter({ ...golfer, hole }, {}, { seed: 1 });
  for (const row of judged(answer, flownOn(hole, Number(values.shots)))) {
    if (!row.agrees) wrong++;
    console.log(`${row.agrees ? '  ' : 'X '}${row.what}: ${row.reported}; flown ${row.flown}`);
  }
}
console.log(`\n${wrong} disagree`);
process.exitCode = wrong === 0 ? 0 : 1;
