import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { defaultAerodynamics } from '../../src/aerodynamics/index.js';
import { STANDARD_GRAVITY } from '../../src/gravity.js';
import {
  type AerodynamicModel,
  degrees,
  fly,
  metres,
  metresPerSecond,
  mph,
  pathOf,
  rpm,
  stateAt,
  toMetres,
} from '../../src/index.js';
import { kilogramsPerCubicMetre, pascalSeconds, radians, radiansPerSecond } from '../../src/units/index.js';
import { caught } from '../caught.js';
import { anyLaunch, anyScene, denseAir, noAir } from './support.js';

const runs = { numRuns: 200, seed: 20260101 };
const drive = { ballSpeed: mph(150), launchAngle: degrees(12), spinRate: rpm(2600) };

describe('limits', () => {
  it('without air flies the parabola of any mechanics text, whatever the spin', () => {
    fc.assert(
      fc.property(anyLaunch, (launch) => {
        const { carry, apex, hangTime } = fly(
          { ...launch, launchAngle: radians(Math.abs(launch.launchAngle)) },
          { air: noAir },
        );
        const a = Math.abs(launch.launchAngle);
        const v = launch.ballSpeed;
        expect(carry).toBeCloseTo((v * v * Math.sin(2 * a)) / STANDARD_GRAVITY, 6);
        expect(apex).toBeCloseTo((v * Math.sin(a)) ** 2 / (2 * STANDARD_GRAVITY), 6);
        expect(hangTime).toBeCloseTo((2 * v * Math.sin(a)) / STANDARD_GRAVITY, 6);
      }),
      runs,
    );
  });

  it('without spin and without side wind never leaves its vertical plane', () => {
    const flight = fly({ ...drive, spinRate: rpm(0), launchDirection: degrees(7) });
    expect(Math.abs(flight.curve)).toBeLessThan(1e-9);
  });

  it('calls a ball driven into the ground it stands on topped, and ends there', () => {
    const flight = fly({ ...drive, launchAngle: degrees(-3) });
    expect(flight.ended).toBe('topped');
    expect(flight.carry).toBe(0);
    expect(flight.hangTime).toBe(0);
    expect(flight.apex).toBe(0);
    expect(flight.warnings.map(({ code }) => code)).toEqual(['topped']);
    // Uphill, a launch below the slope is as good as one below the horizon; a ball too slow to be lifted is none either.
    const hill = { ground: { slope: degrees(10) } };
    expect(fly({ ...drive, launchAngle: degrees(8) }, hill).ended).toBe('topped');
    expect(fly({ ...drive, launchAngle: degrees(12) }, hill).ended).toBe('landed');
    expect(fly({ ...drive, launchAngle: degrees(0), spinRate: rpm(0) }).ended).toBe('topped');
    // From a raised tee the same launch is a flight.
    expect(fly({ ...drive, launchAngle: degrees(-3) }, { ground: { elevation: metres(-2) } }).ended).toBe(
      'landed',
    );
  });

  it('keeps still air when the wind blows with the ball for an instant: a tailwind as fast as the ball is no NaN', () => {
    const flight = fly(
      { ballSpeed: metresPerSecond(20), launchAngle: degrees(0), spinRate: rpm(0) },
      {
        wind: { along: metresPerSecond(20), across: metresPerSecond(0) },
        ground: { elevation: -10 as never },
      },
    );
    expect(Number.isFinite(flight.carry)).toBe(true);
  });
});

