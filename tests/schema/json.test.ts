import { describe, expect, it } from 'vitest';
import { fittedModern, scaledModel } from '../../src/aerodynamics/index.js';
import { airAtAltitude } from '../../src/air/index.js';
import { type FairflightError, isFairflightError } from '../../src/errors.js';
import { parseDelivery, parseLaunch, parseScene } from '../../src/schema/index.js';
import { celsius, metres } from '../../src/units/index.js';

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
      /must be between 0 and 2100 rad\/s \(0 and 20050 rpm\), got "2600"/,
    ],
    [
      'a pair without its number',
      { ...launch, launchDirection: { unit: 'deg' } },
      'launch.launchDirection',
      /must be a number with a unit, like \{ "value": 1.15, "unit": "deg" \}, got an object/,
    ],
    [
      'not a number',
      { ...launch, 'spinRate (rpm)': Number.NaN },
      'launch.spinRate',
      /must be between 0 and 2100 rad\/s .*, got NaN/,
    ],
    [
      'a misspelt field',
      { ...launch, 'spinAxisTlit (deg)': 2 },
      'launch.spinAxisTlit',
      /has no field "spinAxisTlit"/,
    ],
    ['a field twice', { ...launch, 'ballSpeed (m/s)': 67 }, 'launch.ballSpeed', /given twice/],
    ['no object', [1, 2], 'launch', /launch must be an object, got an array/],
    ['nothing', undefined, 'launch', /launch is missing; it must be an object/],
  ])('refuses %s', (_name, given, field, message) => {
    const error = refusal(() => parseLaunch(given));
    expect(error.code).toBe('invalid-input');
    expect(error.field).toBe(field);
    expect(error.message).toMatch(message);
  });
  it('names range and unit as given when a value lies outside', () => {
    const error = refusal(() => parseLaunch({ ...launch, 'ballSpeed (mph)': 300 }));
    expect(error).toMatchObject({
      code: 'outside-range',
      field: 'launch.ballSpeed',
      unit: 'm/s',
      range: [1, 110],
    });
    expect(error.message).toBe(
      'launch.ballSpeed must be between 1 and 110 m/s (2.237 and 246.1 mph), got 134.1 m/s (300 mph)',
    );
    const slow = refusal(() =>
      parseLaunch({ ...launch, 'ballSpeed (km/h)': 3, 'ballSpeed (mph)': undefined }),
    );
    expect(slow.message).toBe(
      'launch.ballSpeed must be between 1 and 110 m/s (3.6 and 396 km/h), got 0.8333 m/s (3 km/h)',
    );
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
      /between -0.06 and 0.06 m \(-60 and 60 mm\), got 0.8 m \(800 mm\)$/,
    ],
    [
      'a steep attack',
      { ...delivery, 'attackAngle (deg)': 40 },
      'delivery.attackAngle',
      /between -0.6 and 0.6 rad \(-34.38° and 34.38°\), got 0.6981 rad \(40°\)/,
    ],
  ])('refuses %s', (_name, given, field, message) => {
    const error = refusal(() => parseDelivery(given));
    expect(error.field).toBe(field);
    expect(error.message).toMatch(message);
  });
});

