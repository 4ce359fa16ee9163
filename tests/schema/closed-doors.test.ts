import { describe, expect, it } from 'vitest';
import { type DocumentName, parseLaunch, parseScene, readShots } from '../../src/schema/index.js';
import { symbolOf } from '../../src/schema/unit-names.js';
import { inUnit } from '../../src/units/unit.js';
import { caught } from '../caught.js';
import { changed, declaredDocument, exampleOf, parsers, placesIn } from './example.js';

const NAMES = Object.keys(parsers) as DocumentName[];

const cyclic: { value: number; unit?: unknown } = { value: 1 };
cyclic.unit = cyclic;
const HOSTILE: readonly (readonly [string, unknown])[] = [
  ['a ring', cyclic],
  ['a ring of lists', Object.assign([], { 0: cyclic })],
  ['a big integer', 10n ** 5000n],
  ['a pair with a big integer', { value: 1n, unit: 'mph' }],
  ['a symbol', Symbol('x')],
  ['a function', () => 1],
  ['a promise', Promise.resolve(1)],
  ['a long text', 'x'.repeat(1e6)],
  ['a pair with a long unit', { value: 1, unit: 'x'.repeat(1e6) }],
  ['a revoked proxy', revoked()],
  ['an inherited pair', Object.create({ value: 1, unit: '1' })],
  ['a pair of which half is inherited', Object.assign(Object.create({ unit: '1' }), { value: 1, x: 1 })],
];

function revoked(): object {
  const { proxy, revoke } = Proxy.revocable({}, {});
  revoke();
  return proxy;
}

describe.each(NAMES)('%s refuses by its path, in few words,', (name) => {
  const { root, parse } = parsers[name];
  const field = declaredDocument(name);
  const json = exampleOf(field, (value, { said }) => ({ value: inUnit(said, value), unit: symbolOf(said) }));
  const places = placesIn(field);

  it.each(HOSTILE)('%s in the place of the document and of every field', (_what, value) => {
    const due = places.filter((place) => place.field.kind !== 'text' || typeof value !== 'string');
    for (const path of [[], ...due.map((place) => place.path)]) {
      const where = [root, ...path].join('.');
      const error = caught(() => parse(path.length === 0 ? value : changed(json, path, value)));
      expect(`${error.field}.`.startsWith(`${where}.`), `${error.field} for ${where}`).toBe(true);
      expect(error.message.length).toBeLessThan(1000);
      expect(JSON.stringify(error)).toContain(JSON.stringify(error.message).slice(1, -1));
    }
  });

  it('keys that reach for the prototype', () => {
    for (const key of ['__proto__', 'constructor', 'toString', '__proto__ (mph)']) {
      for (const path of [[], ...places.map((place) => place.path).filter((at) => isRecordAt(json, at))]) {
        const evil = changed(json, [...path, key], json);
        const error = caught(() => parse(evil));
        const where = [root, ...path, key.replace(' (mph)', '')].join('.');
        // A pair with a third key is no pair, and says so of itself.
        expect([where, [root, ...path].join('.')]).toContain(error.field);
        expect(JSON.parse(JSON.stringify(evil))).toBeTypeOf('object');
      }
    }
  });
});

function isRecordAt(json: unknown, path: readonly string[]): boolean {
  const value = path.reduce<unknown>((at, key) => (at as Record<string, unknown> | undefined)?.[key], json);
  return typeof value === 'object' && value !== null;
}