describe('symmetry and energy', () => {
  it('mirrors: reflecting launch, wind and slope in the vertical plane reflects the flight', () => {
    fc.assert(
      fc.property(anyLaunch, anyScene, (launch, scene) => {
        const mirrored = fly(
          {
            ...launch,
            launchDirection: radians(-(launch.launchDirection ?? 0)),
            spinAxisTilt: radians(-(launch.spinAxisTilt ?? 0)),
          },
          {
            ...scene,
            wind: {
              along: scene.wind?.along ?? metresPerSecond(0),
              across: metresPerSecond(-(scene.wind?.across ?? 0)),
            },
            ground: { ...scene.ground, crossSlope: radians(-(scene.ground?.crossSlope ?? 0)) },
          },
        );
        const flight = fly(launch, scene);
        expect(mirrored.side).toBeCloseTo(-flight.side, 6);
        expect(mirrored.carry).toBeCloseTo(flight.carry, 6);
        expect(mirrored.curve).toBeCloseTo(-flight.curve, 6);
      }),
      runs,
    );
  });

  it('never gains energy in still air', () => {
    fc.assert(
      fc.property(anyLaunch, (launch) => {
        const { track } = fly(launch, { air: denseAir });
        let last = Number.POSITIVE_INFINITY;
        for (let i = 0; i < track.time.length; i++) {
          const [, y, , vx, vy, vz] = track.state.slice(7 * i, 7 * i + 7) as [
            number,
            number,
            number,
            number,
            number,
            number,
          ];
          const energy = STANDARD_GRAVITY * y + (vx * vx + vy * vy + vz * vz) / 2;
          expect(energy).toBeLessThanOrEqual(last + 1e-9);
          last = energy;
        }
      }),
      runs,
    );
  });

  it('turns with its direction: a flight aimed elsewhere is the same flight rotated', () => {
    const straight = fly({ ...drive, spinAxisTilt: degrees(8) });
    const turned = fly({ ...drive, spinAxisTilt: degrees(8), launchDirection: degrees(30) });
    expect(turned.carry).toBeCloseTo(straight.carry, 6);
    expect(turned.curve).toBeCloseTo(straight.curve, 6);
    expect(turned.apex).toBeCloseTo(straight.apex, 6);
  });

  it('curves toward the tilt of its axis and the way the wind blows', () => {
    expect(fly({ ...drive, spinAxisTilt: degrees(10) }).side).toBeGreaterThan(5);
    expect(fly(drive, { wind: { along: metresPerSecond(0), across: mph(10) } }).side).toBeGreaterThan(5);
  });

  it('loses more into a headwind than the same tailwind gives', () => {
    const at = (along: number): number => fly(drive, { wind: { along: mph(along), across: mph(0) } }).carry;
    expect(at(-10)).toBeLessThan(at(0));
    expect(at(10)).toBeGreaterThan(at(0));
    expect(at(0) - at(-10)).toBeGreaterThan(at(10) - at(0));
  });
});

describe('track', () => {
  it('starts at the launch, ends at the landing and is continuous in between', () => {
    const flight = fly(drive);
    const path = pathOf(flight, { count: 401 });
    expect(path[0]?.position).toEqual({ x: 0, y: 0, z: 0 });
    expect(path.at(-1)?.position.x).toBeCloseTo(flight.landing.position.x, 9);
    expect(Math.max(...path.map((state) => state.position.y))).toBeCloseTo(flight.apex, 2);
    for (let i = 1; i < path.length; i++) {
      const step = (path[i]?.position.x ?? 0) - (path[i - 1]?.position.x ?? 0);
      expect(step).toBeGreaterThan(0.2);
      expect(step).toBeLessThan(1.3);
    }
    expect(toMetres(flight.apex)).toBeGreaterThan(15);
  });

  it('survives JSON and structured clone', () => {
    const flight = fly({ ...drive, spinAxisTilt: degrees(4) });
    expect(JSON.parse(JSON.stringify(flight))).toEqual(flight);
    expect(structuredClone(flight)).toEqual(flight);
    expect(stateAt(JSON.parse(JSON.stringify(flight)), 1)).toEqual(stateAt(flight, 1));
  });

  it('does not write its inputs', () => {
    const launch = Object.freeze({ ...drive });
    const scene = Object.freeze({ wind: Object.freeze({ along: mph(3), across: mph(1) }) });
    expect(() => fly(launch, scene)).not.toThrow();
  });

  it('refuses times outside the flight and fractional counts', () => {
    const flight = fly(drive);
    expect(() => stateAt(flight, -1)).toThrow(/time must be between 0/);
    expect(() => pathOf(flight, { count: 2.5 })).toThrow(/whole number/);
  });
});

