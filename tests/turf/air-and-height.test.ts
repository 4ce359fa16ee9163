import { describe, expect, it } from 'vitest';
import { defaultAir } from '../../src/air/index.js';
import { balls } from '../../src/ball/index.js';
import { biberLaw } from '../../src/turf/biber-2023.js';
import { runConstants } from '../../src/turf/constants.js';
import { brushing, hop, isRolling } from '../../src/turf/hop.js';
import { turfs } from '../../src/turf/index.js';
import { roll } from '../../src/turf/roll.js';
import { newRunState, TIME, VX, VY, WZ, X } from '../../src/turf/state.js';

const ball = balls.conforming;
const level = runConstants(turfs.normal, ball, defaultAir, 0, 0, 60);
/** ρ A / 2m [1/m], by hand. */
const area = (defaultAir.density * Math.PI * ball.radius ** 2) / (2 * ball.mass);

describe('a hop', () => {
  it('is slowed by the air with CD 0.30 (an assumption, docs/models.md)', () => {
    const state = newRunState();
    state[VX] = 20;
    // High enough not to touch the blades.
    state[VY] = 0.5;
    hop(level, state);
    // So flat that only the speed along counts: dv/dt = −k v² with k = 0.30 ρA/2m, so v = v₀/(1 + k v₀ t).
    const slower = 20 / (state[VX] as number) - 1;
    expect(slower / (20 * (state[TIME] as number) * 0.3 * area)).toBeCloseTo(1, 2);
  });

  it('is one above 2.5 mm, and meets the whole of the rolling resistance there, none of it above 7.5 mm', () => {
    // Penner 2002 (from memory) switches at 5 mm, half way.
    expect([isRolling(0.00249), isRolling(0.00251)]).toEqual([true, false]);
    expect([brushing(0), brushing(0.0025), brushing(0.0075), brushing(1)]).toEqual([1, 1, 0, 0]);
    expect(brushing(0.005)).toBeCloseTo(0.5, 12);
    expect(brushing(0.0026)).toBeLessThan(1);
    expect(brushing(0.0074)).toBeGreaterThan(0);
  });
});

describe('a rolling ball', () => {
  it('is slowed by turf and by air with CD 0.45 (an assumption, docs/models.md)', () => {
    const speed = 6;
    const state = newRunState();
    state[VX] = speed;
    state[WZ] = -speed / ball.radius;
    roll(level, state);
    // dv/dt = −(5/7)(μ g + 0.45 ρA/2m v²), so x = ln(1 + k v²/d)/2k to rest, with d = 5/7 μ g and k = 5/7 · 0.45 ρA/2m.
    const free = (ball.mass * ball.radius ** 2) / (ball.inertia + ball.mass * ball.radius ** 2);
    const d = free * turfs.normal.rollingResistance * 9.80665;
    const k = free * 0.45 * area;
    expect(state[X]).toBeCloseTo(Math.log(1 + (k * speed * speed) / d) / (2 * k), 6);
  });
});

describe('the wall of the turf', () => {
  it('fades in proportion below 3 m/s into the plane (an assumption, docs/models.md)', () => {
    const { bounce } = turfs.normal;
    if (bounce.model !== 'biber-2023') throw new Error('another model');
    const { tilt } = biberLaw(bounce);
    const share = (normalSpeed: number): number => tilt(20, normalSpeed, 0.6) / bounce.tilt;
    expect([share(0), share(3), share(9)]).toEqual([0, 1, 1]);
    expect(share(1.5)).toBeCloseTo(0.5, 12);
    expect(share(2.9)).toBeCloseTo(2.9 / 3, 12);
  });
});
