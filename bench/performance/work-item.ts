import { readFileSync } from 'node:fs';
import {
  type AerodynamicModel,
  type Air,
  degrees,
  type Launch,
  metresPerSecond,
  rpm,
  type Scene,
} from '../../src/index.js';
import { kilogramsPerCubicMetre, pascalSeconds, radians, radiansPerSecond } from '../../src/units/index.js';

/** What is asked of one flight: landing point [m], apex [m], time [s], landing angle [°]. */
export interface Answer {
  x: number;
  z: number;
  apex: number;
  time: number;
  angle: number;
}

/** One of the 1,000 reference flights: what to fly, and the answer to 1e-11. */
export interface ReferenceFlight {
  readonly launch: Launch;
  readonly scene: Scene;
  readonly answer: Readonly<Answer>;
}

/** The smooth test law all peers integrate. Made for the benchmark: no measured ball behaves like this. */
export const testLaw: AerodynamicModel = {
  id: 'benchmark-test-law',
  label: 'smooth test law of the benchmark',
  source: {
    authors: 'this repository',
    year: 2026,
    work: 'bench/peers/flight.hpp',
    confidence: 'assumption',
    note: 'The law of Smits and Smith 1994 without its limits, as a test problem for integrators.',
  },
  validity: { reynolds: { min: 0, max: 1e6 }, spinRatio: { min: 0, max: 10 } },
  extrapolation: 'the formulas hold everywhere',
  spinEntering: 'total',
  dragCoefficient: (reynolds, spinRatio) =>
    0.24 + 0.18 * spinRatio + 0.06 * Math.sin((Math.PI * (reynolds - 90_000)) / 200_000),
  liftCoefficient: (_reynolds, spinRatio) => 0.54 * spinRatio ** 0.4,
  spinDecay: 2e-5,
};

/** Air of the work item: 1.225 kg/m³, 1.81e-5 Pa s. */
export const testAir: Air = { density: kilogramsPerCubicMetre(1.225), viscosity: pascalSeconds(1.81e-5) };

/** The file of the reference flights. */
export const referencePath: URL = new URL('../peers/flights-reference.csv', import.meta.url);

/**
 * Reads the reference flights. Their spin axis (0, −sin τ, cos τ) is given in the world frame and not square to the
 * launch, so part of the spin is rifle spin.
 */
export function readReferenceFlights(path: string | URL, aerodynamics: AerodynamicModel): ReferenceFlight[] {
  const rows = readFileSync(path, 'utf8').trim().split('\n').slice(1);
  return rows.map((row) => {
    const [, speed, launchDegrees, spinRpm, tiltDegrees, along, across, x, z, apex, time, angle] = row
      .split(',')
      .map(Number) as [
      number,
      number,
      number,
      number,
      number,
      number,
      number,
      number,
      number,
      number,
      number,
      number,
    ];
    const launchAngle = degrees(launchDegrees);
    const spin = rpm(spinRpm);
    const back = Math.cos(degrees(tiltDegrees));
    const down = Math.sin(degrees(tiltDegrees));
    const side = down * Math.cos(launchAngle);
    return {
      launch: {
        ballSpeed: metresPerSecond(speed),
        launchAngle,
        spinRate: radiansPerSecond(spin * Math.hypot(back, side)),
        spinAxisTilt: radians(Math.atan2(side, back)),
        rifleSpin: radiansPerSecond(-spin * down * Math.sin(launchAngle)),
      },
      scene: {
        aerodynamics,
        air: testAir,
        wind: { along: metresPerSecond(along), across: metresPerSecond(across) },
      },
      answer: { x, z, apex, time, angle },
    };
  });
}