describe('ground', () => {
  it('carries shorter uphill and longer downhill', () => {
    const at = (slope: number): number => fly(drive, { ground: { slope: degrees(slope) } }).carry;
    expect(at(3)).toBeLessThan(at(0));
    expect(at(-3)).toBeGreaterThan(at(0));
  });

  it('says so when a green lies above the apex', () => {
    const flight = fly(drive, { ground: { elevation: 100 as never } });
    expect(flight.ended).toBe('below-ground');
    expect(flight.warnings.map((warning) => warning.quantity)).toContain('ended');
  });

  it('says so when the time limit comes first', () => {
    const flight = fly(drive, {}, { timeLimit: 1 as never });
    expect(flight.ended).toBe('time-limit');
    expect(flight.hangTime).toBeCloseTo(1, 12);
  });

  it('lands on the plane it was given', () => {
    fc.assert(
      fc.property(anyLaunch, anyScene, (launch, scene) => {
        const flight = fly(launch, scene);
        if (flight.ended !== 'landed') return;
        const { x, y, z } = flight.landing.position;
        const { elevation = 0, slope = 0, crossSlope = 0 } = scene.ground ?? {};
        expect(Math.abs(y - elevation - Math.tan(slope) * x - Math.tan(crossSlope) * z)).toBeLessThan(1e-6);
      }),
      runs,
    );
  });

  it('never lands in mid-air because a step was too coarse', () => {
    // A log profile over a suburb, the tee 988 m above the ground.
    const flight = fly(
      { ballSpeed: metresPerSecond(33.85), launchAngle: radians(-0.1324), spinRate: rpm(0) },
      {
        air: { density: kilogramsPerCubicMetre(3), viscosity: pascalSeconds(4.464e-5) },
        wind: {
          along: metresPerSecond(-20.03),
          across: metresPerSecond(0),
          profile: { kind: 'log', roughness: metres(2.773), referenceHeight: metres(10) },
        },
        ground: { elevation: metres(-987.7), slope: radians(-0.6), crossSlope: radians(-0.2056) },
      },
      { tolerance: metres(0.7145) },
    );
    const { x, y, z } = flight.landing.position;
    expect(flight.ended).toBe('landed');
    expect(Math.abs(y + 987.7 - Math.tan(-0.6) * x - Math.tan(-0.2056) * z)).toBeLessThan(1e-6);
  });
});

describe('a law of one’s own that is not finite', () => {
  // The engine must blame the law, not the tolerance: no looser one would help.
  const steady: AerodynamicModel = {
    ...defaultAerodynamics,
    id: 'own',
    dragCoefficient: () => 0.25,
    liftCoefficient: () => 0.15,
  };
  it.each<[string, Partial<AerodynamicModel>]>([
    ['drag at the start', { dragCoefficient: () => Number.NaN }],
    ['drag without bound at the start', { dragCoefficient: () => Number.POSITIVE_INFINITY }],
    ['lift at the start', { liftCoefficient: () => Number.NaN }],
    ['drag in mid-flight', { dragCoefficient: (re) => (re < 150_000 ? Number.NaN : 0.25) }],
    [
      'drag without bound in mid-flight',
      { dragCoefficient: (re) => (re < 150_000 ? Number.POSITIVE_INFINITY : 0.25) },
    ],
    ['lift in mid-flight', { liftCoefficient: (_re, s) => Math.sqrt(0.12 - s) }],
  ])('is told apart from one too rough to integrate: %s', (_where, law) => {
    const error = caught(() => fly(drive, { aerodynamics: { ...steady, ...law } }));
    expect(error.code).toBe('invalid-input');
    expect(error.field).toBe('scene.aerodynamics');
    expect(error.message).toContain('own gave a value that is not finite');
  });

  it('is found before a flight that ends where it begins', () => {
    const nowhere = { ...drive, launchAngle: degrees(-3) };
    expect(fly(nowhere, { aerodynamics: steady }).hangTime).toBe(0);
    const law = { ...steady, dragCoefficient: () => Number.NaN };
    expect(caught(() => fly(nowhere, { aerodynamics: law })).code).toBe('invalid-input');
  });
});

describe('warnings', () => {
  it('are silent for a drive within the model and speak outside it', () => {
    expect(fly(drive).warnings).toEqual([]);
    const slow = fly({
      ballSpeed: metresPerSecond(15),
      launchAngle: degrees(30),
      spinRate: radiansPerSecond(100),
    });
    expect(slow.warnings.some((warning) => warning.quantity === 'reynolds')).toBe(true);
  });
});
