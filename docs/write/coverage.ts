import { fork } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import { studies } from '../../tests/intervals/all.js';
import { joined, type Tally, tally } from '../../tests/intervals/study.js';
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
    if (study !== undefined) process.send?.({ part, found: tally(study, number, from, to) } satisfies Answer);
  });
}

/** Shares the parts out among processes. */
function collect(parts: readonly Part[]): Promise<readonly Answer[]> {
  const waiting = [...parts];
  const answers: Answer[] = [];
  return new Promise((resolve, reject) => {
    for (let k = 0; k < Math.min(2, availableParallelism()); k++) {
      const child = fork(fileURLToPath(import.meta.url), ['--work']);
      const next = (): void => {
        const part = waiting.shift();
        if (part === undefined) child.disconnect();
        else child.send(part);
      };
      child.on('message', (answer: Answer) => {
        answers.push(answer);
        if (answers.length === parts.length) resolve(answers);
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

async function main(): Promise<void> {
  const option = (name: string): string | undefined => {
    const flag = process.argv.indexOf(name);
    return flag < 0 ? undefined : process.argv[flag + 1];
  };
  const only = option('--only') ?? '';
  /** One draw in so many, where there is no time for all; the page says how many answers a row rests on. */
  const oneIn = Number(option('--one-in') ?? 1);
  const parts = studies.flatMap(({ call, draws }, number): Part[] =>
    call.includes(only)
      ? Array.from(
          { length: PARTS },
          (_, k): Part => [
            number,
            Math.ceil((k * draws) / oneIn / PARTS),
            Math.ceil(((k + 1) * draws) / oneIn / PARTS),
          ],
        )
      : [],
  );
  const answers = await collect(parts);
  const rows = studies.flatMap((study, number): CoverageRow[] => {
    const totals: Record<string, Tally> = {};
    for (const { part, found } of answers) {
      if (part[0] !== number) continue;
      for (const [figure, one] of Object.entries(found)) totals[figure] = joined(totals[figure], one);
    }
    return Object.entries(totals).map(([figure, sum]) => ({ study, figure, tally: sum }));
  });
  for (const row of rows) {
    const { study, figure } = row;
    const mark = study.stated && !keeps(row) ? '  < too few' : '';
    const share = (value: number): string => (100 * value).toFixed(1);
    console.log(
      `${study.call}: ${figure}, ${study.conditions}: ${share(coverageOf(row))} for ${share(aimOf(row))}${mark}`,
    );
  }
  if (only === '') writeFileSync(fileURLToPath(new URL('../statistics.md', import.meta.url)), page(rows));
}

if (process.argv.includes('--work')) work();
else await main();
