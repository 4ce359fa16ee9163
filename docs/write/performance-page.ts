import { methods } from '../../bench/performance/methods.js';
import { costAt, type Row } from '../../bench/performance/results.js';
import type { TaskTime } from '../../bench/performance/tasks.js';
import { testLaw } from '../../bench/performance/work-item.js';
import type { Took } from '../../bench/performance/workloads.js';
import { logChart, type Series } from './log-chart.js';

/** Time and memory of one workload at one count; undefined where it would have taken too long. */
export interface CountRow {
  readonly workload: string;
  readonly count: number;
  readonly took: Took | undefined;
}

/** Shots a second with a number of worker threads. */
export interface CoreRow {
  readonly workers: number;
  readonly shotsPerSecond: number;
}

/** Everything one run of the benchmark measured. */
export interface Measured {
  readonly machine: readonly string[];
  readonly rows: readonly Row[];
  readonly tasks: readonly TaskTime[];
  readonly counts: readonly CountRow[];
  readonly cores: readonly CoreRow[];
}

const OURS = 'fairflight';
const MM = 1e-3;
const MICROMETRE = 1e-6;
const DOPRI5 = 'odeint dopri5 dense';
const FEHLBERG = 'odeint fehlberg78';

const FAMILIES = [OURS, 'C++ libraries', 'JavaScript libraries', 'Python library'];

function family(method: string): string {
  if (methods.some(({ name }) => name === method)) return OURS;
  const [, cpp, javaScript, python] = FAMILIES as [string, string, string, string];
  if (/^(odeint|GSL|CVODE)/.test(method)) return cpp;
  return method.startsWith('SciPy') ? python : javaScript;
}

/** Rows that fly the test law, so that they can be compared. */
function comparable(rows: readonly Row[]): Row[] {
  const other = new Set(methods.filter(({ model }) => model !== testLaw).map(({ name }) => name));
  return rows.filter(({ method }) => !other.has(method));
}

const namesOf = (rows: readonly Row[]): string[] => [...new Set(rows.map(({ method }) => method))];
const number = (value: number | undefined, digits = 3): string =>
  value === undefined || Number.isNaN(value) ? '–' : String(Number(value.toPrecision(digits)));
const length = (value: number): string => {
  const metres = Number(value.toPrecision(3));
  const [factor, unit] =
    metres >= 1 ? [1, 'm'] : metres >= MM ? [1e3, 'mm'] : metres >= MICROMETRE ? [1e6, 'µm'] : [1e9, 'nm'];
  return `${number(metres * (factor as number))} ${unit}`;
};
const duration = (seconds: number): string => {
  const [factor, unit] =
    seconds >= 1 ? [1, 's'] : seconds >= 1e-3 ? [1e3, 'ms'] : seconds >= 1e-6 ? [1e6, 'µs'] : [1e9, 'ns'];
  return `${number(seconds * (factor as number))} ${unit}`;
};

function table(heading: readonly string[], lines: readonly (readonly string[])[], textColumns = 1): string {
  const rule = heading.map((_, i) => (i < textColumns ? '---' : '--:'));
  return [heading, rule, ...lines].map((cells) => `| ${cells.join(' | ')} |`).join('\n');
}

function equalError(rows: readonly Row[]): string {
  const at = (method: string, error: number): number | undefined => costAt(rows, method, error);
  const [base, fineBase] = [at(DOPRI5, MM), at(FEHLBERG, MICROMETRE)];
  const ratio = (cost: number | undefined, of: number | undefined): string =>
    cost === undefined || of === undefined ? '–' : number(cost / of, 2);
  const lines = namesOf(comparable(rows))
    .map((method) => ({ method, coarse: at(method, MM), fine: at(method, MICROMETRE) }))
    .sort((a, b) => (a.coarse ?? Infinity) - (b.coarse ?? Infinity))
    .map(({ method, coarse, fine }) => [
      method,
      family(method),
      number(coarse),
      ratio(coarse, base),
      number(fine),
      ratio(fine, fineBase),
    ]);
  const heading = ['method', '', 'µs at 1 mm', '× dopri5', 'µs at 1 µm', '× fehlberg78'];
  return table(heading, lines, 2);
}

