import { describe, expect, it } from 'vitest';
import { FairflightError, isFairflightError } from '../../src/errors.js';

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
