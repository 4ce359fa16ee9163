import { describe, expect, it } from 'vitest';
import { requireOneOf, requireWithin } from '../../src/numerics/require.js';
import { caught } from '../caught.js';

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
