/**
 * Prints, as JSON, the bytes of heap that each engine takes for a step: what flights of many steps take more than
 * flights of few. Run with --expose-gc and a young generation so large that nothing is collected in between.
 */
import { aerodynamicModels } from '../../src/aerodynamics/index.js';
import { createCompiledEngine } from '../../src/flight/engine/compiled.js';
import { createFlightEngine } from '../../src/flight/engine/general.js';
import { flightProblem } from '../../src/flight/problem.js';
import { degrees, mph, rpm } from '../../src/units/index.js';

const FLIGHTS = 5000;
const [FEW, MANY] = [1e-1, 1e-6] as const;

const problem = flightProblem(
  { ballSpeed: mph(150), launchAngle: degrees(12), spinRate: rpm(2600) },
  { aerodynamics: aerodynamicModels['fitted-modern'] },
);
const general = createFlightEngine();
const compiled = createCompiledEngine(false);
const engines = {
  general: (tolerance: number) => general.fly(problem, tolerance, 60),
  compiled: (tolerance: number) => compiled.fly(problem, tolerance, 60),
};

function bytesPerFlight(fly: (tolerance: number) => unknown, tolerance: number): number {
  for (let i = 0; i < FLIGHTS; i++) fly(tolerance);
  globalThis.gc?.();
  const before = process.memoryUsage().heapUsed;
  for (let i = 0; i < FLIGHTS; i++) fly(tolerance);
  return (process.memoryUsage().heapUsed - before) / FLIGHTS;
}

const few = general.fly(problem, FEW, 60).steps;
const steps = general.fly(problem, MANY, 60).steps - few;
const bytes = Object.entries(engines).map(([name, fly]) => {
  const [least, most] = [bytesPerFlight(fly, FEW), bytesPerFlight(fly, MANY)];
  return [name, (most - least) / steps] as const;
});
console.log(JSON.stringify({ steps, bytesPerStep: Object.fromEntries(bytes) }));
