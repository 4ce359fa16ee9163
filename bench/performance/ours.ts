/** Times one of our methods at every tolerance. usage: node ours.js REFERENCE.csv ROUNDS METHOD */
import { methods, type Prepared, tolerances, withAnswers } from './methods.js';
import { median, ROW_HEADING } from './results.js';
import { type Answer, readReferenceFlights } from './work-item.js';

const [, , path = '', rounds, name] = process.argv;
const method = methods.find((candidate) => candidate.name === name);
if (method === undefined)
  throw new Error(`no method ${name}; there are ${methods.map((m) => m.name).join(', ')}`);

const flights = withAnswers(readReferenceFlights(path, method.model), method.model);
const runs: { tolerance: number; prepared: Prepared; times: number[] }[] = [];
for (const tolerance of tolerances) {
  if (tolerance < (method.finest ?? 0)) continue;
  runs.push({ tolerance, prepared: await method.prepare(flights, tolerance), times: [] });
}
/** Processor time spent on warming up, as in the JavaScript peers [µs]. */
const WARM_UP = 1e6;

/** Processor time of one round [µs], garbage collection included: other programs on the machine do not count. */
function flyAll(prepared: Prepared): number {
  const start = process.cpuUsage();
  prepared.run();
  const { user, system } = process.cpuUsage(start);
  return user + system;
}

for (let spent = 0; spent < WARM_UP; ) for (const { prepared } of runs) spent += flyAll(prepared);
for (let round = 0; round < Number(rounds); round++) {
  for (const { prepared, times } of runs) times.push(flyAll(prepared) / flights.length);
}

console.log(ROW_HEADING);
for (const { tolerance, prepared, times } of runs) {
  const answers = prepared.answers();
  const errors = (of: (got: Answer, right: Answer) => number): number[] =>
    flights.map(({ answer }, i) => of(answers[i] as Answer, answer));
  const landing = errors((got, right) => Math.hypot(got.x - right.x, got.z - right.z));
  const apex = errors((got, right) => Math.abs(got.apex - right.apex));
  const time = errors((got, right) => Math.abs(got.time - right.time));
  const figures = [median(landing), Math.max(...landing), Math.max(...apex), Math.max(...time)];
  console.log(
    [
      name,
      tolerance === 1 ? '1' : tolerance.toExponential(0),
      flights.length,
      median(times).toFixed(4),
      ...figures.map((figure) => figure.toExponential(3)),
      'NaN',
    ].join(','),
  );
}
