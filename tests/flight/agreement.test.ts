import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { aerodynamicModels, fly, type Launch, metres, pathOf, type Scene } from '../../src/index.js';
import { flyReference } from '../../src/reference.js';
import { anyLaunch, anyScene } from './support.js';

/** Distance between two landing points [m], both in the plane of the ground. */
function miss(launch: Launch, scene: Scene, tolerance: number): number {
  const own = fly(launch, scene, { tolerance: metres(tolerance) });
  const judge = flyReference(launch, scene);
  expect(own.ended).toBe(judge.ended);
  if (own.ended !== 'landed') return 0;
  const a = own.landing.position;
  const b = judge.landing.position;
  return Math.max(Math.hypot(a.x - b.x, a.y - b.y, a.z - b.z), Math.abs(own.apex - judge.apex));
}

describe('the engine against odex at 1e-13 over the whole domain', () => {
  it.each(Object.keys(aerodynamicModels))('stays below 1 mm at the default tolerance: %s', (aerodynamics) => {
    fc.assert(
      fc.property(anyLaunch, anyScene, (launch, scene) => {
        expect(miss(launch, { ...scene, aerodynamics }, 1e-4)).toBeLessThan(1e-3);
      }),
      { numRuns: 300, seed: 7 },
    );
  });

  it('agrees to 1e-6 m at a tight tolerance', () => {
    fc.assert(
      fc.property(anyLaunch, anyScene, (launch, scene) => {
        expect(miss(launch, scene, 1e-8)).toBeLessThan(1e-6);
      }),
      { numRuns: 300, seed: 8 },
    );
  });

  it('interpolates the path to 1 mm at the default tolerance', () => {
    fc.assert(
      fc.property(anyLaunch, (launch) => {
        const own = fly(launch);
        const fine = fly(launch, {}, { tolerance: metres(1e-9) });
        if (own.hangTime === 0) return;
        const a = pathOf(own, 50);
        const b = pathOf(fine, 50);
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