describe('parseScene', () => {
  it('makes the same air and wind as the library does from the same words', () => {
    const scene = parseScene({
      air: { 'altitude (m)': 1200, 'temperature (C)': 24, 'relativeHumidity (%)': 30 },
      wind: { 'speed (mph)': 8, clock: 3, terrain: 'links-course', 'measuredAt (m)': 2 },
      ground: { 'elevation (ft)': -30, 'slope (deg)': 1 },
      turf: 'firm',
      aerodynamics: 'smits-smith-1994',
    });
    expect(scene.air).toEqual(
      airAtAltitude({ altitude: metres(1200), temperature: celsius(24), relativeHumidity: 0.3 }),
    );
    // WMO-No. 8 (2008): open grass has a roughness length of 0.03 m, so 10 m wind is ln(10/0.03)/ln(2/0.03) of 2 m wind.
    expect(scene.wind?.across).toBeCloseTo((-8 * 0.44704 * Math.log(10 / 0.03)) / Math.log(2 / 0.03), 6);
    expect(scene.wind?.along).toBeCloseTo(0, 12);
    expect(scene.ground?.elevation).toBeCloseTo(-9.144, 12);
    expect([scene.turf, scene.aerodynamics]).toEqual(['firm', 'smits-smith-1994']);
  });
  it('takes a model as data, and gives the record that the library makes', () => {
    const scaled = scaledModel('smits-smith-1994', { drag: 0.97 });
    expect(parseScene({ aerodynamics: JSON.parse(JSON.stringify(scaled)) }).aerodynamics).toEqual(scaled);
  });
  it('takes thermometer and barometer, or density and viscosity, and wind by components', () => {
    expect(parseScene({ air: { 'temperature (F)': 68, 'pressure (inHg)': 29.92 } }).air?.density).toBeCloseTo(
      1.199,
      3,
    );
    const air = { 'density (kg/m3)': 1.1, 'viscosity (Pa s)': 1.8e-5 };
    expect(parseScene({ air }).air).toEqual({ density: 1.1, viscosity: 1.8e-5 });
    const profile = { kind: 'power', exponent: 0.14 };
    expect(parseScene({ wind: { 'along (m/s)': -3, 'across (m/s)': 1, profile } }).wind).toEqual({
      along: -3,
      across: 1,
      profile,
    });
    expect(parseScene({})).toEqual({});
  });
  it.each([
    [
      'an unknown turf',
      { turf: 'concrete' },
      'scene.turf',
      /one of baked, firm, normal, soft, wet, artificial, drainedGreen, pennerBaked, pennerFirm, pennerNormal, pennerSoft, pennerWet, got "concrete"/,
    ],
    ['an unknown model', { aerodynamics: 'mine' }, 'scene.aerodynamics', /one of fitted-modern/],
    [
      'a model as data with a slip',
      { aerodynamics: { kind: 'scaled', of: 'fitted-modern', drag: 9 } },
      'scene.aerodynamics.drag',
      /between 0.2 and 5/,
    ],
    ['functions', { aerodynamics: { ...fittedModern } }, 'scene.aerodynamics', /made of functions/],
    [
      'heat',
      { air: { 'temperature (C)': 90 } },
      'scene.air.temperature',
      /between .* \(-50 and 60 °C\), got 363.1 K \(90 °C\)/,
    ],
    ['a bare altitude', { air: { altitude: 1200 } }, 'scene.air.altitude', /needs a unit/],
    [
      'an unknown air field',
      { air: { 'temperature (C)': 20, smell: 'salt' } },
      'scene.air.smell',
      /has no field "smell"/,
    ],
    [
      'two origins',
      { wind: { 'speed (mph)': 8, clock: 3, 'from (deg)': 90 } },
      'scene.wind',
      /exactly one of .* got from and clock/,
    ],
    ['wind without origin', { wind: { 'speed (mph)': 8 } }, 'scene.wind', /exactly one of .* got none/],
    [
      'an unknown profile',
      { wind: { 'along (m/s)': 1, 'across (m/s)': 0, profile: { kind: 'gust' } } },
      'scene.wind.profile.kind',
      /none of the kinds|one of/,
    ],
    [
      'a late hour',
      { wind: { 'speed (mph)': 8, clock: 13 } },
      'scene.wind.clock',
      /between 0 and 12, got 13/,
    ],
    ['a number for the ground', { ground: 3 }, 'scene.ground', /must be an object, got 3/],
  ])('refuses %s', (_name, given, field, message) => {
    const error = refusal(() => parseScene(given));
    expect(error.message).toMatch(message);
    expect(error.field).toBe(field);
  });
});
