import { describe, expect, it } from 'vitest';
import { airAt } from '../../src/air/index.js';
import type { Scene } from '../../src/scene/index.js';
import {
  columnOf,
  type Design,
  type FactorName,
  type SweepOptions,
  sobolIndicesOf,
  sweep,
  sweepChunks,
  sweepFactors,
} from '../../src/sweep/index.js';
import { degrees, metresPerSecond, mph, rpm } from '../../src/units/index.js';
import { caught } from '../caught.js';
import { strange } from './strange.js';

const speed = { name: 'delivery.clubSpeed', from: mph(80), to: mph(120) } as const;
const design = { kind: 'sobol', count: 2, factors: [speed] } as const;
const fixed = { 'delivery.attackAngle': degrees(0), 'delivery.dynamicLoft': degrees(14) };
const delivery = { clubSpeed: mph(90), attackAngle: degrees(0), dynamicLoft: degrees(14) };
const launch = { ballSpeed: mph(150), launchAngle: degrees(12), spinRate: rpm(2600) };

/** The design with more factors, each over the whole of its range. */
const vary = (...names: FactorName[]): Design =>
  ({
    ...design,
    factors: [
      speed,
      ...names.map((name) => ({ name, from: sweepFactors[name].min, to: sweepFactors[name].max })),
    ],
  }) as never;

describe('a sweep', () => {
  it('is completed by what is fixed, or by what it starts from', () => {
    expect(Array.from(sweep(design, {}, { fixed }).status)).toEqual([0, 0]);
    expect(sweep(design, {}, { from: delivery }).values).toEqual(sweep(design, {}, { fixed }).values);
  });

  it.each<[what: string, design: Design, scene: unknown, options: unknown, field: string]>([
    ['lacks an input', design, {}, { fixed: { 'delivery.attackAngle': degrees(0) } }, 'options.from'],
    [
      'has no start',
      { ...design, factors: [{ name: 'turf.bounce.friction', from: 0.2, to: 0.5 }] },
      {},
      {},
      'options.from',
    ],
    ['has two starts', design, {}, { from: launch }, 'options.from'],
    [
      'fixes what varies',
      design,
      {},
      { fixed: { ...fixed, 'delivery.clubSpeed': mph(90) } },
      "options.fixed['delivery.clubSpeed']",
    ],
    [
      'fixes an unknown',
      design,
      {},
      { fixed: { ...fixed, 'delivery.speed': 4 } },
      "options.fixed['delivery.speed']",
    ],
    [
      'fixes outside the range',
      design,
      {},
      { fixed: { ...fixed, 'delivery.attackAngle': 3 } },
      "options.fixed['delivery.attackAngle']",
    ],
    ['has an unknown option', design, {}, { fixed, club: 3 }, 'options.club'],
    ['has options of before', design, {}, { fixed, scene: {} }, 'options.scene'],
    [
      'starts out of range',
      design,
      {},
      { from: { ...delivery, attackAngle: 2 } },
      'options.from.attackAngle',
    ],
    [
      'starts off the face',
      design,
      {},
      { from: { ...delivery, strikeOffset: { toe: 1, high: 0 } } },
      'options.from.strikeOffset.toe',
    ],
    ['starts with an unknown', design, {}, { from: { ...delivery, loft: 1 } }, 'options.from.loft'],
    ['asks for an unknown output', design, {}, { fixed, outputs: ['distance'] }, 'options.outputs[0]'],
    [
      'asks for the strike of a launch',
      { ...design, factors: [{ name: 'launch.spinRate', from: rpm(2000), to: rpm(3000) }] },
      {},
      { from: launch, outputs: ['carry', 'strike.smashFactor'] },
      'options.outputs[1]',
    ],
    ['has two airs', vary('air.density', 'air.temperature'), {}, { fixed }, 'design.factors[2].name'],
    ['has air and weather', vary('air.temperature'), { air: airAt() }, { fixed }, 'design.factors[1].name'],
    [
      'has altitude and pressure',
      vary('air.altitude'),
      {},
      { fixed: { ...fixed, 'air.pressure': 1e5 } },
      'design.factors[1].name',
    ],
    ['has half a wind', vary('wind.speed'), {}, { fixed }, 'design.factors[1].name'],
    ['has the other half', design, {}, { fixed: { ...fixed, 'wind.from': 0 } }, "options.fixed['wind.from']"],
    ['has two winds', vary('wind.speed', 'wind.from', 'wind.along'), {}, { fixed }, 'design.factors[1].name'],
    [
      'has a wind and a scene with wind',
      vary('wind.speed', 'wind.from'),
      { wind: { along: metresPerSecond(3), across: metresPerSecond(0) } },
      { fixed },
      'design.factors[1].name',
    ],
    [
      'has two profiles',
      vary('wind.profile.roughness', 'wind.profile.exponent'),
      {},
      { fixed },
      'design.factors[1].name',
    ],
    [
      'has the profile of another kind',
      vary('wind.profile.exponent'),
      { wind: { along: 0, across: 0, profile: { kind: 'log', roughness: 0.03 } } },
      { fixed },
      'design.factors[1].name',
    ],
    [
      'has a height without a profile',
      vary('wind.profile.referenceHeight'),
      {},
      { fixed },
      'design.factors[1].name',
    ],
    [
      'has a displacement without roughness',
      vary('wind.profile.displacement'),
      {},
      { fixed },
      'design.factors[1].name',
    ],
    [
      'has a profile higher than its wind was measured',
      design,
      {},
      { fixed: { ...fixed, 'wind.profile.roughness': 2, 'wind.profile.referenceHeight': 1 } },
      "options.fixed['wind.profile.roughness']",
    ],
    [
      'has a wind that its profile makes a storm',
      design,
      { wind: { along: 0, across: 0, profile: { kind: 'power', exponent: 1, referenceHeight: 1 } } },
      { fixed: { ...fixed, 'wind.along': 40 } },
      "options.fixed['wind.along']",
    ],
    [
      'varies the other grip law',
      vary('clubhead.tangentialRestitution.limit'),
      {},
      { fixed },
      'design.factors[1].name',
    ],
    ['varies the other bounce model', vary('turf.bounce.tiltCap'), {}, { fixed }, 'design.factors[1].name'],
    ['has an unknown clubhead', design, {}, { fixed, clubhead: 'spoon' }, 'options.clubhead'],
    ['has an unknown model', design, { aerodynamics: 'none' }, { fixed }, 'scene.aerodynamics'],
    ['has an unknown turf', design, { turf: 'sand' }, { fixed }, 'scene.turf'],
    ['has a bad tolerance', design, {}, { fixed, tolerance: -1 }, 'options.tolerance'],
    ['has no kernel', design, {}, { fixed, kernel: Promise.resolve() }, 'options.kernel'],
  ])('that %s is refused by the name its caller wrote', (_, bad, scene, options, field) => {
    const error = caught(() => sweep(bad, scene as Scene, options as SweepOptions));
    expect(error.code).toMatch(/^(invalid-input|outside-range)$/);
    expect(error.field).toBe(field);
  });
});

