import { describe, expect, it } from 'vitest';
import {
  FairflightError,
  isFairflightError,
  requireOneOf,
  requireRecord,
  requireWithin,
} from '../../src/errors.js';
import { caught } from '../caught.js';

describe('FairflightError', () => {
  it('carries code, message and particulars', () => {
    const error = new FairflightError('outside-range', 'too fast', {
      field: 'launch.ballSpeed',
      value: 150,
      unit: 'm/s',
      range: [1, 110],
      hint: 'slow down',
    });
    expect(error).toBeInstanceOf(Error);
    expect(error.name).toBe('FairflightError');
    expect(error).toMatchObject({
      code: 'outside-range',
      message: 'too fast',
      field: 'launch.ballSpeed',
      value: 150,
      unit: 'm/s',
      range: [1, 110],
      hint: 'slow down',
    });
    expect(error.stack).toContain('FairflightError');
  });
  it('needs no particulars', () => {
    const error = new FairflightError('aborted', 'stopped');
    expect([error.field, error.value, error.unit, error.range, error.hint]).toEqual(Array(5).fill(undefined));
  });
  it('is known across copies of the library, and nothing else is', () => {
    // Another copy has its own class; what it shares is the symbol in the registry.
    const foreign = Object.defineProperty(new Error('from the other build'), Symbol.for('fairflight/error'), {
      value: true,
    });
    expect(isFairflightError(foreign)).toBe(true);
    expect(isFairflightError(new FairflightError('unsupported', 'no'))).toBe(true);
    for (const other of [new Error('plain'), null, undefined, 'text', 7, {}, { code: 'invalid-input' }]) {
      expect(isFairflightError(other)).toBe(false);
    }
  });
  it('does not show its mark among the enumerable properties', () => {
    expect(Object.getOwnPropertySymbols({ ...new FairflightError('aborted', 'x') })).toEqual([]);
  });
});

describe('requireWithin', () => {
  it('returns what lies within, both ends included', () => {
    for (const value of [1, 55.5, 110]) expect(requireWithin('v', value, 1, 110, 'm/s')).toBe(value);
  });
  it('says field, range, unit, value and hint of what lies outside', () => {
    const error = caught(() =>
      requireWithin('ballSpeed', 150, 1, 110, 'm/s', 'if that was mph, pass mph(150)'),
    );
    expect(error.message).toBe(
      'ballSpeed must be between 1 and 110 m/s, got 150; if that was mph, pass mph(150)',
    );
    expect(error).toMatchObject({
      code: 'outside-range',
      field: 'ballSpeed',
      value: 150,
      unit: 'm/s',
      range: [1, 110],
    });
    expect(error.hint).toBe('if that was mph, pass mph(150)');
    expect(caught(() => requireWithin('v', 0.999, 1, 110, 'm/s')).code).toBe('outside-range');
    expect(caught(() => requireWithin('v', 0.999, 1, 110, 'm/s')).hint).toBeUndefined();
  });
  it('leaves out the unit of a pure number', () => {
    expect(caught(() => requireWithin('share', 2, 0, 1, '')).message).toBe(
      'share must be between 0 and 1, got 2',
    );
  });
  it('tells a value that is no finite number from one out of range', () => {
    const bad: readonly [unknown, string][] = [
      [Number.NaN, 'NaN'],
      [Number.POSITIVE_INFINITY, 'Infinity'],
      [Number.NEGATIVE_INFINITY, '-Infinity'],
      ['12', '"12"'],
      [undefined, 'undefined'],
      [null, 'null'],
      [{}, 'an object'],
      [[], 'an array'],
      [true, 'true'],
      [12n, '12n'],
    ];
    for (const [value, shown] of bad) {
      const error = caught(() => requireWithin('v', value, 0, 100, 'm'));
      expect(error.code).toBe('invalid-input');
      expect(error.value).toBe(value);
      expect(error.message).toBe(`v must be between 0 and 100 m, got ${shown}`);
    }
  });
});

describe('requireOneOf', () => {
  it('returns a listed name', () => {
    expect(requireOneOf('hand', 'left', ['left', 'right'])).toBe('left');
  });
  it('lists the names otherwise', () => {
    const error = caught(() => requireOneOf('hand', 'both', ['left', 'right']));
    expect(error.message).toBe('hand must be one of left, right, got "both"');
    expect(error).toMatchObject({ code: 'invalid-input', field: 'hand', value: 'both' });
    expect(caught(() => requireOneOf('hand', undefined, ['left', 'right'])).message).toContain(
      'got undefined',
    );
  });
});

describe('requireRecord', () => {
  it('returns a record of known fields', () => {
    const record = { x: 1 };
    expect(requireRecord('point', record, ['x', 'y'])).toBe(record);
  });
  it('refuses what is no record', () => {
    for (const [value, shown] of [
      [null, 'null'],
      [3, '3'],
      ['x', '"x"'],
      [[1], 'an array'],
      [undefined, 'undefined'],
    ] as const) {
      const error = caught(() => requireRecord('point', value as never, ['x']));
      expect(error.code).toBe('invalid-input');
      expect(error.message).toBe(`point must be an object, got ${shown}`);
    }
  });
  it('refuses a field it does not know, so that a slip of the pen does not pass for a default', () => {
    const error = caught(() => requireRecord('launch', { ballspeed: 70 }, ['ballSpeed', 'launchAngle']));
    expect(error.message).toBe('launch has no field "ballspeed"; known fields: ballSpeed, launchAngle');
    expect(error).toMatchObject({ code: 'invalid-input', field: 'launch.ballspeed', value: 70 });
  });
});
