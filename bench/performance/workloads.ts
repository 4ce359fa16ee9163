import { settingsOf } from '../../src/flight/fly.js';
import { degrees, metresPerSecond, mph, rpm, type Scene } from '../../src/index.js';
import { sweepInParallel } from '../../src/node/index.js';
import { type SobolDesign, type SweepBase, sweepChunks } from '../../src/sweep/index.js';
import { methods } from './methods.js';
import { readReferenceFlights, testAir, testLaw } from './work-item.js';

/** A way to compute any number of shots, for the table of time and memory against their number. */
export interface Workload {
  readonly name: string;
  /** Reads what is needed; the function it returns flies `count` shots. */
  readonly prepare: (reference: string, count: number) => () => Promise<void>;
}

/** What a workload took. */
export interface Took {
  /** Time on the clock [s]. */
  readonly seconds: number;
  /** Processor time of all threads [s]. */
  readonly processorSeconds: number;
  /** Peak memory of the process, 2²⁰ bytes each. */
  readonly peakMegabytes: number;
}

/** Flies the reference flights over and over. */
function repeated(methodName: string): Workload['prepare'] {
  return (reference, count) => {
    const method = methods.find(({ name }) => name === methodName);
    if (method === undefined) throw new Error(`no method ${methodName}`);
    const flights = readReferenceFlights(reference, method.model);
    return async () => {
      const { run } = await method.prepare(flights.slice(0, count), settingsOf({}).tolerance);
      for (let done = 0; done < count; done += flights.length) run();
    };
  };
}

type Stream = (
  design: SobolDesign,
  scene: Scene,
  options: SweepBase,
) => AsyncIterable<{ readonly count: number }>;

/** Streams a Sobol design and drops each chunk. */
function streamed(
  factors: SobolDesign['factors'],
  scene: Scene,
  options: SweepBase,
  stream: Stream = sweepChunks,
): Workload['prepare'] {
  return (_reference, count) => async () => {
    let done = 0;
    for await (const chunk of stream({ kind: 'sobol', count, factors }, scene, options)) done += chunk.count;
    if (done !== count) throw new Error(`${done} of ${count} rows`);
  };
}

const deliveries: SobolDesign['factors'] = [
  { name: 'delivery.clubSpeed', from: mph(70), to: mph(125) },
  { name: 'delivery.attackAngle', from: degrees(-5), to: degrees(7) },
  { name: 'delivery.dynamicLoft', from: degrees(8), to: degrees(22) },
];

/** Every workload; each count of each runs in a process of its own, from a cold start. */
export const workloads: readonly Workload[] = [
  { name: 'fly, the reference flights', prepare: repeated('fly') },
  { name: 'flyMany, the reference flights', prepare: repeated('flyMany') },
  { name: 'flyMany (WebAssembly), the same', prepare: repeated('flyMany (WebAssembly)') },
  {
    name: 'sweepChunks, launches to carry',
    prepare: streamed(
      [
        { name: 'launch.ballSpeed', from: metresPerSecond(50), to: metresPerSecond(85) },
        { name: 'launch.launchAngle', from: degrees(6), to: degrees(24) },
        { name: 'launch.spinRate', from: rpm(1500), to: rpm(7000) },
        { name: 'launch.spinAxisTilt', from: degrees(-20), to: degrees(20) },
        { name: 'wind.along', from: metresPerSecond(-8), to: metresPerSecond(8) },
        { name: 'wind.across', from: metresPerSecond(-8), to: metresPerSecond(8) },
      ],
      { aerodynamics: testLaw, air: testAir },
      { outputs: ['carry'] },
    ),
  },
  {
    name: 'sweepChunks, deliveries to total',
    prepare: streamed(deliveries, {}, { outputs: ['total'] }),
  },
];

/** The deliveries again, on worker threads. */
export function parallelWorkload(workers: number): Workload {
  return {
    name: `sweepInParallel, ${workers} workers`,
    prepare: streamed(deliveries, {}, { outputs: ['total'] }, (design, scene, options) =>
      sweepInParallel(design, scene, { ...options, workers }),
    ),
  };
}
