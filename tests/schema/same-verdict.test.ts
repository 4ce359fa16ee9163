import { describe, expect, it } from 'vitest';
import { isFairflightError } from '../../src/errors.js';
import { fly } from '../../src/flight/index.js';
import { count, flag, type QuantityField, type RecordField, record } from '../../src/inputs/field.js';
import { launchFields } from '../../src/inputs/launch.js';
import { measuredShotFields } from '../../src/inputs/measured-shot.js';
import { readField } from '../../src/inputs/read.js';
import type { DocumentName } from '../../src/schema/index.js';
import { parseLaunch } from '../../src/schema/index.js';
import { describeField } from '../../src/schema/json-schema.js';
import { parseWith } from '../../src/schema/parse.js';
import { schemaOf } from '../../src/schema/schema-of.js';
import { symbolOf, UNIT_KINDS } from '../../src/schema/unit-names.js';
import { conforms } from './conforms.js';
import { changed, declaredDocument, exampleOf, parsers, placesIn } from './example.js';

/** `right`, or code and path of the refusal; anything else that is thrown passes. */
function verdict(run: () => unknown): string {
  try {
    run();
    return 'right';
  } catch (error) {
    if (isFairflightError(error)) return `${error.code} at ${error.field}`;
    throw error;
  }
}

const inSi = (value: unknown, { si }: QuantityField): unknown => ({
  value,
  unit: symbolOf(UNIT_KINDS[si].units[0]?.unit ?? expect.fail(`no unit for ${si}`)),
});

const WRONG: readonly unknown[] = [Number.NaN, Number.POSITIVE_INFINITY, '1', null, true, [], {}, () => 1];

describe.each(Object.keys(parsers) as DocumentName[])('%s: the same verdict in JSON and in code', (name) => {
  const { root, parse } = parsers[name];
  const field = declaredDocument(name);
  const json = exampleOf(field, inSi);
  const code = exampleOf(field, (value) => value);
  const readCode = (value: unknown): unknown => readField(field, value, root);

  it('on the example', () => {
    expect(verdict(() => readCode(code))).toBe('right');
    expect(parse(json)).toEqual(readCode(code));
  });

  it.each(placesIn(field).map((place) => [place.path.join('.'), place] as const))('on %s', (_path, place) => {
    const { path } = place;
    const both = (given: unknown): readonly string[] => {
      const written = place.field.kind === 'quantity' ? inSi(given, place.field) : given;
      return [
        verdict(() => parse(changed(json, path, given === undefined ? undefined : written))),
        verdict(() => readCode(changed(code, path, given))),
      ];
    };
    // JSON has more ways to give air and wind; by one of them an empty record is ordinary air.
    const more = name === 'scene' && (path.join() === 'air' || path.join() === 'wind');
    const values = [undefined, ...WRONG.filter((value) => !more || JSON.stringify(value) !== '{}')];
    if (place.field.kind === 'quantity' || place.field.kind === 'count') {
      const { min, max } = place.field;
      const step = place.field.kind === 'count' ? 1 : 1e-9 * Math.max(Math.abs(min), Math.abs(max));
      values.push(min - step, min, (min + max) / 2, max, max + step);
    }
    for (const value of values) {
      const [ofJson, ofCode] = both(value);
      expect(ofJson, String(value)).toBe(ofCode);
    }
    const neighbour = [...path.slice(0, -1), 'neighbour'];
    expect(verdict(() => parse(changed(json, neighbour, 1)))).toBe(
      verdict(() => readCode(changed(code, neighbour, 1))),
    );
  });
});

it('a function of the library says the same', () => {
  const launch = { ballSpeed: 150, launchAngle: 0.2, spinRate: 272 };
  const spoken = {
    'ballSpeed (m/s)': 150,
    'launchAngle (rad)': 0.2,
    'spinRate (rad/s)': 272,
  };
  expect(verdict(() => parseLaunch(spoken))).toBe(verdict(() => fly(launch as never)));
  expect(verdict(() => parseLaunch(spoken))).toBe('outside-range at launch.ballSpeed');
});

describe('lists, flags and counts, which no document of today holds', () => {
  const field: RecordField = {
    kind: 'record',
    label: 'series',
    fields: {
      carries: { kind: 'list', of: measuredShotFields.carry, least: 1, most: 3, label: 'carries' },
      launches: { kind: 'list', of: record(launchFields, 'launch'), least: 0, most: 2, label: 'launches' },
      windy: flag('windy'),
      shots: count(1, 9, 3, 'shots'),
    },
  };
  const schema = schemaOf(field);
  const json = exampleOf(field, inSi) as { readonly [name: string]: unknown };
  const code = exampleOf(field, (value) => value) as { readonly [name: string]: unknown };
  const verdicts = (change: object, ofCode: object = change): readonly string[] => [
    verdict(() => parseWith('series', schema, { ...json, ...change })),
    verdict(() => readField(field, { ...code, ...ofCode }, 'series')),
  ];

  it('are read, with their place in the list', () => {
    expect(parseWith('series', schema, json)).toEqual(readField(field, code, 'series'));
    expect(conforms(json, describeField(field))).toBe(true);
    const long = { value: 700, unit: 'm' };
    expect(verdicts({ carries: [{ value: 100, unit: 'm' }, long] }, { carries: [100, 700] })).toEqual([
      'outside-range at series.carries[1]',
      'outside-range at series.carries[1]',
    ]);
    expect(verdicts({ launches: [{}] })).toEqual([
      'invalid-input at series.launches[0].ballSpeed',
      'invalid-input at series.launches[0].ballSpeed',
    ]);
  });

  it.each([
    { carries: [] },
    { carries: 'abcd' },
    { carries: { length: 1 } },
    { launches: [1, 2, 3] },
    { windy: 1 },
    { shots: 2.5 },
    { shots: 10 },
  ])('are refused by schema, parser and code alike: %j', (change) => {
    const [ofJson, ofCode] = verdicts(change);
    expect(ofJson).toBe(ofCode);
    expect(ofJson).not.toBe('right');
    expect(conforms({ ...json, ...change }, describeField(field))).toBe(false);
  });
});
