import { fork } from 'node:child_process';
import { existsSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { availableParallelism, tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { FAULTS, type FaultKind, fuzzCall } from './fuzz/calls.js';

/**
 * `npm run fuzz -- --calls 1000000 --seed 1 --processes 2`: calls every public function with arguments spoilt here and
 * there. Ends with 1 when something other than a result or a typed refusal came of it. It writes down how far it has
 * come (`--state FILE`), and goes on from there when it is run again. `--call N` makes one call and tells of it.
 */

/** What some calls came to. */
interface Tally {
  /** Calls made: those of part p are p, p + parts, p + 2 parts … */
  readonly done: number;
  readonly refusals: number;
  readonly faults: Readonly<Record<FaultKind, number>>;
  /** The first faults in words. */
  readonly told: readonly string[];
}

/** How far a run has come. */
interface State {
  readonly seed: number;
  readonly calls: number;
  readonly parts: readonly Tally[];
}

const NONE: Tally = {
  done: 0,
  refusals: 0,
  faults: Object.fromEntries(FAULTS.map((kind) => [kind, 0])) as Record<FaultKind, number>,
  told: [],
};

/** Faults that are told; the rest are counted. */
const MOST_TOLD = 20;
/** Calls of a process between two reports. */
const REPORT = 500;

const { values } = parseArgs({
  options: {
    calls: { type: 'string', default: '1000000' },
    seed: { type: 'string', default: '1' },
    processes: { type: 'string', default: String(Math.min(availableParallelism(), 2)) },
    state: { type: 'string' },
    call: { type: 'string' },
    part: { type: 'string' },
    from: { type: 'string', default: '0' },
  },
});

function whole(text: string): number {
  const number = Number(text);
  if (!Number.isSafeInteger(number) || number < 0) throw new Error(`${text} is not a whole number from 0 up`);
  return number;
}
const [calls, seed, parts] = [values.calls, values.seed, values.processes].map(whole) as [
  number,
  number,
  number,
];

async function tallyOf(index: number): Promise<Tally> {
  const { door, changes, refused, faults } = await fuzzCall(seed, index);
  const count = (kind: FaultKind): number => faults.filter(([each]) => each === kind).length;
  return {
    done: 1,
    refusals: refused ? 1 : 0,
    faults: Object.fromEntries(FAULTS.map((kind) => [kind, count(kind)])) as Record<FaultKind, number>,
    told: faults.map(
      ([kind, what]) =>
        `seed ${seed}, call ${index}, ${door}: ${kind}: ${what}\n    ${changes.join('; ') || 'nothing changed'}`,
    ),
  };
}

function sum(a: Tally, b: Tally): Tally {
  return {
    done: a.done + b.done,
    refusals: a.refusals + b.refusals,
    faults: Object.fromEntries(FAULTS.map((kind) => [kind, a.faults[kind] + b.faults[kind]])) as Record<
      FaultKind,
      number
    >,
    told: [...a.told, ...b.told].slice(0, MOST_TOLD),
  };
}

/** One process: every so-manieth call, told to the parent from time to time. */
async function runPart(part: number, from: number): Promise<void> {
  let tally = NONE;
  for (let index = part + from * parts; index < calls; index += parts) {
    tally = sum(tally, await tallyOf(index));
    if (tally.done % REPORT > 0 && index + parts < calls) continue;
    process.send?.(tally);
    tally = NONE;
  }
  // What a call left waiting must not keep the process.
  process.exit(0);
}

function stateIn(file: string): State {
  if (existsSync(file)) {
    const state = JSON.parse(readFileSync(file, 'utf8')) as State;
    if (state.seed === seed && state.calls === calls && state.parts.length === parts) return state;
  }
  return { seed, calls, parts: Array.from({ length: parts }, () => NONE) };
}

/** The old file stays whole until there is a new one. */
function keep(file: string, state: State): void {
  writeFileSync(`${file}.new`, JSON.stringify(state));
  renameSync(`${file}.new`, file);
}

async function runAll(file: string): Promise<void> {
  let state = stateIn(file);
  const start = performance.now();
  let said = start;
  const hear = (part: number, news: Tally): void => {
    state = { ...state, parts: state.parts.map((old, i) => (i === part ? sum(old, news) : old)) };
    keep(file, state);
    for (const fault of news.told) console.log(fault);
    if (performance.now() - said < 30_000) return;
    said = performance.now();
    console.log(`${state.parts.reduce(sum).done} of ${calls} calls`);
  };
  await Promise.all(
    state.parts.map(({ done }, part) => {
      const own = ['--part', String(part), '--from', String(done)];
      const child = fork(fileURLToPath(import.meta.url), [...process.argv.slice(2), ...own]);
      child.on('message', (news) => hear(part, news as Tally));
      return new Promise<void>((resolve, reject) => {
        child.on('exit', (code) =>
          code === 0 ? resolve() : reject(new Error(`a process ended with ${code}`)),
        );
      });
    }),
  );
  const { done, refusals, faults } = state.parts.reduce(sum);
  console.log(
    `\ncalls                  ${done} in ${((performance.now() - start) / 1000).toFixed(0)} s, seed ${seed}`,
  );
  console.log(`typed refusals         ${refusals}`);
  for (const kind of FAULTS) console.log(`${kind.padEnd(23)}${faults[kind]}`);
  process.exitCode = FAULTS.some((kind) => faults[kind] > 0) ? 1 : 0;
}

if (values.call !== undefined) console.log(await fuzzCall(seed, whole(values.call)));
else if (values.part !== undefined) await runPart(whole(values.part), whole(values.from));
else await runAll(values.state ?? join(tmpdir(), `fairflight-fuzz-${seed}-${calls}-${parts}.json`));
