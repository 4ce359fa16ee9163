import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isFairflightError } from '../../src/errors.js';
import { type DocumentName, jsonSchemaOf } from '../../src/schema/index.js';
import { symbolOf, UNIT_KINDS } from '../../src/schema/unit-names.js';
import { inUnit } from '../../src/units/unit.js';
import { caught } from '../caught.js';
import { conforms } from './conforms.js';
import { changed, declaredDocument, exampleOf, parsers, placesIn } from './example.js';

const NAMES = Object.keys(parsers) as DocumentName[];

function parses(name: DocumentName, json: unknown): boolean {
  try {
    parsers[name].parse(json);
    return true;
  } catch (error) {
    if (isFairflightError(error)) return false;
    throw error;
  }
}

/** The example document with each quantity in the unit people say, the unit beside it. */
const exampleJson = (name: DocumentName): unknown =>
  exampleOf(declaredDocument(name), (value, { said }) => ({
    value: inUnit(said, value),
    unit: symbolOf(said),
  }));

describe('what the parsers document, their schemas allow', () => {
  it.each<[DocumentName, unknown]>([
    [
      'delivery',
      {
        'clubSpeed (mph)': 96,
        'attackAngle (deg)': 1,
        'dynamicLoft (deg)': 14,
        strikeOffset: { 'toe (mm)': 8, 'high (mm)': 0 },
      },
    ],
    ['launch', { 'ballSpeed (mph)': 150, launchAngle: { value: 12, unit: 'deg' }, 'spinRate (rpm)': 2600 }],
    [
      'scene',
      {
        air: { 'altitude (m)': 1200, 'temperature (C)': 24 },
        wind: { 'speed (mph)': 8, clock: 1.5, terrain: 'links-course' },
        ground: { 'elevation (ft)': -30 },
        turf: 'firm',
        aerodynamics: 'fitted-modern',
      },
    ],
    ['scene', { air: { 'temperature (F)': 68, 'pressure (inHg)': 29.92 }, ball: 'conforming' }],
    ['scene', { aerodynamics: { kind: 'scaled', of: 'fitted-modern', drag: 0.98 } }],
    ['clubhead', 'driver'],
    ['measuredShot', { 'clubSpeed (mph)': 96, 'ballSpeed (mph)': 142, 'carry (yd)': 232, club: 'driver' }],
    ...NAMES.map((name): [DocumentName, unknown] => [name, exampleJson(name)]),
  ])('%s %#', (name, json) => {
    expect(parses(name, json)).toBe(true);
    expect(conforms(json, jsonSchemaOf(name))).toBe(true);
  });

  it('is plain data that names its draft, and a copy', () => {
    for (const name of NAMES) {
      const schema = jsonSchemaOf(name);
      expect(schema).toMatchObject({ $schema: 'https://json-schema.org/draft/2020-12/schema' });
      expect(JSON.parse(JSON.stringify(schema))).toEqual(schema);
      expect(jsonSchemaOf(name)).not.toBe(schema);
    }
    expect(caught(() => jsonSchemaOf('toString' as never)).field).toBe('name');
  });

  it('shows an example of every quantity that conforms', () => {
    const seen: unknown[] = [];
    const walk = (schema: unknown): void => {
      if (typeof schema !== 'object' || schema === null) return;
      const { examples, ...rest } = schema as { examples?: readonly unknown[] };
      for (const example of examples ?? []) {
        seen.push(example);
        expect(conforms(example, rest), JSON.stringify(schema)).toBe(true);
      }
      Object.values(rest).forEach(walk);
    };
    for (const name of NAMES) walk(jsonSchemaOf(name));
    expect(seen.length).toBeGreaterThan(80);
  });
});

describe('parser and schema agree', () => {
  it.each(NAMES)('on %s with any one value changed', (name) => {
    const schema = jsonSchemaOf(name);
    const json = exampleJson(name);
    const places = placesIn(declaredDocument(name));
    const other = fc.oneof(
      fc.constantFrom<unknown>(undefined, null, '', 'driver', true, [], {}, 0, 1, 0.5, -1, 1e9, 2026),
      fc.record({ value: fc.constantFrom<unknown>(0, 0.02, 1, 20, 1e4, -1, '1'), unit: fc.constantFrom('') }),
    );
    const change = fc.record({
      place: fc.constantFrom(...places),
      value: other,
      unit: fc.nat(),
      inKey: fc.boolean(),
    });
    fc.assert(
      fc.property(change, ({ place: { path, field }, value, unit, inKey }) => {
        let document = json;
        if (field.kind === 'quantity' && typeof value === 'object' && value !== null && 'value' in value) {
          const { units } = UNIT_KINDS[field.si];
          const chosen = units[unit % units.length] ?? expect.fail('no unit');
          const written = [symbolOf(chosen.unit), ...chosen.spellings][unit % 3] ?? 'furlongs';
          const keyed = [...path.slice(0, -1), `${path.at(-1)} (${written})`];
          document = inKey
            ? changed(changed(json, path, undefined), keyed, value.value)
            : changed(json, path, { value: value.value, unit: written });
        } else {
          document = changed(json, path, value);
        }
        expect(conforms(document, schema), JSON.stringify(document)).toBe(parses(name, document));
      }),
      { numRuns: 600 },
    );
  });
});
