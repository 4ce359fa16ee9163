/**
 * The benchmark. `npm run bench` prints ours and the JavaScript peers; `npm run bench:peers` (--peers) adds the C++ and
 * SciPy peers, counts, memory and cores, and writes docs/performance.md with its charts.
 */
import { writeFileSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import {
  type CoreRow,
  type CountRow,
  charts,
  type Measured,
  page,
  summary,
} from '../../docs/write/performance-page.js';
import { describeMachine } from './machine.js';
import { methods } from './methods.js';
import {
  buildOurs,
  cppPeers,
  installJavaScriptPeers,
  javaScriptPeers,
  MissingPeer,
  output,
  type Program,
  reference,
  scipyPeers,
} from './programs.js';
import { mergeRows, parseRows, type Row } from './results.js';
import type { TaskTime } from './tasks.js';
import { parallelWorkload, type Took, workloads } from './workloads.js';

const OUR_ROUNDS = 8;
const JAVASCRIPT_ROUNDS = 2;
const CPP_ROUNDS = 2;
const SCIPY_EVERY = 5;
const COUNTS = [1e2, 1e3, 1e4, 1e5, 1e6, 1e7];
/** A count expected to take longer than this is left out [s]. */
const LONGEST = 150;
/** How long the measurement of the cores should take with one worker [s]. */
const CORES_SECONDS = 20;

const withPeers = process.argv.includes('--peers');
const turns = withPeers ? 5 : 2;
const started = performance.now();
const progress = (text: string): void => {
  process.stderr.write(`${((performance.now() - started) / 1000).toFixed(0).padStart(4)} s  ${text}\n`);
};

const ours = buildOurs();
installJavaScriptPeers();
const native = withPeers ? await nativePeers() : { programs: [], versions: [], missing: false };
const machine = describeMachine(native.versions);

const rows = await takeTurns([
  ...methods.map(({ name }) => ours('ours', reference, String(OUR_ROUNDS), name)),
  ...native.programs,
  ...javaScriptPeers(JAVASCRIPT_ROUNDS),
]);
progress('other calls');
const tasks = (await output(ours('tasks')))
  .trim()
  .split('\n')
  .map((line): TaskTime => JSON.parse(line));
const counts = withPeers ? await countShots() : [];
const cores = withPeers ? await useCores() : [];
const measured: Measured = { machine, rows, tasks, counts, cores };

if (!withPeers) console.log(summary(measured));
else if (native.missing) {
  console.log(summary(measured));
  console.error('docs/performance.md was not written: it needs every peer.');
  process.exitCode = 1;
} else {
  const text = page(measured);
  console.log(text);
  const docs = new URL('../../docs/', import.meta.url);
  writeFileSync(new URL('performance.md', docs), text);
  for (const [name, svg] of charts(measured)) writeFileSync(new URL(name, docs), svg);
}
progress('done');

/** The C++ and SciPy peers that this machine can run; says what to install for the others. */
async function nativePeers(): Promise<{ programs: Program[]; versions: string[]; missing: boolean }> {
  progress('building the C++ peers');
  const found = await Promise.allSettled([cppPeers(CPP_ROUNDS), scipyPeers(SCIPY_EVERY)]);
  const there = found.flatMap((peer) => {
    if (peer.status === 'fulfilled') return [peer.value];
    if (!(peer.reason instanceof MissingPeer)) throw peer.reason;
    console.error(peer.reason.message);
    return [];
  });
  return {
    programs: there.map(({ program }) => program),
    versions: there.map(({ versions }) => versions),
    missing: there.length < found.length,
  };
}

/** Runs the programs one after another, several times over, so that ratios come from interleaved runs. */
async function takeTurns(programs: readonly Program[]): Promise<Row[]> {
  const all: Row[] = [];
  for (let turn = 1; turn <= turns; turn++) {
    for (const program of programs) {
      progress(`turn ${turn} of ${turns}: ${program.label}`);
      all.push(...parseRows(await output(program)));
    }
  }
  return mergeRows(all);
}

async function timeShots(workload: string, count: number): Promise<Took> {
  return JSON.parse(await output(ours('flights', reference, workload, String(count))));
}

async function countShots(): Promise<CountRow[]> {
  const all: CountRow[] = [];
  for (const { name: workload } of workloads) {
    let previous = 0;
    for (const count of COUNTS) {
      progress(`${workload}: ${count}`);
      const took = 10 * previous > LONGEST ? undefined : await timeShots(workload, count);
      previous = took?.processorSeconds ?? Number.POSITIVE_INFINITY;
      all.push({ workload, count, took });
    }
  }
  return all;
}

/** Shots a second on one worker thread, on two and on one for each core. */
async function useCores(): Promise<CoreRow[]> {
  const all: CoreRow[] = [];
  let count = 200_000;
  for (const workers of new Set([1, 2, availableParallelism()])) {
    const { name } = parallelWorkload(workers);
    if (workers === 1) {
      // Long enough that starting the threads does not matter.
      const { seconds } = await timeShots(name, count);
      count = Math.ceil((count / seconds) * CORES_SECONDS);
    }
    progress(`${name}: ${count}`);
    const { seconds } = await timeShots(name, count);
    all.push({ workers, shotsPerSecond: count / seconds });
  }
  return all;
}
