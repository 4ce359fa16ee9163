import { describe, expect, it } from 'vitest';
import { fasterOrStraighter } from '../../src/dispersion/index.js';
import { drawnHoles, golfer, streams } from './flown/holes.js';
import { flownOn, judged } from './flown/judge.js';

// `npm run flown` does the same with 200,000 shots on all thirteen holes.
describe('what is said about a hole, flown with other draws', () => {
  it.each([...streams.slice(0, 2), ...drawnHoles(10).slice(6, 7)])(
    'holds on $name',
    { timeout: 180_000 },
    ({ hole }) => {
      const answer = fasterOrStraighter({ ...golfer, hole }, {}, { seed: 1, shots: 256 });
      const rows = judged(answer, flownOn(hole, 4000));
      expect(rows.length).toBeGreaterThan(3);
      expect(rows.filter(({ agrees }) => !agrees)).toEqual([]);
    },
  );
});
