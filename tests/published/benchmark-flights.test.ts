import { describe, expect, it } from 'vitest';
import { readReferenceFlights, referencePath, testLaw } from '../../bench/performance/work-item.js';
import { fly, metres, toDegrees } from '../../src/index.js';

/**
 * The 1,000 flights every library of the benchmark flies. Their answers come from 80-bit extrapolation of order 18
 * with steps of 0.05 s (bench/peers/truth.cpp) and were confirmed to 6e-12 by SciPy's DOP853 at 1e-13
 * (bench/peers/truth_check.py).
 */
const flights = readReferenceFlights(referencePath, testLaw);

function worstAt(tolerance: number): Record<'landing' | 'apex' | 'time' | 'angle', number> {
  const worst = { landing: 0, apex: 0, time: 0, angle: 0 };
  for (const { launch, scene, answer } of flights) {
    const { ended, landing, apex, hangTime, descentAngle } = fly(launch, scene, {
      tolerance: metres(tolerance),
    });
    expect(ended).toBe('landed');
    const { x, z } = landing.position;
    worst.landing = Math.max(worst.landing, Math.hypot(x - answer.x, z - answer.z));
    worst.apex = Math.max(worst.apex, Math.abs(apex - answer.apex));
    worst.time = Math.max(worst.time, Math.abs(hangTime - answer.time));
    worst.angle = Math.max(worst.angle, Math.abs(toDegrees(descentAngle) - answer.angle));
  }
  return worst;
}

describe('the flights of the benchmark', () => {
  it('are all there', () => {
    expect(flights.length).toBe(1000);
  });

  it('are reproduced to a nanometre at the tightest tolerance', () => {
    const { landing, apex, time, angle } = worstAt(1e-9);
    expect(landing).toBeLessThan(1e-9);
    expect(apex).toBeLessThan(1e-9);
    expect(time).toBeLessThan(1e-9);
    expect(angle).toBeLessThan(1e-9);
  });

  it.each([1e-2, 1e-3, 1e-4, 1e-5, 1e-6, 1e-7, 1e-8])('land within the tolerance of %s m', (tolerance) => {
    const { landing, apex } = worstAt(tolerance);
    expect(landing).toBeLessThan(tolerance);
    expect(apex).toBeLessThan(tolerance);
  });
});
