import { expect, it } from 'vitest';
import { scratchFolder } from '../support.js';
import { attempt, openBench } from './tries.js';

const folder = scratchFolder();
const TRIES = 20;

// `npm run faults` makes 200, and as many as one likes.
it(`${TRIES} kills, broken disks, damages and pairs of writers end in the same bytes or in words`, async () => {
  const bench = await openBench(folder);
  const verdicts = [];
  for (let number = 0; number < TRIES; number++) verdicts.push(await attempt(bench, 20261128, number));
  expect(verdicts.flatMap(({ wrong }) => wrong)).toEqual([]);
}, 600_000);
