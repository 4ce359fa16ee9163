import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { requireSoundProfile } from '../../src/air/sound-wind.js';
import {
  type AerodynamicModel,
  aerodynamicModels,
  type Flight,
  type FlightOptions,
  fly,
  isFairflightError,
  type Launch,
  type Scene,
  type Wind,
} from '../../src/index.js';
import { resolveModel, withReverseMagnus } from '../../src/models.js';
import { caught } from '../caught.js';

/**
 * Whatever finite input lies in the allowed ranges, `fly` answers with finite numbers and in bounded time; whatever
 * lies outside, it says which field, and what is allowed. The ranges are those the docstrings state.
 */

/** Any double of the range, its ends, and the odd numbers arithmetic trips over. */
const within = (min: number, max: number): fc.Arbitrary<number> => {
  const odd = [min, max, 0, -0, Number.MIN_VALUE, -Number.MIN_VALUE, 1e-300, 1e-9, -1e-9, 1e-3, 1];
  return fc.oneof(
    { weight: 6, arbitrary: fc.double({ min, max, noNaN: true }) },
    {
      weight: 4,
      arbitrary: fc.integer({ min: 0, max: 1000 }).map((share) => min + ((max - min) * share) / 1000),
    },
    { weight: 1, arbitrary: fc.constantFrom(...odd.filter((value) => value >= min && value <= max)) },
  );
};
const maybe = <T>(arbitrary: fc.Arbitrary<T>): fc.Arbitrary<T | undefined> =>
  fc.option(arbitrary, { nil: undefined });
/** Without the fields that are undefined, which exact optional types forbid. */
const compact = <T extends object>(record: T): T =>
  Object.fromEntries(Object.entries(record).filter(([, value]) => value !== undefined)) as T;

const launches = fc
  .record({
    ballSpeed: within(1, 110),
    launchAngle: within(-Math.PI / 2, Math.PI / 2),
    launchDirection: maybe(within(-Math.PI, Math.PI)),
    spinRate: within(0, 2100),
    spinAxisTilt: maybe(within(-Math.PI, Math.PI)),
    rifleSpin: maybe(within(-2100, 2100)),
  })
  .map((launch) => compact(launch) as Launch);

const profiles = fc.oneof(
  fc.constant({ kind: 'uniform' as const }),
  fc
    .record({ roughness: within(1e-5, 5), displacement: within(0, 50), above: within(0.01, 100) })
    .map(({ roughness, displacement, above }) => ({
      kind: 'log' as const,
      roughness,
      displacement,
      referenceHeight: Math.min(200, Math.max(0.5, displacement + roughness + above)),
    })),
  fc
    .record({ exponent: within(0, 1), referenceHeight: within(0.5, 200) })
    .map((profile) => ({ kind: 'power' as const, ...profile })),
);

/** Whether a profile makes a wind that is computed: its law may carry a wind at 1 m to a speed without meaning at 100 m. */
function isSound(wind: object): boolean {
  try {
    requireSoundProfile(wind as Wind, 'wind');
    return true;
  } catch {
    return false;
  }
}

/** The engine gives up, with an error, after 20,000 steps of 13 evaluations: no flight takes more work than this. */
const MOST_EVALUATIONS = 270_000;
/** Share of cases that may end in that error: tolerances near 1 nm in winds no one has stood in. */
const MOST_REFUSALS = 10;

let evaluations = 0;
/** Every built-in model, with and without its lift in the drag crisis, counting how often it is asked. */
const models: readonly AerodynamicModel[] = Object.values(aerodynamicModels)
  .flatMap((model) => [model, resolveModel(withReverseMagnus(model))])
  .map((model) => ({
    ...model,
    dragCoefficient: (reynolds, spinRatio) => {
      if (++evaluations > MOST_EVALUATIONS) throw new Error('the integration does not come to an end');
      return model.dragCoefficient(reynolds, spinRatio);
    },
  }));

const scenes = fc
  .record({
    air: maybe(fc.record({ density: within(0, 3), viscosity: within(1e-6, 1e-4) })),
    wind: maybe(
      fc
        .record({ along: within(-60, 60), across: within(-60, 60), profile: maybe(profiles) })
        .map((wind) => compact(wind))
        .filter(isSound),
    ),
    ground: maybe(
      fc
        .record({
          elevation: maybe(within(-1000, 1000)),
          slope: maybe(within(-0.6, 0.6)),
          crossSlope: maybe(within(-0.6, 0.6)),
        })
        .map((ground) => compact(ground)),
    ),
    aerodynamics: fc.constantFrom(...models),
  })
  .map((scene) => compact(scene) as unknown as Scene);

const options = fc
  .record({ tolerance: maybe(within(1e-9, 10)), timeLimit: maybe(within(0.01, 600)) })
  .map((given) => compact(given as FlightOptions));

/** Path of the first number in a record, however deep, that is not finite. */
function notFinite(value: unknown): string | undefined {
  if (typeof value === 'number') return Number.isFinite(value) ? undefined : '';
  if (typeof value !== 'object' || value === null) return undefined;
  for (const [key, inner] of Array.isArray(value) ? value.entries() : Object.entries(value)) {
    const found = notFinite(inner);
    if (found !== undefined) return `.${key}${found}`;
  }
  return undefined;
}

