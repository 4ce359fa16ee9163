import { describe, expect, it } from 'vitest';
import {
  type FlightColumns,
  flightEndings,
  fly,
  flyMany,
  type Launch,
  metres,
  type Scene,
} from '../../src/index.js';
import { stream } from '../../src/numerics/index.js';

const COUNT = 400;

/** Launches over the domain as columns, from a seeded stream. */
function columns(): Record<keyof Required<Launch>, Float64Array> {
  const draw = stream(11, 0);
  const column = (min: number, max: number): Float64Array =>
    Float64Array.from({ length: COUNT }, () => min + (max - min) * draw.uniform());
  return {
    ballSpeed: column(12, 100),
    launchAngle: column(-0.05, 1),
    launchDirection: column(-0.3, 0.3),
    spinRate: column(0, 1200),
    spinAxisTilt: column(-1, 1),
    rifleSpin: column(-50, 50),
  };
}

function rowOf(launches: ReturnType<typeof columns>, i: number): Launch {
  return Object.fromEntries(
    Object.entries(launches).map(([name, column]) => [name, column[i]]),
  ) as unknown as Launch;
}

const NAMES = ['carry', 'side', 'curve', 'apex', 'apexAt', 'hangTime', 'descentAngle'] as const;

describe('flyMany', () => {
  it('gives the flights of fly, number for number', () => {
    const launches = columns();
    const scene = {
      wind: { along: 3, across: -2 },
      ground: { slope: 0.02, elevation: -5 },
    } as unknown as Scene;
    const flights = flyMany(launches, scene, { tolerance: metres(1e-5) });
    for (let i = 0; i < COUNT; i++) {
      const flight = fly(rowOf(launches, i), scene, { tolerance: metres(1e-5) });
      for (const name of NAMES) expect(flights[name][i]).toBeCloseTo(flight[name], 9);
      expect(flights.ended[i]).toBe(flightEndings.indexOf(flight.ended));
      expect(flights.landingSpin[i]).toBeCloseTo(flight.landing.spinRate, 9);
    }
  });

  it('takes conditions row by row', () => {
    const launches = columns();
    const conditions = {
      airDensity: new Float64Array(COUNT).fill(1),
      windAlong: Float64Array.from({ length: COUNT }, (_, i) => (i % 7) - 3),
    };
    const flights = flyMany(launches, {}, { conditions });
    for (let i = 0; i < COUNT; i += 13) {
      const scene = {
        air: { density: 1, viscosity: 1.8134e-5 },
        wind: { along: (i % 7) - 3, across: 0 },
      } as unknown as Scene;
      expect(Math.abs((flights.carry[i] as number) - fly(rowOf(launches, i), scene).carry)).toBeLessThan(
        0.01,
      );
    }
  });

  it('gives a flight the same numbers whatever flies beside it', () => {
    const launches = columns();
    const whole = flyMany(launches);
    const halves = [0, COUNT / 2].map((start) =>
      flyMany(
        Object.fromEntries(
          Object.entries(launches).map(([name, column]) => [name, column.slice(start, start + COUNT / 2)]),
        ) as unknown as ReturnType<typeof columns>,
      ),
    ) as [FlightColumns, FlightColumns];
    for (const name of NAMES) expect([...halves[0][name], ...halves[1][name]]).toEqual([...whole[name]]);
  });

  it('names the column and the row of a bad number', () => {
    const launches = columns();
    launches.spinRate[17] = Number.NaN;
    expect(() => flyMany(launches)).toThrow(
      /launches\.spinRate\[17\] must be between 0 and 2100 rad\/s .*, got NaN/,
    );
    expect(() => flyMany({ ...columns(), spinAxisTilt: new Float64Array(3) })).toThrow(/has 3 rows/);
  });
});
