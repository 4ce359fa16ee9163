import { fileURLToPath } from 'node:url';
import { beforeAll, describe, expect, it } from 'vitest';
import { openGpu } from '../../src/gpu/index.js';
import { type CarryMap, carryMap, flyMany, metres } from '../../src/index.js';
import { columnOf, sweep } from '../../src/sweep/index.js';
import { CHROMIUM, postedBy } from './browser.js';
import { cases, design, histogram, mapSize, question } from './cases.js';

/**
 * Flights of a card against the judge, on the software driver of the system's Chromium. Single precision and its steps are
 * the same there as on a card; docs/gpu.md holds the errors over many more flights.
 */

type Columns = Readonly<Record<string, readonly number[]>> & { readonly onProcessor: number };

interface Posted {
  readonly card: string | null;
  readonly flights: readonly Columns[];
  readonly carryMap: CarryMap;
  readonly summary: {
    readonly ended: Readonly<Record<string, number>>;
    readonly onProcessor: number;
    readonly quantities: Readonly<
      Record<
        string,
        {
          readonly mean: number;
          readonly deviation: number;
          readonly least: number;
          readonly greatest: number;
          readonly counts?: {
            readonly below: number;
            readonly bins: readonly number[];
            readonly above: number;
          };
        }
      >
    >;
  };
  readonly wrong: readonly unknown[];
}

/** Largest errors allowed: of a place and of a top [m]; of a time [s], a speed [m/s] and an angle [rad]; of a spin as a share. */
const LANDING = 5e-4;
const APEX = 2e-4;
const OTHER = 5e-3;
const SPIN = 2e-5;

const PATIENCE = 180_000;
let posted: Posted;

function largest(values: Iterable<number>): number {
  let most = 0;
  // Not Math.max, to which NaN of one row would be one of many.
  for (const value of values) if (!(Math.abs(value) <= most)) most = Math.abs(value);
  return most;
}

describe.skipIf(CHROMIUM === undefined)('flights on a card (skipped where Chromium is not installed)', () => {
  beforeAll(async () => {
    posted = (await postedBy(fileURLToPath(new URL('page.ts', import.meta.url)), PATIENCE)) as Posted;
    expect(posted).not.toHaveProperty('error');
    expect(posted.card).toBeTypeOf('string');
  }, PATIENCE);

  it.each(cases.map((one, k) => ({ ...one, k })))(
    '$name: lands where the judge lands',
    ({ k, launches, scene, conditions = {} }) => {
      const judge = flyMany(launches, scene, { conditions, tolerance: metres(1e-7) });
      const flown = posted.flights[k] as Columns;
      const far = (name: keyof typeof judge): number =>
        largest(Array.from(judge[name], (value, i) => value - (flown[name]?.[i] ?? Number.NaN)));
      expect(flown['ended']).toEqual([...judge.ended]);
      for (const name of ['x', 'y', 'z', 'carry', 'side', 'curve'] as const)
        expect(far(name), name).toBeLessThan(LANDING);
      expect(far('apex')).toBeLessThan(APEX);
      expect(far('apexAt')).toBeLessThan(2 * LANDING);
      for (const name of [
        'hangTime',
        'vx',
        'vy',
        'vz',
        'descentAngle',
        'spinAxisX',
        'spinAxisY',
        'spinAxisZ',
      ] as const)
        expect(far(name), name).toBeLessThan(OTHER);
      expect(
        largest(
          Array.from(
            judge.landingSpin,
            (spin, i) => ((flown['landingSpin']?.[i] ?? Number.NaN) - spin) / (spin + 1),
          ),
        ),
      ).toBeLessThan(SPIN);
      // Seen at the nodes of other steps, and so not at the very same places.
      const otherRanges = judge.outsideData.filter((bits, i) => bits !== flown['outsideData']?.[i]);
      expect(otherRanges.length).toBeLessThanOrEqual(0.03 * judge.ended.length);
    },
  );

  it('leaves little to the processor', () => {
    const shares = posted.flights
      .slice(0, -1)
      .map(({ onProcessor, ended }) => onProcessor / (ended?.length ?? 0));
    expect(largest(shares)).toBeLessThan(0.2);
    expect(posted.flights[0]?.onProcessor).toBe(0);
  });

  it('makes the map of the processor', () => {
    const map = carryMap(question, {}, mapSize);
    const flown = posted.carryMap;
    expect([...flown.landed]).toEqual([...map.landed]);
    expect([...flown.launchAngle]).toEqual([...map.launchAngle]);
    for (const name of ['carry', 'apex'] as const)
      expect(largest(map[name].map((value, i) => value - (flown[name][i] ?? Number.NaN)))).toBeLessThan(
        LANDING,
      );
    expect(
      largest((map.total ?? new Float64Array()).map((value, i) => value - (flown.total?.[i] ?? Number.NaN))),
    ).toBeLessThan(4 * LANDING);
  });

  it('sums up the rows of the sweep with the same seed', () => {
    const rows = sweep(
      design,
      {},
      { outputs: ['carry', 'flight.side', 'flight.apex', 'flight.hangTime', 'flight.descentAngle'] },
    );
    const landed = [...rows.status.keys()].filter(
      (i) => rows.about.statuses[rows.status[i] as number] === 'landed',
    );
    const { ended, quantities } = posted.summary;
    expect(ended['landed']).toBe(landed.length);
    expect(ended['topped']).toBe(rows.status.length - landed.length);
    expect(ended['topped']).toBeGreaterThan(50);
    const names = {
      carry: 'carry',
      side: 'flight.side',
      apex: 'flight.apex',
      hangTime: 'flight.hangTime',
      descentAngle: 'flight.descentAngle',
    };
    for (const [name, column] of Object.entries(names)) {
      const values = landed.map((i) => columnOf(rows, column)[i] as number);
      const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
      const deviation = Math.sqrt(
        values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1),
      );
      const sums = quantities[name];
      expect(Math.abs((sums?.mean ?? Number.NaN) - mean), name).toBeLessThan(1e-4);
      expect(Math.abs((sums?.deviation ?? Number.NaN) - deviation), name).toBeLessThan(1e-4);
      expect(Math.abs((sums?.least ?? Number.NaN) - Math.min(...values)), name).toBeLessThan(LANDING);
      expect(Math.abs((sums?.greatest ?? Number.NaN) - Math.max(...values)), name).toBeLessThan(LANDING);
    }
  });

  it('counts them into a histogram, all of them', () => {
    const { ended, quantities } = posted.summary;
    const { below = 0, bins = [], above = 0 } = quantities['carry']?.counts ?? {};
    expect(bins.length).toBe(histogram.bins);
    expect(bins.reduce((sum, count) => sum + count, below + above)).toBe(ended['landed']);
    expect(Math.min(...bins.slice(2, 10))).toBeGreaterThan(0);
  });

  it('refuses what flyMany refuses, and what a card cannot do', () => {
    expect(posted.wrong).toEqual([
      ['outside-range', 'launches.ballSpeed[0]'],
      ['invalid-input', 'options.tolerance'],
      ['invalid-input', 'options.tolerance'],
      ['unsupported', 'scene.aerodynamics'],
      ['unsupported', 'design.kind'],
      ['system', 'gpu'],
    ]);
  });
});

describe('openGpu', () => {
  it('says that there is no card, and throws nothing', async () => {
    // Neither a browser nor the optional package is here.
    expect(await openGpu()).toBeUndefined();
  });
});
