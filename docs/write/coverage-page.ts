import type { Study, Tally } from '../../tests/intervals/study.js';

/** One figure of one study. */
export interface CoverageRow {
  readonly study: Study;
  readonly figure: string;
  readonly tally: Tally;
}

const LEVEL = 0.95;
/** Coverage that is asked for where 95 % is claimed and the assumptions hold. */
const LEAST = 0.935;

/** What a figure aims at. */
export function aimOf({ study, figure }: CoverageRow): number {
  return study.aims?.[figure] ?? LEVEL;
}

/** Share of answers that hold the truth. */
export function coverageOf({ tally }: CoverageRow): number {
  return tally.covered / tally.count;
}

/** The least coverage asked for: a point and a half below what is claimed. */
export function leastOf(row: CoverageRow): number {
  return aimOf(row) - (LEVEL - LEAST);
}

/** Whether a row holds where its assumptions do. */
export function keeps(row: CoverageRow): boolean {
  return coverageOf(row) >= leastOf(row);
}

const percent = (share: number): string => (100 * share).toFixed(1);

function line(row: CoverageRow): string {
  const { study, figure, tally } = row;
  const { width, oracle, said, judged, silent, count } = tally;
  const mark = study.stated && !keeps(row) ? ' **too few**' : '';
  const cells = [
    figure,
    study.conditions,
    percent(aimOf(row)).replace('.0', ''),
    `${percent(coverageOf(row))}${mark}`,
    oracle > 0 ? (width / oracle).toFixed(2) : '',
    judged > 0 ? `${percent(said / judged)} (${percent(silent / count)})` : '',
    String(count),
  ];
  return `| ${cells.join(' | ')} |`;
}

const HEAD = [
  '| figure | conditions | claims % | holds % | width | says so % (silent misses) | answers |',
  '| --- | --- | --: | --: | --: | --: | --: |',
];

function tables(rows: readonly CoverageRow[]): string[] {
  const calls = [...new Set(rows.map(({ study }) => study.call))];
  return calls.flatMap((call) => [
    `### ${call}`,
    [...HEAD, ...rows.filter(({ study }) => study.call === call).map(line)].join('\n'),
  ]);
}

/** The page, with the studies that have not been run. */
export function page(rows: readonly CoverageRow[], missing: readonly string[]): string {
  const stated = rows.filter(({ study }) => study.stated);
  const others = rows.filter(({ study }) => !study.stated);
  const below = stated.filter((row) => !keeps(row)).length;
  return `${[
    '# Statistics: do the intervals hold?',
    'Printed by `npm run coverage:intervals`. Players, devices and heads are invented; the truth is known, and each call is asked for it many times over, from a fixed seed (`tests/intervals`).',
    READING,
    '## Where the stated assumptions hold',
    `${stated.length} rows, ${below} of them below what is asked for.`,
    ...tables(stated),
    '## Where an assumption is broken',
    'Nothing is claimed here. The rows show what a broken assumption costs, and whether the answer says so.',
    ...tables(others),
    '## What has no row',
    [WITHOUT, ...missing.map((name) => `- Not run yet: ${name}.`)].join('\n'),
  ].join('\n\n')}\n`;
}

const READING = `- **claims** is what the interval is said to hold, **holds** what it held. 95 % asks for at least 93.5. For \`gainsToShow\`
  it is the chance to find the gain.
- **width** is the mean width over that of someone who knows the scatter and takes ±1.96 standard errors. With five shots,
  Student's t alone makes it 1.35.
- **says so**: how often the answer itself says that an assumption does not hold; in brackets the share of answers that neither
  hold nor say so.
- With 1,000 answers a share of 95 % is known to ±1.4 points, with 4,000 to ±0.7, with 400 to ±2.1. Dear calls
  rest on fewer answers; the last column says how many.
- \`disperse\` says how far another seed would move an answer; its truth is the average over 150 seeds. Its standard errors
  come from eight replicates, left out one at a time, so that 95 % is ±2.36 of them. The interval of a share of shots is
  Wilson's, for independent shots; evenly spread ones it makes wider than need be, since eight replicates tell
  little about a share near none or all.
- \`attributeChange\` and \`sobolIndicesOf\` resample 400 times here, to save time.
- \`sobolIndicesOf\` resamples rows as if they were drawn at random. They are evenly spread, so that its indices err less than it
  says, and its intervals hold more than 95 %.
- \`attributeChange\` leaves room for mishits not yet seen, in the whole change and in the shares of ball speed and spin axis.
  Where the player makes none, those intervals are wider than need be.
- \`judgeTraining\` takes days as independent unless it finds that they carry over, and with a dozen sessions it finds that
  once in two or three times. Where days do carry over and nothing is said, its intervals for 95 % hold less: sessions a week or
  more apart are the remedy, not another formula, since so few sessions can't tell form that lasts from a gain.`;

const WITHOUT = `- \`flight.carryBand\` and \`run.band\` say what the models leave open, not what chance does: docs/validation.md holds them
  against measured flights and runs.
- \`inferDynamicLoft\` and \`expectedStrokes\` return no interval, \`sd\` and \`robustSd\` of a session no error.
- \`fasterOrStraighter\` is held against 200,000 flown shots on thirteen holes by commands of its own, \`npm run flown\` and
  \`npm run flown:coverage\`.`;