function ratios({ rows, cores }: Measured): string {
  const of = (a: string, b: string, error: number): number | undefined => {
    const [over, under] = [costAt(rows, a, error), costAt(rows, b, error)];
    return over === undefined || under === undefined ? undefined : over / under;
  };
  const one = cores.find(({ workers }) => workers === 1);
  const two = cores.find(({ workers }) => workers === 2);
  const lines: [string, string, number | undefined][] = [
    ['default engine / odeint dopri5, at 1 mm', 'at most 0.5', of('default engine', DOPRI5, MM)],
    [
      'default engine / odeint fehlberg78, at 1 µm',
      'at most 0.5',
      of('default engine', FEHLBERG, MICROMETRE),
    ],
    ['fly, all checks and the record with it / odeint dopri5, at 1 mm', '', of('fly', DOPRI5, MM)],
    [
      'fly, all checks and the record with it / odeint fehlberg78, at 1 µm',
      '',
      of('fly', FEHLBERG, MICROMETRE),
    ],
    [
      'flyMany (WebAssembly) / odeint dopri5, at 1 mm',
      'at most 0.25',
      of('flyMany (WebAssembly)', DOPRI5, MM),
    ],
    ['flyMany / odeint dopri5, at 1 mm', '', of('flyMany', DOPRI5, MM)],
    [
      'default ball model / Smits-Smith 1994, both by fly at 1 mm',
      'at most 1',
      of('fly (default ball model)', 'fly (Smits-Smith 1994)', MM),
    ],
    [
      'sweepInParallel, shots a second, two workers / one',
      'at least 1.8',
      one && two && two.shotsPerSecond / one.shotsPerSecond,
    ],
  ];
  return table(
    ['ratio', 'aim', 'measured'],
    lines
      .filter(([, , value]) => value !== undefined)
      .map(([what, aim, value]) => [what, aim, number(value)]),
    2,
  );
}

function taskTable(tasks: readonly TaskTime[]): string {
  return table(
    ['call', 'aim', 'time', 'repeats'],
    tasks.map(({ name, aim, seconds, repeats }) => [name, aim, duration(seconds), String(repeats)]),
    2,
  );
}

function countTable(counts: readonly CountRow[]): string {
  return table(
    ['shots', 'workload', 'time', 'µs a shot', 'peak memory'],
    counts.map(({ workload, count, took }) => [
      count.toExponential(0).replace('+', ''),
      workload,
      took ? duration(took.seconds) : 'not run: too long',
      took ? number((took.processorSeconds * 1e6) / count) : '–',
      took ? `${took.peakMegabytes.toFixed(0)} MB` : '–',
    ]),
    2,
  );
}

function coreTable(cores: readonly CoreRow[]): string {
  const first = cores[0]?.shotsPerSecond ?? 1;
  return table(
    ['workers', 'shots a second', 'speed-up'],
    cores.map(({ workers, shotsPerSecond }) => [
      String(workers),
      number(shotsPerSecond),
      number(shotsPerSecond / first),
    ]),
  );
}

function everyRow(rows: readonly Row[]): string {
  return table(
    [
      'method',
      'setting',
      'flights',
      'µs',
      'slowest turn',
      'median error',
      'worst error',
      'apex',
      'time',
      'law calls',
    ],
    rows.map((row) => [
      row.method,
      row.setting,
      String(row.flights),
      number(row.microseconds),
      number(row.slowest),
      length(row.medianError),
      length(row.worstError),
      length(row.apexError),
      duration(row.timeError),
      number(row.forceCalls),
    ]),
    2,
  );
}

