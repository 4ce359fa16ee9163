/**
 * What `fairflight/gpu` does on the card of this machine: errors against the judge, flights a second beside a CUDA kernel
 * written by hand, a map end to end, sums over designs of growing size, and a sweep on all cores beside one.
 * usage: npm run bench:gpu [-- --few] [--only PART,…] [--out RESULTS.json]; all of it writes docs/gpu.md. It needs the package webgpu,
 * and nvcc for the kernel beside. npm run bench:gpu -- --page RESULTS.json writes the page of what another machine measured.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { availableParallelism, cpus } from 'node:os';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { type Gpu, openGpu } from '../../src/gpu/index.js';
import {
  carryMap,
  degrees,
  type MapQuestion,
  metres,
  metresPerSecond,
  rpm,
  type Scene,
} from '../../src/index.js';
import { scaledModel } from '../../src/models.js';
import { sweepInParallel } from '../../src/node/index.js';
import type { Design } from '../../src/sweep/index.js';
import { cudaTimes } from './cuda.js';
import { drawLaunches } from './draws.js';
import { allErrors } from './errors.js';
import { secondsOnCard } from './on-card.js';
import { pageOf } from './page.js';
import type { Results } from './results.js';

const { values: flags } = parseArgs({
  options: {
    few: { type: 'boolean', default: false },
    only: { type: 'string' },
    out: { type: 'string' },
    cuda: { type: 'string' },
    page: { type: 'string' },
  },
});
const few = flags.few;
const wanted = flags.only?.split(',');
const source = flags.cuda ?? fileURLToPath(new URL('flight.cu', import.meta.url));

async function timed<T>(run: () => Promise<T> | T): Promise<readonly [number, T]> {
  const start = performance.now();
  const result = await run();
  return [(performance.now() - start) / 1000, result];
}

/** Ways through the kernel that cost differently. */
const SCENES: Readonly<Record<string, Scene>> = {
  'default ball, calm': {},
  'a ball from its table': { aerodynamics: scaledModel('fitted-modern', { drag: 0.97 }) },
  'a logarithmic wind': {
    wind: {
      along: metresPerSecond(6),
      across: metresPerSecond(-4),
      profile: { kind: 'log', roughness: metres(0.03) },
    },
  },
};

async function mapTimes(gpu: Gpu): Promise<NonNullable<Results['map']>> {
  const question: MapQuestion = {
    ballSpeed: metresPerSecond(70),
    launchAngle: { min: degrees(2), max: degrees(40) },
    spinRate: { min: rpm(1000), max: rpm(9000) },
  };
  const [first] = await timed(() => gpu.carryMap(question));
  const times: number[] = [];
  for (let k = 0; k < (few ? 3 : 50); k++) times.push((await timed(() => gpu.carryMap(question)))[0]);
  times.sort((a, b) => a - b);
  const [onProcessor] = await timed(() => carryMap(question));
  return { first, median: times[times.length >> 1] ?? 0, best: times[0] ?? 0, onProcessor };
}

const launchDesign = (count: number): Design => ({
  kind: 'sobol',
  count,
  factors: [
    { name: 'launch.ballSpeed', from: metresPerSecond(50), to: metresPerSecond(85) },
    { name: 'launch.launchAngle', from: degrees(6), to: degrees(24) },
    { name: 'launch.spinRate', from: rpm(1500), to: rpm(7000) },
    { name: 'launch.spinAxisTilt', from: degrees(-20), to: degrees(20) },
  ],
});

async function sumTimes(gpu: Gpu): Promise<NonNullable<Results['sums']>> {
  const rows: { flights: number; seconds: number; megabytes: number }[] = [];
  await gpu.summarise(launchDesign(1000));
  for (const flights of few ? [1000, 10_000] : [1e6, 1e7, 1e8, 1e9]) {
    const [seconds] = await timed(() => gpu.summarise(launchDesign(flights)));
    rows.push({ flights, seconds, megabytes: process.memoryUsage().rss / 2 ** 20 });
  }
  return rows;
}

async function coreTimes(): Promise<NonNullable<Results['cores']>> {
  const each = few ? 4000 : 400_000;
  const workers = availableParallelism();
  const deliveries = (count: number): Design => ({
    kind: 'sobol',
    count,
    factors: [
      { name: 'delivery.clubSpeed', from: metresPerSecond(35), to: metresPerSecond(52) },
      { name: 'delivery.attackAngle', from: degrees(-5), to: degrees(5) },
      { name: 'delivery.dynamicLoft', from: degrees(8), to: degrees(20) },
    ],
  });
  const run = async (design: Design, many: number): Promise<number> =>
    (
      await timed(async () => {
        for await (const _ of sweepInParallel(design, {}, { workers: many })) void _;
      })
    )[0];
  const rows: { of: string; workers: number; one: number; all: number }[] = [];
  for (const [of, design] of [
    ['launches', launchDesign],
    ['deliveries', deliveries],
  ] as const) {
    const one = await run(design(each), 1);
    rows.push({ of, workers, one, all: await run(design(each * workers), workers) });
  }
  return rows;
}

function writePage(measured: Results): void {
  writeFileSync(new URL('../../docs/gpu.md', import.meta.url), pageOf(measured));
}

if (flags.page !== undefined) {
  writePage(JSON.parse(readFileSync(flags.page, 'utf8')) as Results);
  process.exit(0);
}
const gpu = await openGpu();
if (gpu === undefined) throw new Error('no graphics card: is the package webgpu installed?');
const flights = few ? 4096 : 2 ** 21;
const results: Results = {
  card: gpu.name,
  processor: `${cpus()[0]?.model}, ${availableParallelism()} cores`,
};
const parts: Readonly<Record<string, () => Promise<void> | void>> = {
  errors: async () => {
    results.errors = await allErrors(gpu, few ? 500 : 100_000);
  },
  onCard: async () => {
    const rows: { of: string; flights: number; seconds: number }[] = [];
    for (const [of, scene] of Object.entries(few ? { default: {} } : SCENES)) {
      rows.push({ of, flights, seconds: await secondsOnCard(flights, few ? 2 : 12, scene) });
    }
    results.onCard = rows;
  },
  cuda: () => {
    if (!few) results.cuda = cudaTimes(source, flights, 12);
  },
  batch: async () => {
    const launches = drawLaunches(flights);
    await gpu.flyMany(launches);
    const [seconds] = await timed(() => gpu.flyMany(launches));
    results.batch = { flights, seconds };
  },
  map: async () => {
    results.map = await mapTimes(gpu);
  },
  sums: async () => {
    results.sums = await sumTimes(gpu);
  },
  cores: async () => {
    results.cores = await coreTimes();
  },
};
for (const [name, part] of Object.entries(parts)) {
  if (wanted !== undefined && !wanted.includes(name)) continue;
  console.error(`${name} …`);
  const [seconds] = await timed(async () => part());
  console.error(`${name}: ${seconds.toFixed(1)} s`);
  if (flags.out !== undefined) writeFileSync(flags.out, JSON.stringify(results, null, 2));
}
console.log(JSON.stringify(results, null, 2));
if (!few && wanted === undefined && flags.out === undefined) writePage(results);
gpu.close();
process.exit(0);
