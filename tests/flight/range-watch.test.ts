import { describe, expect, it } from 'vitest';
import { fittedModern } from '../../src/aerodynamics/index.js';
import { equationsOfMotion } from '../../src/flight/equations.js';
import { fly } from '../../src/flight/index.js';
import { flightProblem } from '../../src/flight/problem.js';
import { rangeWarnings } from '../../src/flight/range-watch.js';
import { withDefaults } from '../../src/scene/scene.js';
import { degrees, metresPerSecond, mph, rpm } from '../../src/units/index.js';

const launch = { ballSpeed: mph(150), launchAngle: degrees(12), spinRate: rpm(2600) };

/** A model that only the general engine flies: its coefficients are no product of Re and S. */
const rough = {
  ...fittedModern,
  id: 'rough',
  dragCoefficient: (re: number, s: number): number => 0.25 + 0.02 * Math.sin((re / 1e5) * (1 + s)),
};

describe('what a flight has seen', () => {
  it.each([
    ['the compiled engine', fittedModern],
    ['the general engine', rough],
  ])('is Re = ρ U 2r / μ and S = r ω / U at the nodes of its track: %s', (_, model) => {
    const nothing = { reynolds: { min: 0, max: 1 }, spinRatio: { min: 0, max: 1e-3 } };
    const flight = fly(launch, { aerodynamics: { ...model, id: 'knows nothing', validity: nothing } });
    const { air, ball } = withDefaults({});
    const { state } = flight.track;
    const nodes = Array.from({ length: state.length / 7 }, (_, n) => state.slice(7 * n, 7 * n + 7));
    const speeds = nodes.map(([, , , vx = 0, vy = 0, vz = 0]) => Math.hypot(vx, vy, vz));
    const ratios = nodes.map((node, n) => (ball.radius * (node[6] ?? 0)) / (speeds[n] ?? 1));
    const value = (quantity: string): number =>
      flight.warnings.find((each) => each.quantity === quantity)?.value ?? Number.NaN;
    const reynolds = (air.density * 2 * ball.radius * Math.max(...speeds)) / air.viscosity;
    expect(value('reynolds') / reynolds).toBeCloseTo(1, 6);
    expect(value('spinRatio') / Math.max(...ratios)).toBeCloseTo(1, 3);
  });

  it('is told by the end that lies further out, relative to the end of the data it passed', () => {
    const model = {
      ...fittedModern,
      validity: { reynolds: { min: 1e5, max: 2e5 }, spinRatio: { min: 0, max: 1 } },
    };
    const told = (min: number, max: number): number | undefined =>
      rangeWarnings(model, { reynolds: { min, max }, spinRatio: { min: 0, max: 0.5 } })[0]?.value;
    // 80 % below against 5 % above, and 10 % below against twice above.
    expect(told(2e4, 2.1e5)).toBe(2e4);
    expect(told(9e4, 4e5)).toBe(4e5);
    expect(told(1e5, 2e5)).toBeUndefined();
  });
});

describe('the equations of motion', () => {
  const wind = { along: metresPerSecond(7), across: metresPerSecond(-2) };
  const rates = (state: readonly number[]): readonly number[] => {
    const out = new Float64Array(7).fill(Number.NaN);
    equationsOfMotion(flightProblem(launch, withDefaults({ wind })))(0, Float64Array.from(state), out);
    return [...out];
  };

  it('leave a ball that moves with the air to gravity alone, and its spin as it is', () => {
    const [x, y, z, ax, ay, az, spin] = rates([1, 2, 3, 7, 0, -2, 250]);
    expect([x, y, z]).toEqual([7, 0, -2]);
    expect([ax, ay, az]).toEqual([0, -9.80665, 0]);
    expect(Math.abs(spin as number)).toBe(0);
  });

  it('lift at right angles to the air speed and slow the ball along it', () => {
    const [, , , ax = 0, ay = 0, az = 0, spin = 0] = rates([0, 0, 0, 47, 10, -2, 250]);
    const [ux, uy] = [40, 10];
    expect(az).toBeCloseTo(0, 12);
    // Without gravity: the part along the air speed is drag, the part across it, turned by backspin, is lift.
    const [along, across] = [ax * ux + (ay + 9.80665) * uy, (ay + 9.80665) * ux - ax * uy];
    expect(along).toBeLessThan(0);
    expect(across).toBeGreaterThan(0);
    expect(spin).toBeLessThan(0);
  });

  it('give a ball without spin no lift, and no NaN', () => {
    const [, , , ax = 0, ay = 0, az = 0] = rates([0, 0, 0, 47, 10, -2, 0]);
    expect(az).toBeCloseTo(0, 12);
    expect((ay + 9.80665) * 40 - ax * 10).toBeCloseTo(0, 9);
  });
});
