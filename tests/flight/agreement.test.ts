import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { defaultAerodynamics } from '../../src/aerodynamics/index.js';
import {
  type AerodynamicModel,
  aerodynamicModels,
  degrees,
  fly,
  type Launch,
  metres,
  metresPerSecond,
  pathOf,
  type Scene,
  type WindProfile,
} from '../../src/index.js';
import { tabulatedModel } from '../../src/models.js';
import { flyReference } from '../../src/reference.js';
import { kilogramsPerCubicMetre, radians, radiansPerSecond } from '../../src/units/index.js';
import { even } from '../even.js';
import monotoneGrid from '../published/data/monotone-grid.json' with { type: 'json' };
import { anyLaunch, anyScene, denseAir, missOf } from './support.js';

describe('the engine against odex at 1e-13 over the whole domain', () => {
  it.each(Object.keys(aerodynamicModels))('stays below 1 mm at the default tolerance: %s', (aerodynamics) => {
    fc.assert(
      fc.property(anyLaunch, anyScene, (launch, scene) => {
        expect(missOf(launch, { ...scene, aerodynamics })).toBeLessThan(1e-3);
      }),
      { numRuns: 300, seed: 7 },
    );
  });

  it('stays below 1 mm in winds that change with height', () => {
    // From open water to woods, at the height of the weather services' masts.
    const anyProfile: fc.Arbitrary<WindProfile> = fc.oneof(
      even(0.001, 0.5).map((roughness) => ({
        kind: 'log' as const,
        roughness: metres(roughness),
        referenceHeight: metres(10),
      })),
      even(0.05, 0.4).map((exponent) => ({ kind: 'power' as const, exponent, referenceHeight: metres(10) })),
    );
    fc.assert(
      fc.property(anyLaunch, anyScene, anyProfile, (launch, scene, profile) => {
        const wind = { along: metresPerSecond(0), across: metresPerSecond(0), ...scene.wind, profile };
        expect(missOf(launch, { ...scene, wind })).toBeLessThan(1e-3);
      }),
      { numRuns: 300, seed: 11 },
    );
  });

  it('stays below 1 mm with a law of one’s own in which Re and S do not part', () => {
    // Not a(S) + b(S) c(Re), so that the compiled kernel cannot take it.
    const own: AerodynamicModel = {
      ...defaultAerodynamics,
      id: 'own',
      spinEntering: 'across',
      dragCoefficient: (re, s) => 0.21 + 0.2 * s + 0.02 * Math.sin(re / 40_000 + 3 * s),
      liftCoefficient: (re, s) => ((0.4 * s) / (0.2 + s)) * (1 + 0.1 * Math.cos(re / 60_000 - 2 * s)),
    };
    fc.assert(
      fc.property(anyLaunch, anyScene, (launch, scene) => {
        expect(missOf(launch, { ...scene, aerodynamics: own })).toBeLessThan(1e-3);
      }),
      { numRuns: 300, seed: 12 },
    );
  });

  it('stays below 1 mm by a grid of one’s own', () => {
    // A grid has a corner at every node, and this one, invented for the test of the interpolation, turns lift over
    // twice between neighbours.
    const own = tabulatedModel({
      id: 'own',
      source: { authors: 'nobody', year: 2026, work: 'an invented grid', confidence: 'assumption' },
      ...monotoneGrid.grid,
    });
    fc.assert(
      fc.property(anyLaunch, anyScene, (launch, scene) => {
        expect(missOf(launch, { ...scene, aerodynamics: own })).toBeLessThan(1e-3);
      }),
      { numRuns: 300, seed: 13 },
    );
  });

  it('agrees to 1e-6 m at a tight tolerance', () => {
    fc.assert(
      fc.property(anyLaunch, anyScene, (launch, scene) => {
        expect(missOf(launch, scene, 1e-8)).toBeLessThan(1e-6);
      }),
      { numRuns: 300, seed: 8 },
    );
  });

  // Balls that are lifted out of a fall: they top out a little above where they began, within one ordinary step.
  it.each([
    [18.453006, -0.135333, -1.2082, 2100, 11.3018, 1.444138, -14.04008, -17.28632],
    [28.448712, -1.392485, 4.216427, 1758.533, 29.270184, 1.070128, -18.34056, -16.24492],
    [26.917168, 0.026385, -16.175848, 2100, -41.026884, 1.449986, -5.57088, 18.42056],
  ])(
    'sees the apex of a ball lifted out of a fall: %d m/s at %d°',
    (speed, angle, direction, spin, tilt, density, along, across) => {
      const launch: Launch = {
        ballSpeed: metresPerSecond(speed),
        launchAngle: degrees(angle),
        launchDirection: degrees(direction),
        spinRate: radiansPerSecond(spin),
        spinAxisTilt: degrees(tilt),
      };
      const scene: Scene = {
        air: { ...denseAir, density: kilogramsPerCubicMetre(density) },
        wind: { along: metresPerSecond(along), across: metresPerSecond(across) },
        ground: { elevation: metres(-18) },
      };
      const judge = flyReference(launch, scene);
      for (const tolerance of [1e-2, 1e-4, 1e-8]) {
        const { apex } = fly(launch, scene, { tolerance: metres(tolerance) });
        expect(Math.abs(apex - judge.apex)).toBeLessThan(0.02 * judge.apex);
      }
    },
  );

  it('meets sloping ground that is left again within a tenth of a second', () => {
    // The ball dips under the slope and would rise out of it: it has landed.
    const launch: Launch = {
      ballSpeed: metresPerSecond(104.932812),
      launchAngle: radians(0.028090376),
      launchDirection: radians(-0.232888358),
      spinRate: radiansPerSecond(2100),
      spinAxisTilt: radians(-0.579613373),
    };
    const scene: Scene = {
      air: { density: kilogramsPerCubicMetre(1.10820225), viscosity: denseAir.viscosity },
      wind: { along: metresPerSecond(-0.9392), across: metresPerSecond(-17.83928) },
      ground: {
        elevation: metres(-0.14714),
        slope: radians(0.0490884),
        crossSlope: radians(-0.09117320000000001),
      },
      aerodynamics: 'penner-bearman-harvey',
    };
    expect(flyReference(launch, scene).hangTime).toBeLessThan(0.1);
    expect(missOf(launch, scene)).toBeLessThan(1e-3);
  });

  it('flies a ball that spins about its own path in few steps, however fine', () => {
    // Sent straight up, it stays on its axis. Under a lift that rises from 0 with an infinite slope it takes 14,000 steps
    // at the default tolerance, and more than are allowed at finer ones.
    const launch: Launch = {
      ballSpeed: metresPerSecond(20.923843319861604),
      launchAngle: degrees(90),
      spinRate: radiansPerSecond(1e-9),
      spinAxisTilt: radians(-2.067167966062084),
      rifleSpin: radiansPerSecond(-2049.6),
    };
    // Ground above the ball ends the flight at its top: on the way down it may leave its axis.
    const scene: Scene = { ground: { elevation: metres(248) } };
    for (const aerodynamics of Object.keys(aerodynamicModels)) {
      for (const tolerance of [1e-4, 1e-8]) {
        const flight = fly(launch, { ...scene, aerodynamics }, { tolerance: metres(tolerance) });
        expect(flight.ended).toBe('below-ground');
        expect(flight.carry).toBeLessThan(1e-6);
        expect(flight.track.time.length).toBeLessThan(300);
      }
    }
  });

  it('keeps the nodes of the path in the order of time', () => {
    fc.assert(
      fc.property(anyLaunch, anyScene, fc.constantFrom(1, 1e-2, 1e-4), (launch, scene, tolerance) => {
        const { time } = fly(launch, scene, { tolerance: metres(tolerance) }).track;
        expect(time).toEqual([...time].sort((a, b) => a - b));
      }),
      { numRuns: 4000, seed: 10 },
    );
  });

  it('interpolates the path to 1 mm at the default tolerance', () => {
    fc.assert(
      fc.property(anyLaunch, (launch) => {
        const own = fly(launch);
        const fine = fly(launch, {}, { tolerance: metres(1e-9) });
        if (own.hangTime === 0) return;
        const a = pathOf(own, { count: 50 });
        const b = pathOf(fine, { count: 50 });
        for (let i = 0; i < 50; i++) {
          const p = a[i]?.position ?? { x: 0, y: 0, z: 0 };
          const q = b[i]?.position ?? { x: 0, y: 0, z: 0 };
          expect(Math.hypot(p.x - q.x, p.y - q.y, p.z - q.z)).toBeLessThan(1e-3);
        }
      }),
      { numRuns: 200, seed: 9 },
    );
  });
});
