import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { windRatio } from '../../src/air/wind-ratio.js';
import { createCompiledEngine } from '../../src/flight/engine/compiled.js';
import {
  type ChangingProfile,
  setWind,
  WIND_CELLS,
  WIND_HEAD_NUMBERS,
  WIND_NUMBERS,
  WIND_SHIFT,
  type WindTable,
  windTable,
} from '../../src/flight/engine/shear.js';
import { isAloft, lowestTarget, timeToFall, timeToRise } from '../../src/flight/engine/step-decisions.js';
import { integrateReference } from '../../src/flight/fly-reference.js';
import { flightProblem } from '../../src/flight/problem.js';
import { degrees, fly, metres, metresPerSecond, rpm, type Scene } from '../../src/index.js';
import { resolveScene } from '../../src/scene/scene.js';
import { even } from '../even.js';
import { anyLaunch, anyScene } from './support.js';

const anyProfile: fc.Arbitrary<ChangingProfile> = fc.oneof(
  fc
    .record({ exponent: even(-4, Math.log10(0.5)), displacement: even(0, 3), reference: even(6, 30) })
    .map(({ exponent, displacement, reference }) => ({
      kind: 'log' as const,
      roughness: metres(10 ** exponent),
      displacement: metres(displacement),
      referenceHeight: metres(reference),
    })),
  fc.record({ exponent: even(0.05, 0.4), reference: even(6, 30) }).map(({ exponent, reference }) => ({
    kind: 'power' as const,
    exponent,
    referenceHeight: metres(reference),
  })),
);

/** The ratio a table gives, by the arithmetic of the kernel. */
function ratioFrom({ cells, above, bits }: WindTable, height: number): number {
  const [kink = 0, displaced = 0, lowSlope = 0] = cells;
  if (height < kink) return lowSlope * height;
  const y = height - displaced;
  above[0] = y;
  const at = WIND_HEAD_NUMBERS + (((bits[0] ?? 0) >> WIND_SHIFT) & (WIND_CELLS - 1)) * WIND_NUMBERS;
  const [foot = 0, c0 = 0, c1 = 0, c2 = 0, c3 = 0] = cells.subarray(at, at + WIND_NUMBERS);
  const t = y - foot;
  return c0 + t * (c1 + t * (c2 + t * c3));
}

describe('a wind that changes with height', () => {
  it('is in its table what its law says, to 1e-7 of the wind', () => {
    const table = windTable();
    fc.assert(
      fc.property(anyProfile, even(-5, 6.2), (profile, height) => {
        setWind(table, profile);
        const y = Math.exp(height);
        expect(Math.abs(ratioFrom(table, y) - windRatio(profile, y))).toBeLessThan(1e-7);
      }),
      { numRuns: 2000, seed: 21 },
    );
  });

  it('flies by the kernel within 0.2 mm of the judge at the default tolerance, three in four of the flights that it flies in uniform wind', () => {
    const engine = createCompiledEngine(false);
    let [flown, all] = [0, 0];
    fc.assert(
      fc.property(anyLaunch, anyScene, anyProfile, (launch, scene, profile) => {
        const wind = { along: metresPerSecond(0), across: metresPerSecond(0), ...scene.wind, profile };
        if (engine.fly(flightProblem(launch, resolveScene(scene)), 1e-4, 60) === undefined) return;
        all++;
        const problem = flightProblem(launch, resolveScene({ ...scene, wind }));
        const end = engine.fly(problem, 1e-4, 60);
        if (end === undefined) return;
        flown++;
        const judge = integrateReference(problem, 60);
        expect(end.ending).toBe(judge.ending);
        const miss = [0, 1, 2].map((i) => (end.state[i] as number) - (judge.state[i] as number));
        expect(Math.hypot(...miss)).toBeLessThan(2e-4);
      }),
      { numRuns: 300, seed: 22 },
    );
    expect(flown / all).toBeGreaterThan(0.75);
  });

  it('is no wind where it does not blow: the same bits as calm air', () => {
    fc.assert(
      fc.property(anyLaunch, anyProfile, (launch, profile) => {
        const wind = { along: metresPerSecond(0), across: metresPerSecond(0), profile };
        const scene: Scene = { ground: { elevation: metres(-5) } };
        expect(fly(launch, { ...scene, wind }).landing).toEqual(fly(launch, scene).landing);
      }),
      { numRuns: 100, seed: 23 },
    );
  });

  it('leaves the kernel to the general engine at tolerances too fine for its table', () => {
    const wind = { along: metresPerSecond(5), profile: { kind: 'power', exponent: 0.143 } } as const;
    const launch = { ballSpeed: metresPerSecond(60), launchAngle: degrees(12), spinRate: rpm(2600) };
    const problem = flightProblem(launch, resolveScene({ wind: { across: metresPerSecond(0), ...wind } }));
    const engine = createCompiledEngine(false);
    expect(engine.fly(problem, 1e-4, 60)).toBeDefined();
    expect(engine.fly(problem, 1e-6, 60)).toBeUndefined();
  });
});

describe('steps at the kink of a wind', () => {
  it('a node on it is aloft when the ball climbs', () => {
    expect(isAloft(0.03, 1, 0.03, 1e-4)).toBe(true);
    expect(isAloft(0.03, -1, 0.03, 1e-4)).toBe(false);
    expect(isAloft(0.031, -1, 0.03, 1e-4)).toBe(true);
    expect(isAloft(0.029, 1, 0.03, 1e-4)).toBe(false);
  });

  it('times to it are those of a parabola', () => {
    const [climb, fall] = [-12, -9];
    const t = timeToFall(3, climb, fall);
    expect(climb * t + 0.5 * fall * t * t).toBeCloseTo(-3, 12);
    const up = timeToRise(0.5, 4, fall);
    expect(4 * up + 0.5 * fall * up * up).toBeCloseTo(0.5, 12);
  });

  it('a step on the way down ends at the kink, or passes a 64th of the height over the singularity', () => {
    expect(lowestTarget(0.03, 0, 1)).toBe(0.03);
    expect(lowestTarget(0.0002, 0, 6.4)).toBeCloseTo(0.1, 12);
  });
});
