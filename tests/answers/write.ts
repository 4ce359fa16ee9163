/**
 * Writes record.json from the code and prints which answers moved, and by how much. With `--release` what has moved
 * becomes what is released.
 */
import { existsSync, writeFileSync } from 'node:fs';
import { RECORD_FILE, readRecord, rooms } from './answers.js';
import { type Difference, differences, recordOf } from './record.js';
import { answersOf } from './room.js';

const computed = answersOf(rooms);
const before = existsSync(RECORD_FILE) ? readRecord() : undefined;
const after = recordOf(before, computed, process.argv.includes('--release'));
for (const difference of before === undefined ? [] : differences(before, computed)) {
  console.log(line(difference));
}
writeFileSync(RECORD_FILE, `${JSON.stringify(after, undefined, 2)}\n`);
const moved = Object.keys(after.moved).length;
console.log(`${computed.size} answers recorded, ${moved} of them moved since the last release.`);

function line({ id, recorded, computed: now }: Difference): string {
  if (recorded === undefined) return `${id}  new, ${now}`;
  if (now === undefined) return `${id}  gone, was ${recorded}`;
  const by = recorded === 0 ? '' : `, ${((now / recorded - 1) * 100).toPrecision(3)} %`;
  return `${id}  ${recorded} -> ${now}${by}`;
}
