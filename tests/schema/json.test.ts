import { describe, expect, it } from 'vitest';
import { type FairflightError, isFairflightError } from '../../src/errors.js';
import { parseDelivery, parseLaunch } from '../../src/schema/index.js';

const launch = { 'ballSpeed (mph)': 150, 'launchAngle (deg)': 12, 'spinRate (rpm)': 2600 };

const refusal = (run: () => unknown): FairflightError => {
  try {
    run();
  } catch (error) {
    if (isFairflightError(error)) return error;
    throw error;
  }
  throw new Error('it was accepted');
};

describe('parseLaunch', () => {
  it('reads units in keys and beside values into SI', () => {
    // International yard and pound agreement, 1959: 1 mph = 0.44704 m/s.
    const expected = {
      ballSpeed: 150 * 0.44704,
      launchAngle: (12 * Math.PI) / 180,
      spinRate: (2600 * Math.PI) / 30,
    };
    const long = {
      ballSpeed: { value: 241.4016, unit: 'km/h' },
      launchAngle: { value: 12, unit: '°' },
      spinRate: { value: 2600, unit: 'RPM' },
    };
    for (const given of [launch, long]) {
      const read = parseLaunch(given);
      expect(Object.keys(read)).toEqual(Object.keys(expected));
      expect(read.ballSpeed).toBeCloseTo(expected.ballSpeed, 10);
      expect(read.launchAngle).toBeCloseTo(expected.launchAngle, 12);
      expect(read.spinRate).toBeCloseTo(expected.spinRate, 10);
    }
  });
  it('survives JSON and leaves its input alone', () => {
    const frozen = Object.freeze({ ...launch });
    expect(parseLaunch(JSON.parse(JSON.stringify(frozen)))).toEqual(parseLaunch(frozen));
  });
  it.each([
    [
      'a missing field',
      { 'ballSpeed (mph)': 150, 'launchAngle (deg)': 12 },
      'launch.spinRate',
      /spinRate is missing/,
    ],
    [
      'a bare number',
      { ...launch, launchDirection: 2 },
      'launch.launchDirection',
      /needs a unit \(rad, deg\); write \{ "value": 2, "unit": "deg" \}/,
    ],
    [
      'an unknown unit',
      { ...launch, 'launchDirection (grads)': 2 },
      'launch.launchDirection',
      /has the unit "grads"; use one of rad, deg/,
    ],
    [
      'a unit of another kind',
      { 'ballSpeed (yd)': 150, 'launchAngle (deg)': 12, 'spinRate (rpm)': 2600 },
      'launch.ballSpeed',
      /unit "yd"/,
    ],
    [
      'text for a number',
      { ...launch, 'spinRate (rpm)': '2600' },
      'launch.spinRate',
      /must be a number with a unit/,
    ],
    [
      'not a number',
      { ...launch, 'spinRate (rpm)': Number.NaN },
      'launch.spinRate',
      /must be a number with a unit/,
    ],
    ['a misspelt field', { ...launch, 'spinAxisTlit (deg)': 2 }, 'launch', /has no field "spinAxisTlit"/],
    ['a field twice', { ...launch, 'ballSpeed (m/s)': 67 }, 'launch.ballSpeed', /given twice/],
    ['no object', [1, 2], 'launch', /launch must be an object, got \[1,2\]/],
    ['nothing', undefined, 'launch', /launch is missing; it must be an object/],
  ])('refuses %s', (_name, given, field, message) => {
    const error = refusal(() => parseLaunch(given));
    expect(error.code).toBe('invalid-input');
    expect(error.field).toBe(field);
    expect(error.message).toMatch(message);
  });
  it('names range and unit as given when a value lies outside', () => {
    const error = refusal(() => parseLaunch({ ...launch, 'ballSpeed (mph)': 300 }));
    expect(error).toMatchObject({ code: 'outside-range', field: 'launch.ballSpeed', unit: 'mph' });
    expect(error.message).toBe('launch.ballSpeed must be between 2.237 and 246.1 mph, got 300');
  });
  it('reports every trouble at once', () => {
    const error = refusal(() =>
      parseLaunch({ 'ballSpeed (mph)': 300, spinRate: 2600, 'launchAngle (deg)': 12 }),
    );
    expect(error.message).toMatch(/launch\.ballSpeed must .*; also launch\.spinRate needs a unit/);
  });
});

describe('parseDelivery', () => {
  const delivery = { 'clubSpeed (mph)': 96, 'attackAngle (deg)': -1, 'dynamicLoft (deg)': 14 };
  it('reads nested fields and the hand', () => {
    const read = parseDelivery({
      ...delivery,
      'clubPath (deg)': 2,
      strikeOffset: { 'toe (mm)': 8, 'high (in)': -0.5 },
      hand: 'left',
    });
    expect(read.strikeOffset?.toe).toBeCloseTo(0.008, 15);
    expect(read.strikeOffset?.high).toBeCloseTo(-0.0127, 15);
    expect(read.hand).toBe('left');
    expect(read.clubPath).toBeCloseTo((2 * Math.PI) / 180, 12);
    expect('faceAngle' in read).toBe(false);
  });
  it.each([
    ['an unknown hand', { ...delivery, hand: 'both' }, 'delivery.hand', /one of right, left, got "both"/],
    [
      'half an offset',
      { ...delivery, strikeOffset: { 'toe (mm)': 8 } },
      'delivery.strikeOffset.high',
      /high is missing/,
    ],
    [
      'an offset off the club',
      { ...delivery, strikeOffset: { 'toe (mm)': 800, 'high (mm)': 0 } },
      'delivery.strikeOffset.toe',
      /between -100 and 100 mm/,
    ],
    [
      'a steep attack',
      { ...delivery, 'attackAngle (deg)': 40 },
      'delivery.attackAngle',
      /between -34.38 and 34.38 deg, got 40/,
    ],
  ])('refuses %s', (_name, given, field, message) => {
    const error = refusal(() => parseDelivery(given));
    expect(error.field).toBe(field);
    expect(error.message).toMatch(message);
  });
});