describe('a launch', () => {
  const launch = { 'ballSpeed (mph)': 150, 'launchAngle (deg)': 12, 'spinRate (rpm)': 2600 };
  it('takes no data from a key named __proto__', () => {
    const hidden = JSON.parse(`{ "__proto__": ${JSON.stringify(launch)} }`);
    expect(caught(() => parseLaunch(hidden))).toMatchObject({
      code: 'invalid-input',
      field: 'launch.__proto__',
    });
    expect(caught(() => parseLaunch(Object.create(launch))).message).toMatch(/launch inherits "ballSpeed/);
  });
  it('lets the error of a getter pass, and reads each once', () => {
    const mine = new Error('mine');
    const throwing = Object.defineProperty({ ...launch }, 'launchDirection', {
      enumerable: true,
      get: () => {
        throw mine;
      },
    });
    expect(() => parseLaunch(throwing)).toThrow(mine);
    let reads = 0;
    const counted = Object.defineProperty({ ...launch }, 'launchDirection (deg)', {
      enumerable: true,
      get: () => ++reads,
    });
    expect(parseLaunch(counted).launchDirection).toBeCloseTo(Math.PI / 180, 12);
    expect(reads).toBe(1);
  });
  it('takes a unit only where one is due, and tells where', () => {
    const error = caught(() => parseScene({ 'turf (m)': 'firm' }));
    expect([error.field, error.message]).toEqual([
      'scene.turf',
      'scene.turf takes no unit; write the key as "turf"',
    ]);
  });
  it('reads −50 °C, which rounding puts below the range, and the ends in every unit', () => {
    for (const [celsius, fahrenheit] of [
      [-50, -58],
      [60, 140],
    ]) {
      expect(parseScene({ air: { 'temperature (C)': celsius } }).air).toBeDefined();
      expect(parseScene({ air: { 'temperature (F)': fahrenheit } }).air).toBeDefined();
    }
  });
  it('blames the fields of a wind where the caller wrote them', () => {
    const reading = { 'speed (m/s)': 10, clock: 12, terrain: 'city' };
    const field = (wind: object): string | undefined => caught(() => parseScene({ wind })).field;
    expect(field({ ...reading, 'measuredAt (m)': 0.5 })).toBe('scene.wind.measuredAt');
    expect(field({ ...reading, profile: { kind: 'uniform' } })).toBe('scene.wind.profile');
    expect(field({ 'speed (m/s)': 10, clock: 12, 'measuredAt (m)': 2 })).toBe('scene.wind.measuredAt');
    expect(field({ ...reading, 'speed (m/s)': 55, terrain: 'links-course', 'measuredAt (m)': 2 })).toBe(
      'scene.wind.speed',
    );
    const steep = { kind: 'power', exponent: 1, 'referenceHeight (m)': 0.5 };
    expect(field({ 'along (m/s)': 50, 'across (m/s)': 0, profile: steep })).toBe(
      'scene.wind.profile.referenceHeight',
    );
  });
});

describe('readShots', () => {
  const good = 'ball speed (mph),launch angle (deg),spin (rpm)\n142,12,2600\n';
  it.each([undefined, null, 5, 10n, Symbol('x'), {}, [], cyclic, () => good, Promise.resolve(good)])(
    'refuses what is no text: %#',
    (text) => {
      expect(caught(() => readShots(text as never))).toMatchObject({
        code: 'invalid-input',
        field: 'csvText',
      });
    },
  );
  it.each<[unknown, string]>([
    [{ seperator: ',' }, 'options.seperator'],
    [{ separator: '|' }, 'options.separator'],
    [{ separator: 5 }, 'options.separator'],
    [{ decimalMark: null }, 'options.decimalMark'],
    [{ needs: 'nothing' }, 'options.needs'],
    [JSON.parse('{ "__proto__": { "separator": ";" } }'), 'options.__proto__'],
    [Object.create({ separator: ';' }), 'options.separator'],
    [null, 'options'],
    [';', 'options'],
  ])('refuses the options %j', (options, field) => {
    expect(caught(() => readShots(good, options as never)).field).toBe(field);
  });
  it('names the text as the field of whatever is wrong with it, and quotes it in few words', () => {
    const wide = 'x'.repeat(1e5);
    for (const text of ['', '#', wide, `${wide}\n${wide}`, `${'a,'.repeat(1e5)}\n1`, `"${wide}`, 'a\0']) {
      const error = caught(() => readShots(text));
      expect(error.field).toBe('csvText');
      expect(error.message.length).toBeLessThan(4000);
    }
    const table = readShots(good.replace('142', wide));
    expect(table.rejected[0]?.message).toMatch(/^"x{60}"… \(100000 characters\) is not a number/);
  });
  it('keeps a column named __proto__ aside like any other', () => {
    const { aside } = readShots('ball speed (mph),launch (deg),spin (rpm),__proto__\n142,12,2600,here\n');
    expect(Object.entries(aside[0] ?? {})).toEqual([['__proto__', 'here']]);
  });
});
