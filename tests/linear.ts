import { expect } from 'vitest';

/** Longer input against shorter, and most times the time it may take: 2.5 for each doubling. Quadratic is 4. */
const STEPS = [
  // From short to long by fours, so that what is quadratic fails before it takes minutes.
  { length: 2 ** 13, longer: 2 ** 15, most: 2.5 ** 2 },
  { length: 2 ** 15, longer: 2 ** 17, most: 2.5 ** 2 },
  { length: 2 ** 17, longer: 2 ** 19, most: 2.5 ** 2 },
  { length: 2 ** 19, longer: 2 ** 20, most: 2.5 },
] as const;
/** Shorter times than this tell nothing [ms]. */
const WORTH_JUDGING = 20;
/** Pairs of runs before a case is given up. */
const MOST_PAIRS = 12;

/** Processor time of this process, which other programs on the machine do not lengthen [ms]. */
function timeOf(run: () => unknown, times: number): number {
  const start = process.cpuUsage();
  for (let k = 0; k < times; k++) {
    try {
      run();
    } catch {
      // A refusal must come as quickly as an answer.
    }
  }
  const { user, system } = process.cpuUsage(start);
  return (user + system) / 1000;
}

/**
 * Expects a reader to take time in proportion to the length of its input, up to a million characters. The long input
 * stands against the short one read as often as it takes to make up the same length, so that both leave as much
 * garbage; of several such pairs the shortest times count, since a busy machine only ever lengthens one.
 * @param run - makes the input of a length, and the reading of it
 */
export function expectLinear(run: (length: number) => () => unknown): void {
  for (const { length, longer, most } of STEPS) {
    const [short, long] = [run(length), run(longer)];
    const parts = longer / length;
    let [once, more] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
    for (let pair = 0; pair < MOST_PAIRS; pair++) {
      more = Math.min(more, timeOf(long, 1));
      if (more < WORTH_JUDGING) break;
      once = Math.min(once, timeOf(short, parts) / parts);
      if (more < most * once) break;
    }
    const times = more < WORTH_JUDGING ? 0 : more / once;
    expect(times, `times as long for ${longer} characters as for ${length}`).toBeLessThan(most);
  }
}
