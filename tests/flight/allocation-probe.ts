import { createCompiledEngine } from '../../src/flight/engine/compiled.js';
import { createFlightEngine } from '../../src/flight/engine/general.js';
import { flightProblem } from '../../src/flight/problem.js';
import { resolveScene } from '../../src/scene/scene.js';
import { degrees, mph, rpm } from '../../src/units/index.js';

/** The compiled kernel flies more: what a compiler at work on another thread leaves on the heap must not count. */
const FLIGHTS = { general: 5000, compiled: 40_000 } as const;
const [FEW, MANY] = [1e-1, 1e-6] as const;

const problem = flightProblem(
  { ballSpeed: mph(150), launchAngle: degrees(12), spinRate: rpm(2600) },
  resolveScene({ aerodynamics: 'fitted-modern' }),
);
const general = createFlightEngine();
const compiled = createCompiledEngine(false);
const engines = {
  general: (tolerance: number) => general.fly(problem, tolerance, 60),
  compiled: (tolerance: number) => compiled.fly(problem, tolerance, 60),
};

function bytesPerFlight(fly: (tolerance: number) => unknown, flights: number, tolerance: number): number {
  for (let i = 0; i < flights; i++) fly(tolerance);
  globalThis.gc?.();
  const before = process.memoryUsage().heapUsed;
  for (let i = 0; i < flights; i++) fly(tolerance);
  return (process.memoryUsage().heapUsed - before) / flights;
}

const few = general.fly(problem, FEW, 60).steps;
const steps = general.fly(problem, MANY, 60).steps - few;
const bytesPerStep = (name: keyof typeof engines): number => {
  const [least, most] = [FEW, MANY].map((tolerance) =>
    bytesPerFlight(engines[name], FLIGHTS[name], tolerance),
  ) as [number, number];
  return (most - least) / steps;
};
console.log(
  JSON.stringify({
    steps,
    bytesPerStep: { general: bytesPerStep('general'), compiled: bytesPerStep('compiled') },
  }),
);
