import { openGpu } from '../../src/gpu/index.js';
import { isFairflightError, plainColumns } from '../../src/index.js';
import { cases, design, histogram, mapSize, question } from './cases.js';

/** Runs in the browser: flies every case on its card and posts what came out to where the page came from. */

async function refused(call: () => Promise<unknown>): Promise<unknown> {
  try {
    return await call();
  } catch (error) {
    return isFairflightError(error) ? [error.code, error.field] : String(error);
  }
}

async function flown(): Promise<unknown> {
  const gpu = await openGpu();
  if (gpu === undefined) return { card: null };
  const [first] = cases;
  if (first === undefined) throw new Error('no cases');
  const { launches } = first;
  const flights = [];
  for (const { launches, scene, conditions = {} } of cases) {
    flights.push(plainColumns(await gpu.flyMany(launches, scene, { conditions })));
  }
  const carryMap = plainColumns(await gpu.carryMap(question, {}, mapSize));
  const summary = plainColumns(await gpu.summarise(design, {}, { histograms: { carry: histogram } }));
  const wrong = [
    await refused(() => gpu.flyMany({ ...launches, ballSpeed: [1000] })),
    await refused(() => gpu.flyMany(launches, {}, { tolerance: 1e-6 } as never)),
    await refused(() => gpu.carryMap(question, {}, { tolerance: 1e-6 } as never)),
    await refused(() => gpu.flyMany(launches, { aerodynamics: roughModel })),
    await refused(() =>
      gpu.summarise({ kind: 'grid', factors: [{ name: 'launch.ballSpeed', values: [60 as never] }] }),
    ),
  ];
  gpu.close();
  wrong.push(await refused(() => gpu.flyMany(launches)));
  return { card: gpu.name, flights, carryMap, summary, wrong };
}

/** A law with steps in it, which no table holds. */
const roughModel = {
  id: 'rough',
  label: 'rough',
  source: { authors: 'nobody', year: 2026, work: 'none', confidence: 'fitted' },
  validity: { reynolds: { min: 0, max: 1e6 }, spinRatio: { min: 0, max: 1 } },
  extrapolation: 'none',
  spinEntering: 'across',
  spinDecay: 2e-5,
  dragCoefficient: (reynolds: number, spinRatio: number) =>
    0.2 + (Math.floor(reynolds * spinRatio) % 2) * 0.1,
  liftCoefficient: () => 0.2,
} as const;

flown().then(
  (result) => fetch('/', { method: 'POST', body: JSON.stringify(result) }),
  (error) => fetch('/', { method: 'POST', body: JSON.stringify({ error: `${error} ${error.stack}` }) }),
);