describe('fly, given anything', () => {
  it('in range answers in finite numbers and bounded work: 10,000 cases', () => {
    const refusals: FlightOptions[] = [];
    fc.assert(
      fc.property(launches, scenes, options, (launch, scene, given) => {
        let flight: Flight;
        try {
          evaluations = 0;
          flight = fly(launch, scene, given);
        } catch (error) {
          if (!isFairflightError(error) || error.code !== 'not-converged') throw error;
          expect(error.message).toContain('loosen options.tolerance');
          refusals.push(given);
          return;
        }
        expect(notFinite(flight)).toBeUndefined();
        expect(flight.hangTime).toBeGreaterThanOrEqual(0);
        expect(flight.hangTime).toBeLessThanOrEqual((given.timeLimit ?? 60) + 1e-9);
        expect(flight.apex).toBeGreaterThanOrEqual(0);
        expect(flight.carry).toBeGreaterThanOrEqual(0);
        if (flight.ended === 'landed') {
          const { position } = flight.landing;
          const { elevation = 0, slope = 0, crossSlope = 0 } = scene.ground ?? {};
          const ground = elevation + Math.tan(slope) * position.x + Math.tan(crossSlope) * position.z;
          expect(Math.abs(position.y - ground)).toBeLessThan(1e-4 * (1 + Math.abs(ground)));
        } else {
          expect(flight.warnings.some(({ quantity }) => quantity === 'ended')).toBe(true);
        }
      }),
      { numRuns: 10_000, seed: 20260610, endOnFailure: true },
    );
    expect(refusals.length).toBeLessThanOrEqual(MOST_REFUSALS);
    expect(refusals.filter(({ tolerance = 1e-4 }) => tolerance > 1e-6)).toEqual([]);
  });

  const WRONG = [
    Number.NaN,
    Number.POSITIVE_INFINITY,
    Number.NEGATIVE_INFINITY,
    '12',
    null,
    {},
    [1],
  ] as const;
  /** Field, allowed range, and how a bad value gets into the call. */
  const FIELDS: readonly (readonly [string, number, number, (value: unknown) => unknown])[] = [
    ['launch.ballSpeed', 1, 110, (ballSpeed) => fly({ ...drive, ballSpeed } as Launch)],
    [
      'launch.launchAngle',
      -Math.PI / 2,
      Math.PI / 2,
      (launchAngle) => fly({ ...drive, launchAngle } as Launch),
    ],
    [
      'launch.launchDirection',
      -Math.PI,
      Math.PI,
      (launchDirection) => fly({ ...drive, launchDirection } as Launch),
    ],
    ['launch.spinRate', 0, 2100, (spinRate) => fly({ ...drive, spinRate } as Launch)],
    ['launch.spinAxisTilt', -Math.PI, Math.PI, (spinAxisTilt) => fly({ ...drive, spinAxisTilt } as Launch)],
    ['launch.rifleSpin', -2100, 2100, (rifleSpin) => fly({ ...drive, rifleSpin } as Launch)],
    ['scene.air.density', 0, 3, (density) => fly(drive, { air: { density, viscosity: 1.8e-5 } } as Scene)],
    [
      'scene.air.viscosity',
      1e-6,
      1e-4,
      (viscosity) => fly(drive, { air: { density: 1.2, viscosity } } as Scene),
    ],
    ['scene.wind.along', -60, 60, (along) => fly(drive, { wind: { along, across: 0 } } as Scene)],
    ['scene.wind.across', -60, 60, (across) => fly(drive, { wind: { along: 0, across } } as Scene)],
    ['scene.ground.elevation', -1000, 1000, (elevation) => fly(drive, { ground: { elevation } } as Scene)],
    ['scene.ground.slope', -0.6, 0.6, (slope) => fly(drive, { ground: { slope } } as Scene)],
    ['scene.ground.crossSlope', -0.6, 0.6, (crossSlope) => fly(drive, { ground: { crossSlope } } as Scene)],
    ['options.tolerance', 1e-9, 10, (tolerance) => fly(drive, {}, { tolerance } as FlightOptions)],
    ['options.timeLimit', 0.01, 600, (timeLimit) => fly(drive, {}, { timeLimit } as FlightOptions)],
  ];
  const drive = { ballSpeed: 70, launchAngle: 0.2, spinRate: 270 } as Launch;

  it.each(FIELDS)('outside the range of %s says so', (field, min, max, call) => {
    // A trillionth beyond an end is rounding of a unit, and allowed.
    const outside = fc.oneof(
      fc
        .double({ min: max, noNaN: true, noDefaultInfinity: true })
        .filter((x) => x - max > 2e-12 * Math.abs(max)),
      fc
        .double({ max: min, noNaN: true, noDefaultInfinity: true })
        .filter((x) => min - x > 2e-12 * Math.abs(min)),
    );
    fc.assert(
      fc.property(outside, (value) => {
        const error = caught(() => call(value));
        expect(error.code).toBe('outside-range');
        expect(error.field).toBe(field);
        expect(error.value).toBe(value);
        expect(error.range).toEqual([min, max]);
        expect(error.message).toContain(field);
        expect(error.message).toContain(String(Number(max.toPrecision(4))));
      }),
      { numRuns: 200, seed: 20260611 },
    );
    for (const end of [min, max]) expect(() => call(end)).not.toThrow();
    for (const wrong of WRONG) {
      const error = caught(() => call(wrong));
      expect(error.code).toBe('invalid-input');
      expect(error.field).toBe(field);
    }
  });

  it.each([
    ['launch', () => fly({ ...drive, spin: 3 } as unknown as Launch)],
    ['scene', () => fly(drive, { winds: {} } as unknown as Scene)],
    ['scene.ground', () => fly(drive, { ground: { hill: 1 } } as unknown as Scene)],
    ['options', () => fly(drive, {}, { tolerence: 1 } as unknown as FlightOptions)],
  ])('a misspelt field of %s is told, not ignored', (record, call) => {
    const error = caught(call);
    expect(error.code).toBe('invalid-input');
    expect(error.field?.startsWith(record)).toBe(true);
  });

  it('knows no such model', () => {
    expect(caught(() => fly(drive, { aerodynamics: 'nobody-1900' })).field).toBe('scene.aerodynamics');
  });
});
