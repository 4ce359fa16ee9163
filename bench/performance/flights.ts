/** Runs one workload of a given size from a cold start. usage: node flights.js REFERENCE.csv WORKLOAD COUNT */
import { availableParallelism } from 'node:os';
import { parallelWorkload, type Took, workloads } from './workloads.js';

const [, , reference = '', name, count] = process.argv;
const all = [...workloads, ...[1, 2, availableParallelism()].map(parallelWorkload)];
const workload = all.find((candidate) => candidate.name === name);
if (workload === undefined) throw new Error(`no workload ${name}`);

const run = workload.prepare(reference, Number(count));
const before = process.cpuUsage();
const start = process.hrtime.bigint();
await run();
const seconds = Number(process.hrtime.bigint() - start) / 1e9;
const { user, system } = process.cpuUsage(before);
const took: Took = {
  seconds,
  processorSeconds: (user + system) / 1e6,
  peakMegabytes: process.resourceUsage().maxRSS / 1024,
};
console.log(JSON.stringify(took));
