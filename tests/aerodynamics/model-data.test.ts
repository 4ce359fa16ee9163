import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compiledLaw } from '../../src/aerodynamics/compiled-law.js';
import {
  type AerodynamicModel,
  aerodynamicModels,
  defaultAerodynamics,
  fittedModern,
  fittedModernConstants,
  type ModelChoice,
  type ModelData,
  resolveModel,
  scaledModel,
  smitsSmith1994,
  tabulatedModel,
  withReverseMagnus,
} from '../../src/aerodynamics/index.js';
import { modelAsData } from '../../src/aerodynamics/resolve.js';
import { fly } from '../../src/flight/index.js';
import type { Source } from '../../src/source.js';
import { degrees, mph, rpm } from '../../src/units/index.js';
import { caught } from '../caught.js';
import { even } from '../even.js';
import monotoneGrid from '../published/data/monotone-grid.json' with { type: 'json' };

const source: Source = { authors: 'nobody', year: 2026, work: 'an invented ball', confidence: 'assumption' };
const table = tabulatedModel({ id: 'own', source, ...monotoneGrid.grid });
const fitted: ModelData = {
  kind: 'fitted',
  id: 'refit',
  source,
  constants: { ...fittedModernConstants, dragFloor: 0.21 },
};
const own: AerodynamicModel = { ...fittedModern, id: 'made-of-functions' };
const everyKind: readonly (readonly [string, ModelData])[] = [
  ['table', table],
  ['fitted', fitted],
  ['scaled id', scaledModel('smits-smith-1994', { drag: 0.97 })],
  ['scaled built-in record', scaledModel(smitsSmith1994, { lift: 1.1 })],
  ['scaled table', scaledModel(table, { drag: 1.03, lift: 0.9 })],
  ['reverse Magnus', withReverseMagnus('fitted-modern')],
  ['three deep', scaledModel(withReverseMagnus(scaledModel(fitted, { drag: 0.9 })), { lift: 1.2 })],
];
const drive = { ballSpeed: mph(150), launchAngle: degrees(13), spinRate: rpm(2600) };

describe('a model held as data', () => {
  it.each(everyKind)('flies bit for bit the same after JSON and structuredClone: %s', (_name, data) => {
    const flight = fly(drive, { aerodynamics: data });
    expect(flight.carry).toBeGreaterThan(50);
    expect(fly(drive, { aerodynamics: JSON.parse(JSON.stringify(data)) as ModelData })).toEqual(flight);
    expect(fly(drive, { aerodynamics: structuredClone(data) })).toEqual(flight);
    expect(fly(drive, { aerodynamics: resolveModel(data) })).toEqual(flight);
  });
  it.each(everyKind)('is frozen to the bottom, and is its own plain form: %s', (_name, data) => {
    const open = (value: unknown): boolean =>
      typeof value === 'object' &&
      value !== null &&
      (!Object.isFrozen(value) || Object.values(value).some(open));
    expect(open(modelAsData(data))).toBe(false);
    expect(modelAsData(data)).toEqual(data);
    expect(Object.isFrozen(resolveModel(data))).toBe(true);
  });
  it('multiplies the coefficients and nothing else', () => {
    fc.assert(
      fc.property(even(0.2, 5), even(0.2, 5), even(2e4, 3e5), even(0, 1), (drag, lift, re, s) => {
        const scaled = resolveModel(scaledModel('smits-smith-1994', { drag, lift }));
        expect(scaled.dragCoefficient(re, s)).toBe(drag * smitsSmith1994.dragCoefficient(re, s));
        expect(scaled.liftCoefficient(re, s)).toBe(lift * smitsSmith1994.liftCoefficient(re, s));
        expect(scaled.validity).toEqual(smitsSmith1994.validity);
      }),
      { numRuns: 200 },
    );
  });
  it('with the constants of the default is the default', () => {
    const same = resolveModel({ kind: 'fitted', id: 'same', source, constants: fittedModernConstants });
    for (const [re, s] of [
      [4e4, 0.01],
      [7e4, 0.3],
      [2e5, 0.1],
    ] as const) {
      expect(same.dragCoefficient(re, s)).toBe(fittedModern.dragCoefficient(re, s));
      expect(same.liftCoefficient(re, s)).toBe(fittedModern.liftCoefficient(re, s));
    }
  });
  it('does not change when what it was given as does', () => {
    const constants = { ...fittedModernConstants };
    const given: ModelData = { kind: 'fitted', id: 'kept', source, constants };
    const kept = resolveModel(given);
    const before = kept.dragCoefficient(1e5, 0.1);
    constants.dragFloor = 0.3;
    expect(kept.dragCoefficient(1e5, 0.1)).toBe(before);
    expect(resolveModel(given).dragCoefficient(1e5, 0.1)).toBeCloseTo(
      before + 0.3 - fittedModernConstants.dragFloor,
      12,
    );
  });
});