/** The charts of the page, by file name. */
export function charts({ rows, counts }: Measured): ReadonlyMap<string, string> {
  const methodLines = namesOf(comparable(rows))
    .map((name): Series => {
      const points = rows.filter(({ method }) => method === name);
      return { name, group: family(name), points: points.map((row) => [row.worstError, row.microseconds]) };
    })
    .sort((a, b) => FAMILIES.indexOf(a.group) - FAMILIES.indexOf(b.group));
  const countLines = (value: (took: Took, count: number) => number): Series[] =>
    [...new Set(counts.map(({ workload }) => workload))].map((name) => ({
      name,
      group: OURS,
      points: counts.flatMap(({ workload, count, took }) =>
        workload === name && took ? [[count, value(took, count)] as const] : [],
      ),
    }));
  const power = (value: number): string => value.toExponential(0).replace('+', '');
  const microseconds = (value: number): string => duration(value / 1e6);
  return new Map([
    [
      'performance-precision.svg',
      logChart({
        title: 'Work and precision: one flight on one core',
        xLabel: 'worst error of the landing point over the reference flights',
        yLabel: 'time a flight',
        series: methodLines,
        xTick: length,
        yTick: microseconds,
        marks: [MICROMETRE, MM],
      }),
    ],
    [
      'performance-count.svg',
      logChart({
        title: 'Cost of a shot against the number of shots, from a cold start',
        xLabel: 'shots',
        yLabel: 'time a shot',
        series: countLines(({ processorSeconds }, count) => (processorSeconds * 1e6) / count),
        xTick: power,
        yTick: microseconds,
      }),
    ],
    [
      'performance-memory.svg',
      logChart({
        title: 'Peak memory of the process against the number of shots',
        xLabel: 'shots',
        yLabel: 'peak memory',
        series: countLines(({ peakMegabytes }) => peakMegabytes),
        xTick: power,
        yTick: (value) => `${value} MB`,
      }),
    ],
  ]);
}

const WORK_ITEM = `The work item is one flight of a golf ball from launch to landing: seven states (position, velocity, spin rate), a
fixed spin axis, steady wind, an artificial smooth law for drag and lift, apex and landing point located. The
1,000 reference flights (50–85 m/s, 6–24°, 1,500–7,000 rpm, axis tilt ±20°, wind to ±8 m/s each way) and their answers to
1e-11 are in bench/peers/flights-reference.csv: 80-bit extrapolation, confirmed by SciPy's DOP853 to 6e-12. Error is the
distance of the landing point from the answer; cost is processor time for a flight with both events.`;

const READING = `- A cost at equal error is that of a setting that reaches it, or lies between two settings on a straight line of the
  logarithms. Times are processor time, medians over the rounds of a program, then over its turns
  (the slowest is shown too); all programs take turns. Cores are measured by the clock.
- Each library is used through its public interface, with the ordinary force law. Those without dense output find apex
  and landing by stepping again from the last accepted point; their law calls include that.
- mathjs flies each 50th and SciPy each 5th of the flights, and their errors are over those. dopri has no events either
  and is advanced one step at a time. CVODE is set up once and started again for each flight.
- JavaScript methods, ours too, run one library to a process, after a second of warming up. C++ is built with -O3 -march=native.
- Our tolerance bounds the landing error of these flights by a wide margin, so compare at equal error, not equal tolerance.
  \`fly\` checks its arguments and returns its whole record, with the nodes of the path and the warnings. The default
  engine and the general engine are what lies below it, used as the peers are: air, ball and law made ready beforehand,
  launch and wind of each flight in numbers, a few numbers out. \`flyMany\` takes and returns
  columns, all 1,000 flights in one call.
- The two rows for ball models fly the same launches by the models of the library, judged by odex at 1e-13.`;

/** The tables both commands print. */
export function summary(measured: Measured): string {
  const { machine, rows, tasks } = measured;
  return [
    '## Machine',
    machine.map((line) => `- ${line}`).join('\n'),
    '## One flight at equal worst error',
    equalError(rows),
    '## Ratios',
    ratios(measured),
    '## Other calls',
    taskTable(tasks),
  ].join('\n\n');
}

/** The whole page. */
export function page(measured: Measured): string {
  const { rows, counts, cores } = measured;
  return `${[
    '# Performance',
    'Printed by `npm run bench:peers`; every number on this page is from one run of it.',
    WORK_ITEM,
    summary(measured),
    '## Work and precision',
    '![Time a flight against worst landing error, for every method](performance-precision.svg)',
    '## Number of shots and memory',
    `Each count in a process of its own, from a cold start: small counts pay for compilation. Time is by the clock, the time
a shot is processor time of all threads, memory the peak of the whole process, Node.js included.`,
    '![Time a shot against the number of shots](performance-count.svg)',
    '![Peak memory against the number of shots](performance-memory.svg)',
    countTable(counts),
    '## Cores',
    '`sweepInParallel` over driver deliveries to total, by the clock, starting the threads included.',
    coreTable(cores),
    '## How to read the tables',
    READING,
    '## Every method and setting',
    everyRow(rows),
  ].join('\n\n')}\n`;
}
