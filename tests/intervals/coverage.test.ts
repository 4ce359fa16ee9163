import { describe, expect, it } from 'vitest';
import { leastOf } from '../../docs/write/coverage-page.js';
import { studies } from './all.js';
import { tally } from './study.js';

/** Draws by call: what can be simulated in a few seconds. The rest is left to `npm run coverage:intervals`. */
const DRAWS: Readonly<Record<string, number>> = {
  summariseSession: 60,
  scatterTrend: 400,
  judgeTraining: 60,
  locateStrike: 120,
};

describe('intervals hold what they claim, as far as few draws tell', () => {
  for (const study of studies) {
    // Means are studied a hundred bands a draw.
    const draws = study.draws <= 100 ? 4 : (DRAWS[study.call] ?? 0);
    if (!study.stated || draws === 0) continue;
    it(`${study.call}: ${study.conditions}`, () => {
      for (const [figure, sum] of Object.entries(tally(study, 0, draws))) {
        const row = { study, figure, tally: sum };
        const least = leastOf(row);
        // Four standard errors of so few draws: sixty rows pass together.
        const slack = 4 * Math.sqrt((least * (1 - least)) / sum.count);
        expect(sum.covered / sum.count, figure).toBeGreaterThan(least - slack);
      }
    });
  }
});
