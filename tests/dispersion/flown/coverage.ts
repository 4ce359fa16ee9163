/**
 * How often do the intervals of fasterOrStraighter hold what 200,000 shots come to? Asks by many seeds on two holes with
 * a stream across the fairway. `npm run flown:coverage`; `-- --seeds N --shots N`, and `--asked N` for
 * the shots of each answer.
 */
import { parseArgs } from 'node:util';
import { fasterOrStraighter } from '../../../src/dispersion/index.js';
import { mph, type Speed, si, toMph } from '../../../src/units/index.js';
import { golfer, streams } from './holes.js';
import { flownBreakEven, flownOn } from './judge.js';

const { values } = parseArgs({
  options: {
    seeds: { type: 'string', default: '200' },
    shots: { type: 'string', default: '200000' },
    asked: { type: 'string', default: '1024' },
  },
});

for (const { name, hole } of streams.slice(0, 2)) {
  console.log(`\n${name}`);
  const tally = new Map<string, { held: number; asked: number }>();
  const note = (what: string, holds: boolean): void => {
    const { held, asked } = tally.get(what) ?? { held: 0, asked: 0 };
    tally.set(what, { held: held + Number(holds), asked: asked + 1 });
  };
  const flown = flownOn(hole, Number(values.shots));
  const now = golfer.delivery.clubSpeed;
  const faster = si<Speed>(now + mph(1));
  const factorOf = (clubSpeed: Speed, factors: readonly number[]): number | undefined => {
    const found = flownBreakEven(clubSpeed, flown, factors);
    return found.kind === 'within' && found.factors.length === 1 ? found.factors[0]?.value : undefined;
  };
  const cancelling = factorOf(faster, [0.8, 1, 1.25]);
  for (let seed = 1; seed <= Number(values.seeds); seed++) {
    const answer = fasterOrStraighter({ ...golfer, hole }, {}, { seed, shots: Number(values.asked) });
    const { steps, locallyBest, breakEven } = answer;
    const within = ({ low, high }: { low: number; high: number }, value: number): boolean =>
      low <= value && value <= high;
    note('one mph faster', within(answer.oneMphFaster.interval, flown(faster, 1).value));
    note('10 % straighter', within(answer.tenPercentStraighter.interval, flown(now, 0.9).value));
    const truths = steps.map(({ clubSpeed }) => flown(clubSpeed, 1).value);
    steps.forEach(({ clubSpeed, change }, i) => {
      if (clubSpeed !== now) note('a speed against today', within(change.interval, truths[i] ?? 0));
    });
    const best = steps[truths.indexOf(Math.min(...truths))]?.clubSpeed ?? now;
    note(
      'best speed',
      locallyBest.some(({ mayBeBest, interval }) => mayBeBest && within(interval, best)),
    );
    const { cancellingOneMph: cancels } = answer;
    if (cancelling !== undefined && cancels.kind === 'within') {
      note(
        'factor that cancels one mph',
        cancels.factors.some((each) => within(each.interval, cancelling)),
      );
    }
    for (const each of breakEven) {
      if (each.clubSpeed === now || each.kind !== 'within') continue;
      const truth = factorOf(each.clubSpeed, [0.6, 1, 1.5, 2.2]);
      if (truth === undefined) continue;
      const what = `break-even factor at ${toMph(each.clubSpeed).toFixed(0)} mph`;
      note(
        what,
        each.factors.some((factor) => within(factor.interval, truth)),
      );
    }
  }
  for (const [what, { held, asked }] of tally) {
    console.log(`${what}: ${held} of ${asked}, ${((100 * held) / asked).toFixed(1)} %`);
  }
}