describe('the same data', () => {
  it.each(everyKind)('give the same functions, however often they are written out: %s', (_name, data) => {
    const model = resolveModel(data);
    for (let i = 0; i < 3; i++) expect(resolveModel(structuredClone(data))).toBe(model);
  });
  it('are compiled once: the law belongs to the functions', () => {
    const laws = new Set(
      Array.from({ length: 20 }, () => {
        const inline = { aerodynamics: scaledModel('fitted-modern', { drag: 0.98 }) };
        fly(drive, inline);
        return compiledLaw(resolveModel(inline.aerodynamics));
      }),
    );
    expect(laws.size).toBe(1);
    expect([...laws][0]).toBeDefined();
  });
  it('in another order are the same, and one number apart are not', () => {
    const { kind, ...rest } = table;
    expect(resolveModel({ ...rest, kind })).toBe(resolveModel(table));
    const other = structuredClone(table) as unknown as { drag: number[][] };
    (other.drag[4] as number[])[4] = 0.123;
    expect(resolveModel(other as unknown as ModelData)).not.toBe(resolveModel(table));
    expect(resolveModel(scaledModel(own, { drag: 0.98 }))).not.toBe(
      resolveModel(scaledModel({ ...own }, { drag: 0.98 })),
    );
  });
  it('are forgotten after a while, so that memory stays bounded', () => {
    const first = resolveModel(scaledModel('fitted-modern', { drag: 1.5 }));
    for (let i = 0; i < 40; i++) resolveModel(scaledModel('fitted-modern', { drag: 1 + i / 100 }));
    const again = resolveModel(scaledModel('fitted-modern', { drag: 1.5 }));
    expect(again).not.toBe(first);
    expect(again.dragCoefficient(1e5, 0.1)).toBe(first.dragCoefficient(1e5, 0.1));
  });
});

describe('the plain form of a choice', () => {
  it('is an id for a built-in model, however it was named', () => {
    expect(modelAsData(undefined)).toBe(defaultAerodynamics.id);
    for (const [id, model] of Object.entries(aerodynamicModels)) {
      expect(modelAsData(id)).toBe(id);
      expect(modelAsData(model)).toBe(id);
      expect(scaledModel(model, {}).of).toBe(id);
    }
  });
  it('does not exist for functions of one’s own, nor for what is made of them', () => {
    expect(modelAsData(own)).toBeUndefined();
    const scaled = scaledModel(own, { drag: 0.97 });
    expect(modelAsData(scaled)).toBeUndefined();
    expect(modelAsData(withReverseMagnus(scaled))).toBeUndefined();
    // In process they fly.
    expect(fly(drive, { aerodynamics: scaled }).carry).toBe(
      fly(drive, { aerodynamics: scaledModel(fittedModern, { drag: 0.97 }) }).carry,
    );
    expect(Object.isFrozen(own)).toBe(false);
  });
});

describe('data that are no model', () => {
  const ring: { kind: 'reverse-magnus'; of: unknown } = { kind: 'reverse-magnus', of: undefined };
  ring.of = ring;
  const bad: readonly [string, unknown, string][] = [
    ['an unknown kind', { kind: 'spline' }, 'm.kind'],
    ['no kind that is a string', { kind: 3 }, 'm.kind'],
    ['an unknown field', { kind: 'scaled', of: 'fitted-modern', grip: 1 }, 'm.grip'],
    ['an unknown id inside', { kind: 'scaled', of: 'nobody-1900' }, 'm.of'],
    ['nothing inside', { kind: 'reverse-magnus', of: null }, 'm.of'],
    ['a factor outside its range', { kind: 'scaled', of: table, drag: 9 }, 'm.drag'],
    [
      'a row too few in a table inside',
      { kind: 'scaled', of: { ...table, drag: [[0.2, 0.3]] } },
      'm.of.drag',
    ],
    ['a gap in a table inside', { kind: 'scaled', of: { ...table, drag: [[0.2, null]] } }, 'm.of.drag[0][1]'],
    ['a ring', ring, `m${'.of'.repeat(8)}`],
    ['the id of a built-in model', { ...fitted, id: 'fitted-modern' }, 'm.id'],
    ['a label that is no text', { ...fitted, label: 3 }, 'm.label'],
    ['no constants', { ...fitted, constants: undefined }, 'm.constants'],
    ['a constant missing', { ...fitted, constants: { liftOnset: 0.3 } }, 'm.constants.liftOnsetScale'],
    [
      'a constant of 0',
      { ...fitted, constants: { ...fittedModernConstants, dragScale: 0 } },
      'm.constants.dragScale',
    ],
    ['a source without a year', { ...fitted, source: { ...source, year: 'old' } }, 'm.source.year'],
    ['a source without a work', { ...fitted, source: { ...source, work: undefined } }, 'm.source.work'],
    ['a note that is no text', { ...fitted, source: { ...source, note: 1 } }, 'm.source.note'],
  ];
  it.each(bad)('%s is refused by name', (_what, data, field) => {
    const error = caught(() => resolveModel(data as ModelChoice, 'm'));
    expect(error.field).toBe(field);
    expect(error.message).toContain(field.split('.').at(-1));
  });
});
