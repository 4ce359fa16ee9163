import { fork } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import { studies } from '../../tests/intervals/all.js';
import { joined, type Study, type Tally, tally } from '../../tests/intervals/study.js';
import { aimOf, type CoverageRow, coverageOf, keeps, page } from './coverage-page.js';

/** Draws of one study, from and to. */
type Part = readonly [study: number, from: number, to: number];
type Answer = { readonly part: Part; readonly found: Record<string, Tally> };

/** Parts a study is cut into, so that processes end together. */
const PARTS = 8;

/** A process of its own: tallies the parts it is sent. */
function work(): void {
  process.on('message', (part: Part) => {
    const [number, from, to] = part;
    const study = studies[number];
    if (study !== undefined) process.send?.({ part, found: tally(study, from, to) } satisfies Answer);
  });
}

/** Shares the parts out among processes. */
function collect(parts: readonly Part[], take: (answer: Answer) => void): Promise<void> {
  const waiting = [...parts];
  let left = parts.length;
  // With nothing to study the page is written from what is known.
  if (left === 0) return Promise.resolve();
  return new Promise((resolve, reject) => {
    for (let k = 0; k < Math.min(2, availableParallelism()); k++) {
      const child = fork(fileURLToPath(import.meta.url), ['--work']);
      const next = (): void => {
        const part = waiting.shift();
        if (part === undefined) child.disconnect();
        else child.send(part);
      };
      child.on('message', (answer: Answer) => {
        take(answer);
        left -= 1;
        if (left === 0) resolve();
        next();
      });
      child.on('error', reject);
      child.on('exit', (code) => {
        if (code !== 0) reject(new Error(`a process of the study ended with ${code}`));
      });
      next();
    }
  });
}

/** What was found, by call and conditions, then by figure; kept so that one call can be studied anew. */
type Found = Record<string, Record<string, Tally>>;
const RECORD = fileURLToPath(new URL('../../tests/intervals/record.json', import.meta.url));
const PAGE = fileURLToPath(new URL('../statistics.md', import.meta.url));
const nameOf = ({ call, conditions }: Study): string => `${call}, ${conditions}`;

/** Adds a study to the record, which keeps only what is still studied. */
function keep(study: Study, found: Record<string, Tally>): void {
  const known: Found = { ...JSON.parse(readFileSync(RECORD, 'utf8')), [nameOf(study)]: found };
  const kept = studies.flatMap((each) => {
    const own = known[nameOf(each)];
    return own === undefined ? [] : [[nameOf(each), own] as const];
  });
  writeFileSync(RECORD, `${JSON.stringify(Object.fromEntries(kept), null, 2)}\n`);
}

function rowsOf(found: Found): CoverageRow[] {
  return studies.flatMap((study) =>
    Object.entries(found[nameOf(study)] ?? {}).map(([figure, sum]) => ({ study, figure, tally: sum })),
  );
}

function print(row: CoverageRow): void {
  const mark = row.study.stated && !keeps(row) ? '  < too few' : '';
  const share = (value: number): string => (100 * value).toFixed(1);
  console.log(
    `${nameOf(row.study)}: ${row.figure}: ${share(coverageOf(row))} for ${share(aimOf(row))}${mark}`,
  );
}

async function main(): Promise<void> {
  const option = (name: string): string | undefined => {
    const flag = process.argv.indexOf(name);
    return flag < 0 ? undefined : process.argv[flag + 1];
  };
  const only = option('--only') ?? '';
  /** One draw in so many, where there is no time for all; the page says how many answers a row rests on. */
  const oneIn = Number(option('--one-in') ?? 1);
  const parts = studies.flatMap((study, number): Part[] => {
    if (!nameOf(study).includes(only)) return [];
    const at = (k: number): number => Math.ceil((k * study.draws) / oneIn / PARTS);
    return Array.from({ length: PARTS }, (_, k): Part => [number, at(k), at(k + 1)]);
  });
  const answers: Answer[] = [];
  await collect(parts, (answer) => {
    answers.push(answer);
    const [number] = answer.part;
    const study = studies[number];
    const own = answers.filter(({ part }) => part[0] === number);
    if (study === undefined || own.length < PARTS) return;
    // In the order of the draws, whichever process was first: sums agree to the last digit.
    const totals: Record<string, Tally> = {};
    for (const { found } of own.sort((a, b) => a.part[1] - b.part[1])) {
      for (const [figure, one] of Object.entries(found)) totals[figure] = joined(totals[figure], one);
    }
    keep(study, totals);
    for (const row of rowsOf({ [nameOf(study)]: totals })) print(row);
  });
  const known: Found = JSON.parse(readFileSync(RECORD, 'utf8'));
  const missing = studies.map(nameOf).filter((name) => known[name] === undefined);
  writeFileSync(PAGE, page(rowsOf(known), missing));
}

if (process.argv.includes('--work')) work();
else await main();
