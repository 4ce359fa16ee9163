import type { Gpu } from '../../src/gpu/index.js';
import {
  type ConditionColumns,
  flightEndings,
  flyMany,
  isFairflightError,
  type LaunchColumns,
  metres,
  type Scene,
} from '../../src/index.js';
import data from '../../tests/published/data/reference-flights.json' with { type: 'json' };
import { drawConditions, drawLaunches } from './draws.js';

/** How far flights of a card are from the judge's [mm]. */
export interface Errors {
  readonly of: string;
  readonly flights: number;
  /** Flights that the card left to the processor. */
  readonly onProcessor: number;
  /** Flights that end in another way than the judge's. */
  readonly otherEnds: number;
  readonly median: number;
  readonly p99: number;
  readonly worst: number;
  readonly worstApex: number;
}

/** Distances between two sets of landings, and between their tops [m]. */
export function misses(
  flown: Landings,
  judge: Landings,
): { readonly landing: number[]; readonly apex: number[] } {
  const rows = [...judge.ended.keys()].filter((i) => flightEndings[judge.ended[i] as number] === 'landed');
  const far = (name: 'x' | 'z' | 'apex', i: number): number =>
    (flown[name][i] as number) - (judge[name][i] as number);
  return {
    landing: rows.map((i) => Math.hypot(far('x', i), far('z', i))),
    apex: rows.map((i) => Math.abs(far('apex', i))),
  };
}

interface Landings {
  readonly ended: Uint8Array;
  readonly x: Float64Array;
  readonly z: Float64Array;
  readonly apex: Float64Array;
}

/** The judge: the processor at a thousandth of its own default. */
export function judgeOf(launches: LaunchColumns, scene: Scene, conditions: ConditionColumns): Landings {
  return flyMany(launches, scene, { conditions, tolerance: metres(1e-7) });
}

/** Errors over drawn flights. */
export async function drawnErrors(
  gpu: Gpu,
  of: string,
  count: number,
  scene: Scene,
  conditions: ConditionColumns = {},
  launches: LaunchColumns = drawLaunches(count),
): Promise<Errors> {
  const flown = await gpu.flyMany(launches, scene, { conditions });
  const judge = judgeOf(launches, scene, conditions);
  const otherEnds = flown.ended.filter((ending, i) => ending !== judge.ended[i]).length;
  return { of, flights: count, onProcessor: flown.onProcessor, otherEnds, ...spread(misses(flown, judge)) };
}

function spread({
  landing,
  apex,
}: ReturnType<typeof misses>): Pick<Errors, 'median' | 'p99' | 'worst' | 'worstApex'> {
  const sorted = landing.map((m) => 1000 * m).sort((a, b) => a - b);
  const at = (share: number): number =>
    sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? 0;
  return {
    median: at(0.5),
    p99: at(0.99),
    worst: at(1),
    worstApex: 1000 * apex.reduce((most, far) => Math.max(most, far), 0),
  };
}

/** Winds that change with height, as golf is played in them. */
const PROFILES: readonly (readonly [string, Scene])[] = [
  [
    'a logarithmic wind',
    { wind: { along: 6, across: -4, profile: { kind: 'log', roughness: 0.03 } } },
  ] as never,
  [
    'a wind by a power law',
    { wind: { along: 6, across: -4, profile: { kind: 'power', exponent: 0.15 } } },
  ] as never,
];

/** Errors over every kind of flight the docs speak of. */
export async function allErrors(gpu: Gpu, count: number): Promise<readonly Errors[]> {
  const few = Math.ceil(count / 10);
  const errors = [
    await referenceErrors(gpu),
    await drawnErrors(gpu, 'drawn launches, calm', count, {}),
    await drawnErrors(gpu, 'drawn launches and conditions', count, {}, drawConditions(count)),
    await drawnErrors(
      gpu,
      'fast balls at any angle with any spin too',
      count,
      {},
      {},
      drawLaunches(count, true),
    ),
  ];
  for (const [of, scene] of PROFILES)
    errors.push(await drawnErrors(gpu, `drawn launches, ${of}`, few, scene));
  return errors;
}

interface Reference {
  readonly launch: Readonly<Record<string, number>>;
  readonly model: string;
  readonly air: object;
  readonly wind: object;
  readonly ground: object;
  readonly result: { readonly position: readonly number[]; readonly apex: number };
}

/** Errors over the reference flights, each in its own scene; those whose model no table holds are left out. */
export async function referenceErrors(gpu: Gpu): Promise<Errors> {
  const rows = data.rows as unknown as readonly Reference[];
  const landing: number[] = [];
  const apex: number[] = [];
  let onProcessor = 0;
  for (const { launch, model, air, wind, ground, result } of rows) {
    const scene = { aerodynamics: model, air, wind, ground } as unknown as Scene;
    const columns = Object.fromEntries(Object.entries(launch).map(([name, value]) => [name, [value]]));
    try {
      const flown = await gpu.flyMany(columns as unknown as LaunchColumns, scene);
      const [x = 0, , z = 0] = result.position;
      landing.push(Math.hypot((flown.x[0] ?? 0) - x, (flown.z[0] ?? 0) - z));
      apex.push(Math.abs((flown.apex[0] ?? 0) - result.apex));
      onProcessor += flown.onProcessor;
    } catch (error) {
      if (!isFairflightError(error) || error.code !== 'unsupported') throw error;
    }
  }
  return {
    of: 'reference flights',
    flights: landing.length,
    onProcessor,
    otherEnds: 0,
    ...spread({ landing, apex }),
  };
}
