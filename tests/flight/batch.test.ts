import { describe, expect, it } from 'vitest';
import { loadBatchKernel } from '../../src/batch.js';
import { createCompiledEngine } from '../../src/flight/engine/compiled.js';
import { flightProblem } from '../../src/flight/problem.js';
import {
  degrees,
  flyMany,
  type LaunchColumns,
  metres,
  metresPerSecond,
  mph,
  rpm,
  type Scene,
  seconds,
} from '../../src/index.js';
import { stream } from '../../src/numerics/index.js';
import { resolveScene } from '../../src/scene/scene.js';

const COUNT = 1500;

/** Launches over the whole domain, among them balls without spin, driven into the ground, slow and spinning fast. */
function launches(): LaunchColumns {
  const draw = stream(23, 0);
  const column = (min: number, max: number): Float64Array =>
    Float64Array.from({ length: COUNT }, () => min + (max - min) * draw.uniform());
  const spinRate = column(0, 2100);
  spinRate.fill(0, 0, 20);
  return {
    ballSpeed: column(5, 110),
    launchAngle: column(-0.1, 1.2),
    launchDirection: column(-0.4, 0.4),
    spinRate,
    spinAxisTilt: column(-3, 3),
    rifleSpin: column(-100, 100),
  };
}

const scenes: readonly Scene[] = [
  {},
  {
    wind: { along: -12, across: 7 },
    ground: { elevation: -60, slope: 0.05, crossSlope: -0.04 },
  } as unknown as Scene,
  { aerodynamics: 'smits-smith-1994', ground: { elevation: 3 } } as unknown as Scene,
];

describe('the WebAssembly kernel', () => {
  // Below 2e-5 the top of a flight is stepped onto; at 1e-8 the general engine flies.
  it.each([1, 1e-2, 1e-4, 1e-5, 3e-6, 1e-8])(
    'gives the flights of the JavaScript engine at a tolerance of %s m',
    async (tolerance) => {
      const kernel = await loadBatchKernel();
      if (kernel === undefined) throw new Error('this runtime has no WebAssembly SIMD');
      const columns = launches();
      for (const scene of scenes) {
        const options = { tolerance: metres(tolerance) };
        const plain = flyMany(columns, scene, options);
        const batch = flyMany(columns, scene, { ...options, kernel });
        for (const [name, values] of Object.entries(plain) as [keyof typeof plain, Float64Array][]) {
          for (let i = 0; i < COUNT; i++) {
            expect(Number.isFinite(values[i])).toBe(true);
            // Rounding, magnified where a flight is chaotic in its step choice; a thousandth of the tolerance at most.
            const difference = Math.abs((batch[name][i] as number) - (values[i] as number));
            expect(difference).toBeLessThan(Math.max(1e-8, 1e-3 * tolerance));
          }
        }
      }
    },
  );

  it.each([1e-2, 1e-4, 1e-5])(
    'ends a flight at its time limit as the JavaScript engine does: %s m',
    async (tolerance) => {
      const kernel = await loadBatchKernel();
      const columns = launches();
      const endings = new Set<number>();
      for (const scene of scenes) {
        for (const timeLimit of [0.7, 2, 4.3]) {
          const options = { tolerance: metres(tolerance), timeLimit: seconds(timeLimit) };
          const plain = flyMany(columns, scene, options);
          const batch = flyMany(columns, scene, { ...options, kernel });
          expect([...batch.ended]).toEqual([...plain.ended]);
          for (const ended of plain.ended) endings.add(ended);
          for (let i = 0; i < COUNT; i++) {
            expect(plain.hangTime[i]).toBeLessThanOrEqual(timeLimit);
            const difference = Math.abs((batch.carry[i] as number) - (plain.carry[i] as number));
            expect(difference).toBeLessThan(Math.max(1e-8, 1e-3 * tolerance));
          }
        }
      }
      expect(endings.size).toBeGreaterThan(1);
    },
  );

  it('gives a flight the same numbers whatever flies beside it', async () => {
    const kernel = await loadBatchKernel();
    const columns = launches();
    const whole = flyMany(columns, {}, { kernel });
    const tail = Object.fromEntries(
      Object.entries(columns).map(([name, column]) => [name, (column as Float64Array).slice(700)]),
    ) as unknown as LaunchColumns;
    expect([...flyMany(tail, {}, { kernel }).carry]).toEqual([...whole.carry.slice(700)]);
  });
});

describe('the compiled engine', () => {
  it.each(['fitted-modern', 'smits-smith-1994', 'penner-bearman-harvey'] as const)(
    'flies an ordinary drive itself, without the general engine: %s',
    (id) => {
      const launch = { ballSpeed: mph(150), launchAngle: degrees(12), spinRate: rpm(2600) };
      const problem = flightProblem(launch, resolveScene({ aerodynamics: id }));
      expect(createCompiledEngine(false).fly(problem, 1e-4, 60)).toBeDefined();
    },
  );

  it.each([
    { kind: 'log', roughness: metres(0.0002) },
    { kind: 'log', roughness: metres(0.03) },
    { kind: 'log', roughness: metres(0.5), displacement: metres(2) },
    { kind: 'power', exponent: 0.143 },
  ] as const)(
    'flies it in a wind that changes with height, in at most twice as many steps: %o',
    (profile) => {
      const launch = { ballSpeed: mph(150), launchAngle: degrees(12), spinRate: rpm(2600) };
      const wind = { along: metresPerSecond(-6), across: metresPerSecond(4) };
      const stepsIn = (scene: Scene): number => {
        const engine = createCompiledEngine(true);
        expect(engine.fly(flightProblem(launch, resolveScene(scene)), 1e-4, 60)).toBeDefined();
        return engine.track().time.length;
      };
      expect(stepsIn({ wind: { ...wind, profile } })).toBeLessThanOrEqual(2 * stepsIn({ wind }));
    },
  );
});
