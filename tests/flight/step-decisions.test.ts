import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decide } from '../../src/flight/engine/build-time/decisions.js';
import {
  aimsAtGround,
  givesUp,
  hidesLanding,
  MOST_ATTEMPTS,
  nearsGround,
  seenRising,
  stepTowardsGround,
  timeToGround,
  withinTime,
  withoutTurning,
} from '../../src/flight/engine/step-decisions.js';
import { even } from '../even.js';

const step = even(1e-3, 1.5);
const climb = even(-60, 60);
const height = even(0, 80);
const fall = even(-30, -0.1);

describe('the decisions of a step', () => {
  it('never pass the time limit, and shorten a step only for what lies ahead', () => {
    fc.assert(
      fc.property(step, climb, even(-20, 20), even(0, 60), (h, vy, ay, t) => {
        expect(withinTime(h, t, t + 0.5)).toBeCloseTo(Math.min(h, 0.5), 12);
        const rising = seenRising(h, vy, ay);
        expect(rising).toBeGreaterThanOrEqual(0.1 * h * (1 - 1e-15));
        expect(rising).toBeLessThanOrEqual(h);
        // A step that ends short of the turn, and was not as short as it may be, was not shortened.
        if (vy + ay * rising <= 0 && rising > 0.11 * h) expect(rising).toBe(h);
      }),
    );
  });

  it('turn the air velocity by no more than its own size within a step', () => {
    fc.assert(
      fc.property(step, even(1, 1e4), even(0, 1e5), (h, uu, kk) => {
        const shortened = withoutTurning(h, uu, kk);
        expect(shortened * Math.sqrt(kk)).toBeLessThanOrEqual(Math.max(Math.sqrt(uu) * (1 + 1e-12), 0));
      }),
    );
  });

  it('find the time to the ground on a parabola, and go there in one step or two', () => {
    fc.assert(
      fc.property(step, climb, height, fall, (h, up, from, g) => {
        const t = timeToGround(from, up, g);
        expect(from + up * t + 0.5 * g * t * t).toBeCloseTo(0, 9);
        if (t < 3 * h) {
          const taken = stepTowardsGround(h, t);
          if (aimsAtGround(h, t)) expect(taken).toBe(t);
          else expect(taken).toBeLessThanOrEqual(h);
        }
        // A ground within a step and a half is near: the top of the way there lies before its middle.
        if (t < 1.5 * h) expect(nearsGround(h, up, g)).toBe(true);
      }),
    );
  });

  it('hand over what the ends of a step may hide', () => {
    expect(hidesLanding(0, 5, 5, -1, -9, false, false)).toBe(true);
    expect(hidesLanding(3, 5, 5, -1, -9, false, false)).toBe(false);
    expect(hidesLanding(3, 5, 5, -1, -9, false, true)).toBe(true);
    expect(hidesLanding(1, -5, -5, 1, 2, false, false)).toBe(true);
    expect(hidesLanding(1, -5, -5, -1, -6, true, true)).toBe(false);
  });

  it('give up after bounded work', () => {
    expect(givesUp(MOST_ATTEMPTS, 0.1)).toBe(false);
    expect(givesUp(MOST_ATTEMPTS + 1, 0.1)).toBe(true);
    expect(givesUp(1, -1e-13)).toBe(true);
  });

  it('are written into the kernel as they stand', () => {
    const written = new Function('h', 'vy', 'ay', `return ${decide('seenRising', 'h', 'vy', 'ay - 0')}`);
    fc.assert(
      fc.property(step, climb, even(-20, 20), (h, vy, ay) => {
        expect(written(h, vy, ay)).toBe(seenRising(h, vy, ay));
      }),
    );
    expect(decide('withinTime', 'next', 't', '2 * limit')).toBe(
      '(t + next > (2 * limit) ? (2 * limit) - t : next)',
    );
  });
});
