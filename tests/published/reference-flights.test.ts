import { describe, expect, it } from 'vitest';
import { type Flight, fly, type Launch, metres, type Scene } from '../../src/index.js';
import { flyReference } from '../../src/reference.js';
import data from './data/reference-flights.json' with { type: 'json' };

/**
 * Both integrators against flights made by SciPy's DOP853 (make-reference-flights.py, which writes the equations of
 * motion and the coefficient laws a second time). SciPy's own runs at two tolerances differ by 4e-9 m at most.
 */
interface Row {
  readonly id: string;
  readonly model: string;
  readonly launch: Launch;
  readonly air: NonNullable<Scene['air']>;
  readonly wind: NonNullable<Scene['wind']>;
  readonly ground: NonNullable<Scene['ground']>;
  readonly result: {
    readonly carry: number;
    readonly side: number;
    readonly curve: number;
    readonly apex: number;
    readonly apexAt: number;
    readonly hangTime: number;
    readonly descentAngle: number;
    readonly position: readonly number[];
    readonly velocity: readonly number[];
    readonly spinRate: number;
  };
}

const rows = data.rows as unknown as readonly Row[];
const sceneOf = ({ model, air, wind, ground }: Row): Scene => ({ aerodynamics: model, air, wind, ground });

/**
 * Largest difference in landing point and apex height [m], in where along the flight the apex is [m] (a flat top says
 * little about that), and in speed [m/s], time [s], angle [rad] and relative spin together.
 */
function worst(flight: Flight, { result }: Row): Record<'length' | 'apexAt' | 'other', number> {
  const { position, velocity } = flight.landing;
  const lengths = (['carry', 'side', 'curve', 'apex'] as const).map((key) => flight[key] - result[key]);
  const [x, y, z] = result.position as [number, number, number];
  const [vx, vy, vz] = result.velocity as [number, number, number];
  const others = [
    velocity.x - vx,
    velocity.y - vy,
    velocity.z - vz,
    flight.hangTime - result.hangTime,
    flight.descentAngle - result.descentAngle,
    (flight.landing.spinRate - result.spinRate) / (result.spinRate + 1),
  ];
  const largest = (all: readonly number[]): number => Math.max(...all.map(Math.abs));
  return {
    length: largest([...lengths, position.x - x, position.y - y, position.z - z]),
    apexAt: Math.abs(flight.apexAt - result.apexAt),
    other: largest(others),
  };
}

describe('flights integrated by SciPy', () => {
  it('cover every model, every kind of wind and both kinds of slope', () => {
    expect(rows.length).toBeGreaterThanOrEqual(60);
    expect(new Set(rows.map(({ model }) => model)).size).toBe(8);
    expect(new Set(rows.map(({ wind }) => wind.profile?.kind))).toEqual(new Set(['uniform', 'log', 'power']));
    expect(rows.filter(({ ground }) => ground.slope !== 0 && ground.crossSlope !== 0).length).toBeGreaterThan(
      10,
    );
  });

  it.each(rows)('$id: the engine lands within 1 mm at its default tolerance', (row) => {
    const flight = fly(row.launch, sceneOf(row));
    expect(flight.ended).toBe('landed');
    const { length, apexAt, other } = worst(flight, row);
    expect(length).toBeLessThan(1e-3);
    expect(apexAt).toBeLessThan(1e-2);
    expect(other).toBeLessThan(1e-3);
  });

  it.each(rows)(
    '$id: the engine lands within a micrometre when asked to, 0.1 mm where a law has corners',
    (row) => {
      // Straight lines between the points of a table, and a wind that starts at a height, have corners inside a step.
      const corners =
        row.model === 'test-range-line' || (row.wind.profile ?? { kind: 'uniform' }).kind !== 'uniform';
      const { length, apexAt, other } = worst(
        fly(row.launch, sceneOf(row), { tolerance: metres(1e-7) }),
        row,
      );
      expect(length).toBeLessThan(corners ? 1e-4 : 1e-6);
      expect(apexAt).toBeLessThan(1e-3);
      expect(other).toBeLessThan(corners ? 1e-4 : 1e-6);
    },
  );

  it.each(rows)('$id: the reference integrator lands within a micrometre', (row) => {
    const { length, apexAt, other } = worst(flyReference(row.launch, sceneOf(row)), row);
    expect(Math.max(length, apexAt)).toBeLessThan(1e-6);
    expect(other).toBeLessThan(1e-6);
  });
});
