import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type Flight,
  fly,
  type Launch,
  metres,
  metresPerSecond,
  type Scene,
  seconds,
} from '../../src/index.js';
import { flyReference } from '../../src/reference.js';
import { radians, radiansPerSecond } from '../../src/units/index.js';
import { anyLaunch, anyScene } from './support.js';

/** Height of the last state above the ground plane [m]. */
function clearance({ landing }: Flight, scene: Scene): number {
  const { elevation = 0, slope = 0, crossSlope = 0 } = scene.ground ?? {};
  const { x, y, z } = landing.position;
  return y - elevation - Math.tan(slope) * x - Math.tan(crossSlope) * z;
}

describe('the time limit', () => {
  it('ends a flight that would land after it, and no other', () => {
    fc.assert(
      fc.property(
        anyLaunch,
        anyScene,
        fc.constantFrom(-0.3, -0.03, -1e-3, -2e-4, 2e-4, 1e-3, 0.03, 0.3),
        fc.constantFrom(1e-2, 1e-4, 1e-5),
        (launch, scene, later, tolerance) => {
          const whole = fly(launch, scene, { tolerance: metres(1e-5) });
          const timeLimit = whole.hangTime + later;
          if (whole.ended !== 'landed' || timeLimit < 0.01) return;
          const cut = fly(launch, scene, { tolerance: metres(tolerance), timeLimit: seconds(timeLimit) });
          expect(cut.hangTime).toBeLessThanOrEqual(timeLimit);
          expect(clearance(cut, scene)).toBeGreaterThan(-1e-6);
          // At 1 cm the time of landing is not known to a millisecond.
          if (Math.abs(later) > 1e-3 || tolerance < 1e-3)
            expect(cut.ended).toBe(later > 0 ? 'landed' : 'time-limit');
        },
      ),
      { numRuns: 2000, seed: 12 },
    );
  });

  it('lands a ball whose step to the limit ends underground', () => {
    const launch: Launch = {
      ballSpeed: metresPerSecond(87.20122186493802),
      launchAngle: radians(-0.40590303675579165),
      spinRate: radiansPerSecond(254.5451156328135),
    };
    const scene: Scene = {
      wind: { along: metresPerSecond(-12), across: metresPerSecond(7) },
      ground: { elevation: metres(-60), slope: radians(0.05), crossSlope: radians(-0.04) },
    };
    const judge = flyReference(launch, scene);
    const own = fly(launch, scene, { timeLimit: seconds(3) });
    expect(judge.hangTime).toBeLessThan(3);
    expect(own.ended).toBe('landed');
    expect(Math.abs(own.hangTime - judge.hangTime)).toBeLessThan(1e-5);
  });
});
