import { describe, expect, it } from 'vitest';
import {
  disperse,
  expectedStrokes,
  fasterOrStraighter,
  publishedScatter,
  speedToClear,
  strokesOnHole,
} from '../../src/dispersion/index.js';
import { degrees, mph, yards } from '../../src/units/index.js';
import { caught } from '../caught.js';

type Door = (...args: readonly never[]) => unknown;

const delivery = {
  clubSpeed: mph(95),
  attackAngle: degrees(1),
  dynamicLoft: degrees(15),
  strikeOffset: { toe: 0.01, high: 0 },
};
const spread = {
  kind: 'student-t',
  dof: 6,
  sd: { faceAngle: degrees(2), clubPath: degrees(2) },
  correlations: [{ between: ['faceAngle', 'clubPath'], value: 0.4 }],
};
const hole = {
  length: yards(410),
  fairway: { width: yards(32), bend: { at: yards(230), angle: degrees(12) } },
  hazards: [{ kind: 'trees', acrossTo: yards(-30) }],
};
const drawn = { shots: 64, seed: 1, clubhead: 'driver' };
const doors: Readonly<Record<string, readonly [Door, readonly unknown[]]>> = {
  disperse: [
    disperse as Door,
    [
      { delivery, spread },
      { turf: 'firm' },
      { ...drawn, fairway: hole.fairway, limits: { left: yards(20) } },
    ],
  ],
  expectedStrokes: [
    expectedStrokes as Door,
    ['fairway', yards(150), { skill: { averageScore: 90 }, table: 'raw' }],
  ],
  strokesOnHole: [
    strokesOnHole as Door,
    [{ delivery, spread, hole }, { turf: 'firm' }, { ...drawn, skill: 'professional', aim: 'best' }],
  ],
  fasterOrStraighter: [
    fasterOrStraighter as Door,
    [
      { delivery, spread, hole, law: { directionPerMph: 0.01 } },
      { wind: { along: mph(2), across: mph(1) } },
      { ...drawn, speeds: [mph(93), mph(97)] },
    ],
  ],
  speedToClear: [
    speedToClear as Door,
    [
      { delivery, spread, carry: yards(190), share: 0.8 },
      { turf: 'soft' },
      { ...drawn, margin: yards(5), clubSpeed: { min: mph(85), max: mph(105) } },
    ],
  ],
};

/** Every place in a value, as the keys that lead to it. */
function placesIn(value: unknown): (readonly string[])[] {
  if (typeof value !== 'object' || value === null) return [[]];
  return [[], ...Object.entries(value).flatMap(([key, part]) => placesIn(part).map((at) => [key, ...at]))];
}

/** A copy with another value at one place. */
function changed(value: unknown, [key, ...rest]: readonly string[], to: unknown): unknown {
  if (key === undefined) return to;
  const copy: Record<string, unknown> | unknown[] = Array.isArray(value)
    ? [...value]
    : { ...(value as object) };
  const record = copy as Record<string, unknown>;
  record[key] = changed(record[key], rest, to);
  return copy;
}

const cyclic: { self?: unknown } = {};
cyclic.self = cyclic;
const { proxy, revoke } = Proxy.revocable({}, {});
revoke();
/** What no field of these doors may be. */
const wrong: readonly unknown[] = [
  null,
  Number.NaN,
  10n,
  Symbol('x'),
  'x'.repeat(1e4),
  () => 1,
  cyclic,
  proxy,
  Promise.resolve({}),
  Object.create({ inherited: 1 }),
  JSON.parse('{"__proto__": 1}'),
];

function frozenCopy<T>(value: T): T {
  if (typeof value !== 'object' || value === null) return value;
  return Object.freeze(
    Array.isArray(value)
      ? value.map(frozenCopy)
      : Object.fromEntries(Object.entries(value).map(([key, part]) => [key, frozenCopy(part)])),
  ) as T;
}

describe.each(Object.entries(doors))('%s', (_, [door, args]) => {
  it('takes frozen arguments', () => {
    expect(() => door(...(frozenCopy(args) as never[]))).not.toThrow();
  });

  it('refuses what is wrong anywhere in its arguments by a short message that names the field', () => {
    for (const place of placesIn(args).slice(1)) {
      for (const value of wrong) {
        const error = caught(() => door(...(changed(args, place, value) as never[])));
        expect(error.message.length, place.join('.')).toBeLessThan(600);
        expect(error.field, error.message).toBeTypeOf('string');
      }
    }
  });

  it('refuses a field it does not know at any depth', () => {
    for (const place of placesIn(args)) {
      const at = place.reduce<unknown>((part, key) => (part as Record<string, unknown>)[key], args);
      if (typeof at !== 'object' || Array.isArray(at)) continue;
      const error = caught(() => door(...(changed(args, [...place, 'colour'], 1) as never[])));
      expect(error.field).toMatch(/\.colour$/);
    }
  });

  it('lets the error of a getter pass', () => {
    const own = new Error('own');
    const bad = Object.defineProperty({}, 'seed', {
      enumerable: true,
      get: () => {
        throw own;
      },
    });
    if (door === (expectedStrokes as Door)) return;
    expect(() => door(...([args[0], args[1], bad] as never[]))).toThrow(own);
  });
});

describe('publishedScatter', () => {
  it('cannot be changed', () => {
    expect(Object.isFrozen(publishedScatter)).toBe(true);
    expect(publishedScatter.every((row) => Object.isFrozen(row) && Object.isFrozen(row.source))).toBe(true);
  });
});