describe.each(strange)('%s', (_, value) => {
  const options = { fixed };
  const range = { name: 'delivery.clubSpeed', from: 40, to: 50 };
  const rows = sweep(design, {}, { fixed, outputs: ['carry'] });
  const list = { kind: 'list', rows: [{ 'delivery.clubSpeed': 40 }] };
  const indices = { kind: 'sobol-indices', base: 4, factors: [range] };
  /** Each place an argument has, filled with the value. */
  const calls: Readonly<Record<string, () => unknown>> = {
    design: () => sweep(value as Design, {}, options),
    'design.kind': () => sweep({ ...design, kind: value } as never, {}, options),
    'design.count': () => sweep({ ...design, count: value } as never, {}, options),
    'design.seed': () => sweep({ ...design, seed: value } as never, {}, options),
    'design.scramble': () => sweep({ ...design, scramble: value } as never, {}, options),
    'design.factors': () => sweep({ ...design, factors: value } as never, {}, options),
    'design.factors[0]': () => sweep({ ...design, factors: [value] } as never, {}, options),
    'design.factors[0].name': () =>
      sweep({ ...design, factors: [{ ...range, name: value }] } as never, {}, options),
    'design.factors[0].from': () =>
      sweep({ ...design, factors: [{ ...range, from: value }] } as never, {}, options),
    'design.factors[0].steps': () =>
      sweep({ kind: 'grid', factors: [{ ...range, steps: value }] } as never, {}, options),
    'design.factors[0].values': () =>
      sweep({ kind: 'grid', factors: [{ name: range.name, values: [value] }] } as never, {}, options),
    'design.rows': () => sweep({ kind: 'list', rows: value } as never, {}, options),
    'design.rows[0]': () => sweep({ kind: 'list', rows: [value] } as never, {}, options),
    'design.rows[1]': () => sweep({ kind: 'list', rows: [...list.rows, value] } as never, {}, options),
    "design.rows[0]['delivery.clubSpeed']": () =>
      sweep({ kind: 'list', rows: [{ 'delivery.clubSpeed': value }] } as never, {}, options),
    scene: () => sweep(design, value as never, options),
    'scene.air': () => sweep(design, { air: value } as never, options),
    'scene.aerodynamics': () => sweep(design, { aerodynamics: value } as never, options),
    options: () => sweep(design, {}, value as never),
    ...Object.fromEntries(
      ['from', 'fixed', 'clubhead', 'outputs', 'tolerance', 'kernel', 'chunkSize', 'signal'].map((name) => [
        `options.${name}`,
        () => sweep(design, {}, { ...options, [name]: value } as never),
      ]),
    ),
    "options.fixed['turf.bounce.friction']": () =>
      sweep(design, {}, { fixed: { ...fixed, 'turf.bounce.friction': value } } as never),
    'options.from.clubSpeed': () => sweep(design, {}, { from: { ...delivery, clubSpeed: value } } as never),
    'options.outputs[0]': () => sweep(design, {}, { ...options, outputs: [value] } as never),
    rows: () => columnOf(value as never, 'carry'),
    'rows.about': () => columnOf({ ...rows, about: value } as never, 'carry'),
    'rows.about.columns': () => columnOf({ ...rows, about: { columns: value } } as never, 'carry'),
    'rows.about.columns[0]': () => columnOf({ ...rows, about: { columns: [value] } } as never, 'carry'),
    'rows.about.columns[0].name': () =>
      columnOf(
        { ...rows, about: { columns: [{ name: value, column: 'x', unit: '', role: 'input' }] } } as never,
        'carry',
      ),
    'rows.values': () => columnOf({ ...rows, values: value } as never, 'carry'),
    name: () => columnOf(rows, value as never),
    'indices of design': () => sobolIndicesOf(value as never, new Float64Array(12)),
    values: () => sobolIndicesOf(indices as never, value as never),
    'values[0]': () => sobolIndicesOf(indices as never, [value, ...Array(11).fill(1)] as never),
  };

  it.each(Object.keys(calls))('as %s is a typed error, or allowed', (place) => {
    try {
      (calls[place] as () => unknown)();
    } catch (error) {
      expect(
        () =>
          caught(() => {
            throw error;
          }),
        String(error),
      ).not.toThrow();
    }
  });

  it.each(['chunkSize', 'start', 'signal', 'onProgress'] as const)(
    'as options.%s of chunks is refused',
    async (name) => {
      const chunks = sweepChunks(design, {}, { ...options, [name]: value } as never);
      const error = await chunks.next().then(
        () => undefined,
        (reason: unknown) => reason,
      );
      const allowed =
        (name === 'onProgress' && typeof value === 'function') || (name === 'chunkSize' && value === 4);
      expect(error).toEqual(allowed ? undefined : expect.objectContaining({ field: `options.${name}` }));
    },
  );
});

describe('what a caller changes later', () => {
  it('reaches no row', async () => {
    const mine = { name: 'delivery.clubSpeed', from: mph(80), to: mph(120) };
    const scene = { wind: { along: 3, across: 0 } };
    const options = { fixed: { ...fixed }, outputs: ['carry'], chunkSize: 1 };
    const given = { kind: 'latin-hypercube', count: 3, factors: [mine] };
    const expected = columnOf(sweep(given as never, scene as never, { fixed, outputs: ['carry'] }), 'carry');
    const carries: number[] = [];
    for await (const chunk of sweepChunks(given as never, scene as never, options as never)) {
      carries.push(columnOf(chunk, 'carry')[0] as number);
      Object.assign(mine, { from: 1, to: 2 });
      Object.assign(scene.wind, { along: -30 });
      Object.assign(options.fixed, { 'delivery.dynamicLoft': 1 });
    }
    expect(carries).toEqual([...expected]);
  });
});
