import { beforeAll, describe, expect, it } from 'vitest';
import { fittedModern, resolveModel, scaledModel } from '../../src/aerodynamics/index.js';
import { gripLevel, withGripLevel } from '../../src/clubhead/grip-level.js';
import { type Clubhead, clubheads } from '../../src/clubhead/index.js';
import { fly } from '../../src/flight/index.js';
import { stream } from '../../src/numerics/index.js';
import type { Launch } from '../../src/scene/index.js';
import {
  type Calibration,
  type CalibrationOptions,
  type CalibrationTarget,
  calibrate,
  defaultFlightReadingErrors,
  type MeasuredShot,
} from '../../src/session/index.js';
import { launchOf } from '../../src/session/launch-of.js';
import { defaultReadingErrors, strike } from '../../src/strike/index.js';
import { designRows } from '../../src/sweep/index.js';
import { degrees, mph, si } from '../../src/units/index.js';
import { caught } from '../caught.js';
import { measuredStrike } from '../strike/helpers.js';

const TRUTH = { restitution: 0.82, tangentialRestitution: -0.12, dragScale: 1.06, liftScale: 0.93 } as const;
const ALL: readonly CalibrationTarget[] = ['restitution', 'tangentialRestitution', 'dragScale', 'liftScale'];
const driver = clubheads.driver;
const trueHead = {
  ...driver,
  restitution: { ...driver.restitution, atReference: TRUTH.restitution, atEdge: 0.78 - 0.018 },
  tangentialRestitution: withGripLevel(driver.tangentialRestitution, TRUTH.tangentialRestitution),
};
const trueBall = scaledModel(fittedModern, { drag: TRUTH.dragScale, lift: TRUTH.liftScale });

const GROSS: readonly ((shot: Required<MeasuredShot>) => MeasuredShot)[] = [
  ({ ballSpeed }) => ({ ballSpeed: si<never>(ballSpeed * 0.7) }),
  ({ spinRate }) => ({ spinRate: si<never>(spinRate * 2.2) }),
  ({ carry }) => ({ carry: si<never>(carry * 0.6) }),
  ({ clubSpeed }) => ({ clubSpeed: si<never>(clubSpeed * 1.25) }),
];
/** Misreads of 4 to 10 standard errors: too small to be seen for certain, large enough to pull. */
const MIDDLING: typeof GROSS = [
  ({ ballSpeed }) => ({ ballSpeed: si<never>(ballSpeed * 1.07) }),
  ({ spinRate }) => ({ spinRate: si<never>(spinRate * 1.3) }),
  ({ carry }) => ({ carry: si<never>(carry * 0.9) }),
  ({ dynamicLoft }) => ({ dynamicLoft: si<never>(dynamicLoft + degrees(4)) }),
];

interface Player {
  /** Spread of strikes over the face [m], standard deviations. */
  readonly toe: number;
  readonly high: number;
  /** Head; default the one of {@link TRUTH}. */
  readonly head?: Clubhead;
  /** Usual attack angle in degrees; default level. */
  readonly attack?: number;
  /** Errors of attack angle and dynamic loft in degrees. */
  readonly loftError?: number;
}
const USUAL: Player = { toe: 0.012, high: 0.008 };

/** A session measured with the default errors; the first shots are misread. */
function session(
  seed: number,
  count: number,
  misreads: number,
  player: Player = USUAL,
  misreadings = GROSS,
): MeasuredShot[] {
  const loftError = degrees(player.loftError ?? 1);
  const errors = { ...defaultReadingErrors, attackAngle: loftError, dynamicLoft: loftError };
  return Array.from({ length: count }, (_, i): MeasuredShot => {
    const { normal, uniform } = stream(seed, i);
    const within = (limit: number, value: number): never =>
      si<never>(Math.max(-limit, Math.min(limit, value)));
    const delivery = {
      clubSpeed: mph(95 + 5 * normal()),
      attackAngle: degrees((player.attack ?? 0) + 2 * normal()),
      clubPath: degrees(2 * normal()),
      faceAngle: degrees(2 * normal()),
      dynamicLoft: degrees(14 + 1.5 * normal()),
      strikeOffset: { toe: within(0.05, player.toe * normal()), high: within(0.035, player.high * normal()) },
    };
    const { launch } = strike(delivery, { clubhead: player.head ?? trueHead });
    const flight = fly(launch, { aerodynamics: trueBall });
    const times = (value: number, share: number): never => si<never>(value * (1 + share * normal()));
    const plus = (value: number | undefined, sd: number): never => si<never>((value ?? 0) + sd * normal());
    const shot = {
      ...measuredStrike(delivery, launch, normal, errors),
      carry: times(flight.carry, 0.015),
      apex: times(flight.apex, 0.03),
      descentAngle: plus(flight.descentAngle, degrees(1)),
    } as const;
    if (i >= misreads) return shot;
    return { ...shot, ...misreadings[Math.floor(uniform() * misreadings.length)]?.(shot as never) };
  });
}

const calibrated = (
  shots: readonly MeasuredShot[],
  what: readonly CalibrationTarget[],
  options: CalibrationOptions = {},
): Calibration => calibrate(shots, {}, { what, ...options });

const standardised = ({ values }: Calibration): number[] =>
  values.map(({ target, value, standardError }) => (value - TRUTH[target]) / standardError);

describe('recovers known numbers from noisy sessions', () => {
  let found: readonly Calibration[] = [];
  beforeAll(() => {
    found = [1, 2, 3, 4, 5].map((seed) => calibrated(session(300 + seed, 50, 5), ALL));
  }, 60_000);

  it('with 10 % gross misreads, to within its own standard errors', () => {
    const z = found.flatMap(standardised);
    for (const value of z) expect(Math.abs(value)).toBeLessThan(3.5);
    const rms = Math.sqrt(z.reduce((sum, value) => sum + value * value, 0) / z.length);
    // 20 standardised errors: chi-square of 20 has its 0.1 and 99.9 % points at 5.9 and 45.3.
    expect(rms).toBeGreaterThan(Math.sqrt(5.9 / 20));
    expect(rms).toBeLessThan(Math.sqrt(45.3 / 20));
  });

  it('standard errors are small enough to be of use', () => {
    const limits = [0.006, 0.025, 0.008, 0.012];
    for (const { values } of found) {
      values.forEach(({ standardError, mostlyPrior, atBound }, i) => {
        expect(standardError).toBeLessThan(limits[i] ?? 0);
        expect(mostlyPrior).toBe(false);
        expect(atBound).toBe(false);
      });
    }
  });

  it('names the misread shots and few others', () => {
    for (const { misreads } of found) {
      const shots = [...new Set(misreads.map(({ shot }) => shot))];
      expect(shots.filter((shot) => shot < 5).length).toBeGreaterThanOrEqual(4);
      expect(shots.filter((shot) => shot >= 5).length).toBeLessThanOrEqual(3);
    }
  });

  it('predicts shots it did not see better than before', () => {
    for (const { residuals } of found) {
      const carry = residuals.find(({ quantity }) => quantity === 'carry');
      expect(Math.abs(carry?.biasAfter ?? 99)).toBeLessThan(Math.abs(carry?.biasBefore ?? 0) / 4);
      expect(carry?.typicalAfter).toBeLessThan((carry?.typicalBefore ?? 0) / 2);
      const spin = residuals.find(({ quantity }) => quantity === 'spinRate');
      expect(Math.abs(spin?.biasAfter ?? 99)).toBeLessThan(Math.abs(spin?.biasBefore ?? 0));
    }
  });

  it('gives head and ball back ready to use', () => {
    const { clubhead, aerodynamics, values } = found[0] as Calibration;
    expect(clubhead.restitution.atReference).toBe(values[0]?.value);
    // The whole face is livelier or duller, not its middle alone.
    expect(clubhead.restitution.atReference - clubhead.restitution.atEdge).toBeCloseTo(
      driver.restitution.atReference - driver.restitution.atEdge,
      12,
    );
    expect(clubhead.tangentialRestitution).toEqual({
      ...driver.tangentialRestitution,
      atReference: values[1]?.value,
    });
    const ball = resolveModel(aerodynamics);
    expect(ball.dragCoefficient(150_000, 0.1)).toBeCloseTo(
      (values[2]?.value ?? 0) * fittedModern.dragCoefficient(150_000, 0.1),
      12,
    );
    expect(ball.liftCoefficient(150_000, 0.1)).toBeCloseTo(
      (values[3]?.value ?? 0) * fittedModern.liftCoefficient(150_000, 0.1),
      12,
    );
  });

  it('gives plain data', () => {
    expect(structuredClone(found[0])).toEqual(found[0]);
    expect(JSON.parse(JSON.stringify(found[0]))).toEqual(found[0]);
  });

  it('a left-handed session gives the same', () => {
    const right = session(301, 20, 2);
    const left = right.map((shot) => {
      const { clubPath = 0, faceAngle = 0, launchDirection = 0, spinAxisTilt = 0 } = shot;
      return {
        ...shot,
        clubPath: si<never>(-clubPath),
        faceAngle: si<never>(-faceAngle),
        launchDirection: si<never>(-launchDirection),
        spinAxisTilt: si<never>(-spinAxisTilt),
      };
    });
    const a = calibrated(right, ['restitution', 'tangentialRestitution']);
    const b = calibrated(left, ['restitution', 'tangentialRestitution'], { hand: 'left' });
    a.values.forEach(({ value }, i) => {
      expect(b.values[i]?.value).toBeCloseTo(value, 5);
    });
  });
});

describe('what would lead a plain fit astray', () => {
  it('10 % of misreads too small to be seen for certain move no value by two standard errors', () => {
    const sessions = [1, 2, 3].map((seed) => calibrated(session(700 + seed, 50, 5, USUAL, MIDDLING), ALL));
    ALL.forEach((_, i) => {
      const mean = sessions.reduce((sum, each) => sum + (standardised(each)[i] ?? 0), 0) / sessions.length;
      // The mean of three standardised errors is itself good to 0.6.
      expect(Math.abs(mean)).toBeLessThan(2);
    });
  }, 60_000);

  it('errors of the delivery do not flatten the tangential restitution (Fuller 1987, sec. 1.1)', () => {
    const grip = 0.15;
    const head = { ...driver, tangentialRestitution: withGripLevel(driver.tangentialRestitution, grip) };
    const player = { toe: 0.006, high: 0.004, head, loftError: 2 };
    const found = Array.from({ length: 8 }, (_, i) => {
      const { values } = calibrated(
        session(800 + i, 50, 0, player),
        ['restitution', 'tangentialRestitution'],
        {
          readingErrors: { attackAngle: degrees(2), dynamicLoft: degrees(2) },
          priors: { tangentialRestitution: { mean: -0.2, standardDeviation: 0.3 } },
        },
      );
      return values[1] as Calibration['values'][number];
    });
    const mean = found.reduce((sum, { value }) => sum + value, 0) / found.length;
    const error = found.reduce((sum, { standardError }) => sum + standardError, 0) / found.length;
    expect(Math.abs(mean - grip)).toBeLessThan((2.5 * error) / Math.sqrt(found.length));
  }, 60_000);

  it('one strike off the heel among good ones is no misread, and has its say', () => {
    const good = session(900, 30, 0, { toe: 0.006, high: 0.004 });
    const [heel] = session(901, 1, 0, { toe: 0, high: 0 });
    const delivery = {
      clubSpeed: mph(95),
      attackAngle: degrees(0),
      clubPath: degrees(0),
      faceAngle: degrees(0),
      dynamicLoft: degrees(14),
    };
    const strikeOffset = { toe: si<never>(-0.034), high: si<never>(-0.018) };
    const { rifleSpin: _, ...launch } = strike({ ...delivery, strikeOffset }, { clubhead: trueHead }).launch;
    const targets = ['restitution', 'tangentialRestitution'] as const;
    const { misreads } = calibrated([...good, { ...heel, ...delivery, ...launch }], targets);
    expect(misreads).toEqual([]);
    // A fast ball from there is one.
    const spoilt = { ...heel, ...delivery, ...launch, ballSpeed: si<never>(launch.ballSpeed * 1.25) };
    expect(calibrated([...good, spoilt], targets).misreads.map(({ shot }) => shot)).toEqual([30]);
  });

  it('the pattern of a player is learnt, so that strikes near one place do not pass for a dead face', () => {
    const bias = (priors: CalibrationOptions['priors']): number =>
      [1, 2, 3, 4, 5, 6].reduce((sum, seed) => {
        const shots = session(500 + seed, 40, 0, { toe: 0.004, high: 0.003 });
        const { values } = calibrated(shots, ['restitution'], priors === undefined ? {} : { priors });
        return sum + ((values[0]?.value ?? 0) - TRUTH.restitution) / 6;
      }, 0);
    const anyone = { standardDeviation: 0.015, mean: 0 };
    const learnt = bias(undefined);
    // Strikes of anyone lie farther out, where heads give less: the fit then makes the face too lively.
    expect(bias({ toe: anyone })).toBeGreaterThan(learnt + 0.001);
    expect(Math.abs(learnt)).toBeLessThan(0.005);
  }, 60_000);

  it('a habit in attack angle that was not measured is in the standard errors', () => {
    const targets = ['restitution', 'tangentialRestitution'] as const;
    for (const attack of [-3, 3]) {
      const shots = session(950, 40, 0, { ...USUAL, attack });
      const unmeasured = shots.map(({ attackAngle: _, ...shot }) => shot);
      const known = calibrated(shots, targets);
      const blind = calibrated(unmeasured, targets);
      for (const z of [...standardised(known), ...standardised(blind)]) expect(Math.abs(z)).toBeLessThan(2.5);
      // Spin goes with the spin loft, so 3.5° of 14° is a quarter of the spin: all that is known of the grip.
      expect(blind.values[1]?.mostlyPrior).toBe(true);
      expect(blind.values[1]?.standardError).toBeGreaterThan(4 * (known.values[1]?.standardError ?? 1));
      expect(blind.limits.join(' ')).toMatch(/Attack angle was not measured in 40 of 40 shots/);
      expect(known.limits.join(' ')).not.toMatch(/was not measured/);
    }
    const noLoft = session(950, 20, 0).map(({ dynamicLoft: _, ...shot }) => shot);
    expect(calibrated(noLoft, ['restitution']).limits.join(' ')).toMatch(
      /Dynamic loft was not measured in 20/,
    );
  }, 60_000);

  it('standard errors do not follow reading errors that were stated 2.5 times too large (White 1982)', () => {
    const shots = session(960, 40, 0);
    const times = (errors: object) =>
      Object.fromEntries(Object.entries(errors).map(([k, v]) => [k, 2.5 * v]));
    const right = calibrated(shots, ['dragScale', 'liftScale']);
    const wide = calibrated(shots, ['dragScale', 'liftScale'], {
      readingErrors: times(defaultReadingErrors),
      flightErrors: times(defaultFlightReadingErrors),
    });
    wide.values.forEach(({ standardError }, i) => {
      // An estimate of scatter from 40 shots is good to a ninth (1/√80); the prior counts a little more.
      expect(standardError / (right.values[i]?.standardError ?? 1)).toBeLessThan(1.6);
    });
  });

  it('residuals after the fit are of shots it did not see', () => {
    const shots = session(970, 10, 0);
    const { residuals } = calibrated(shots, ['dragScale']);
    const unseen = shots.map((shot, i) => {
      const { aerodynamics } = calibrated(
        shots.filter((_, k) => k % 5 !== i % 5),
        ['dragScale'],
      );
      return Math.abs((shot.carry ?? 0) - fly(launchOf(shot) as Launch, { aerodynamics }).carry);
    });
    const seen = shots.map((shot) => {
      const { aerodynamics } = calibrated(shots, ['dragScale']);
      return Math.abs((shot.carry ?? 0) - fly(launchOf(shot) as Launch, { aerodynamics }).carry);
    });
    const middle = (values: number[]): number => {
      const sorted = values.sort((a, b) => a - b);
      return ((sorted[4] ?? 0) + (sorted[5] ?? 0)) / 2;
    };
    const told = residuals.find(({ quantity }) => quantity === 'carry')?.typicalAfter ?? 0;
    // The fit without a fold is one Newton step from the whole one, not a fit of its own.
    expect(Math.abs(told - middle(unseen))).toBeLessThan(0.3 * Math.abs(middle(unseen) - middle(seen)));
  });
});

describe('says what the data cannot tell', () => {
  const flights = session(400, 25, 0);

  it('confounders of each target', () => {
    const { limits } = calibrated(flights, ALL);
    expect(limits.join(' ')).toMatch(/club speed that always reads off/);
    expect(limits.join(' ')).toMatch(/strike height/);
    expect(limits.join(' ')).toMatch(/air density/);
    expect(limits.join(' ')).toMatch(/spin that always reads off/);
  });

  it('how much of one passes for how much of the other', () => {
    const { limits, values } = calibrated(flights, ['restitution', 'tangentialRestitution']);
    const all = limits.join(' ');
    const told = (pattern: RegExp): number => Number(pattern.exec(all)?.[1]);
    const at = (change: { restitution?: number; speed?: number; high?: number; grip?: number }) => {
      const law = driver.tangentialRestitution;
      const head = {
        ...driver,
        restitution: {
          ...driver.restitution,
          slope: 0,
          atReference: (values[0]?.value ?? 0) + (change.restitution ?? 0),
        },
        tangentialRestitution: withGripLevel(law, gripLevel(law) + (change.grip ?? 0)),
      };
      const delivery = {
        clubSpeed: si<never>(45 * (1 + (change.speed ?? 0))),
        attackAngle: degrees(0),
        dynamicLoft: driver.staticLoft,
        strikeOffset: { toe: si<never>(0), high: si<never>(change.high ?? 0) },
      };
      return strike(delivery, { clubhead: head });
    };
    const faster = at({ speed: 0.01 }).launch.ballSpeed;
    const livelier = at({ restitution: told(/1 % of club speed is (\S+) of restitution/) }).launch.ballSpeed;
    expect(livelier / faster).toBeCloseTo(1, 3);
    const higher = at({ high: 0.001 }).backspin - at({}).backspin;
    const looser = at({ grip: -told(/1 mm higher strikes are (\S+) less/) }).backspin - at({}).backspin;
    expect(looser / higher).toBeCloseTo(1, 1);
  });

  it('a prior as good as the shots meets them half way', () => {
    const loose = { dragScale: { mean: 1, standardDeviation: 1 } };
    const alone = calibrated(flights, ['dragScale'], { priors: loose }).values[0];
    const { value = 0, standardError = 0 } = alone ?? {};
    const prior = { mean: value + 3 * standardError, standardDeviation: standardError };
    const both = calibrated(flights, ['dragScale'], { priors: { dragScale: prior } }).values[0];
    // Equal precision would put it at a half; the standard error of 25 shots is good to a seventh, its square to 0.3.
    const share = ((both?.value ?? 0) - value) / (prior.mean - value);
    expect(share).toBeGreaterThan(0.3);
    expect(share).toBeLessThan(0.7);
  });

  it('a firm prior wins over few shots', () => {
    const firm = { dragScale: { mean: 1.2, standardDeviation: 1e-4 } };
    expect(calibrated(flights, ['dragScale'], { priors: firm }).values[0]?.value).toBeCloseTo(1.2, 3);
  });

  it('drag and lift from carry alone of like drives', () => {
    const alike = flights.map(({ apex: _a, descentAngle: _d, ...shot }) => shot);
    const { correlation, limits } = calibrated(alike, ['dragScale', 'liftScale']);
    expect(correlation[0]?.[1]).toBeGreaterThan(0.8);
    expect(limits.join(' ')).toMatch(/hardly tell drag scale from lift scale/);
    const full = calibrated(flights, ['dragScale', 'liftScale']);
    expect(full.correlation[0]?.[1]).toBeLessThan(correlation[0]?.[1] ?? 0);
  });

  it('the same estimates as factors that a sweep can draw from', () => {
    const { values, correlation, factors } = calibrated(flights, ['dragScale', 'liftScale']);
    expect(factors.map(({ names }) => names)).toEqual([['aerodynamics.dragScale', 'aerodynamics.liftScale']]);
    const [{ mean, covariance } = { mean: [], covariance: [] }] = factors;
    values.forEach(({ value, standardError }, j) => {
      expect(mean[j]).toBe(value);
      values.forEach(({ standardError: other }, k) => {
        const expected = (correlation[j]?.[k] as number) * standardError * other;
        expect(Math.abs((covariance[j]?.[k] as number) / expected - 1)).toBeLessThan(1e-9);
      });
    });
    const { values: drawn } = designRows({ kind: 'sobol', count: 64, factors });
    expect(drawn).toHaveLength(2);
  });

  it('a value that is mostly the prior, and one on its bound', () => {
    const tight = { liftScale: { mean: 1, standardDeviation: 0.001 } };
    const { values, limits } = calibrated(flights, ['liftScale'], { priors: tight });
    expect(values[0]?.mostlyPrior).toBe(true);
    expect(limits.join(' ')).toMatch(/little about the lift scale/);
    const short = flights.map(({ apex: _a, descentAngle: _d, carry = 0, ...shot }) => ({
      ...shot,
      carry: si<never>(carry * 0.72),
    }));
    const loose = { dragScale: { mean: 1, standardDeviation: 2 } };
    const wrong = calibrated(short, ['dragScale'], { priors: loose });
    expect(wrong.values[0]?.atBound).toBe(true);
    expect(wrong.limits.join(' ')).toMatch(/on its bound/);
  });

  it('carry in another unit is told, not fitted', () => {
    const feet = flights.map((shot) => ({ ...shot, carry: si<never>((shot.carry ?? 0) * 0.3048) }));
    const { misreads, limits, values } = calibrated(feet, ['dragScale']);
    expect(misreads).toHaveLength(25);
    expect(limits[0]).toMatch(/25 of 25 shots do not fit any flight/);
    expect(values[0]?.mostlyPrior).toBe(true);
  });

  it('without club speed the ball is fitted, and the head stays as it was', () => {
    const ballOnly = flights.map(({ clubSpeed: _, ...shot }) => shot);
    const all = calibrated(ballOnly, ALL);
    const ball = calibrated(ballOnly, ['dragScale', 'liftScale']);
    expect(all.values).toEqual(ball.values);
    expect(all.correlation).toEqual(ball.correlation);
    expect(all.clubhead).toBe(driver);
    expect(all.notFitted.map(({ target, usable }) => [target, usable])).toEqual([
      ['restitution', 0],
      ['tangentialRestitution', 0],
    ]);
    expect(all.notFitted[0]?.reason).toMatch(/at least 5 usable shots, with club speed/);
    expect(ball.notFitted).toEqual([]);
  });

  it('without spin the restitution is fitted, and the ball stays as it was', () => {
    const noSpin = flights.map(({ spinRate: _, ...shot }) => shot);
    const { values, notFitted, aerodynamics, clubhead } = calibrated(noSpin, ALL);
    expect(values.map(({ target }) => target)).toEqual(['restitution']);
    expect(notFitted.map(({ target }) => target)).toEqual([
      'tangentialRestitution',
      'dragScale',
      'liftScale',
    ]);
    expect(aerodynamics).toBe('fitted-modern');
    expect(clubhead.tangentialRestitution).toEqual(driver.tangentialRestitution);
    const fourSpins = flights.map((shot, i) => (i < 4 ? shot : (noSpin[i] as MeasuredShot)));
    const few = calibrated(fourSpins, ['restitution', 'tangentialRestitution']);
    expect(few.values.map(({ target }) => target)).toEqual(['restitution']);
    expect(few.notFitted[0]).toMatchObject({ target: 'tangentialRestitution', usable: 4 });
  });

  it('shots it could not use, and why', () => {
    const { spinRate: _, ...noSpin } = flights[3] as MeasuredShot;
    const mixed = [...flights.slice(0, 3), noSpin, ...flights.slice(4)];
    const { leftOut } = calibrated(mixed, ['dragScale']);
    expect(leftOut).toEqual([{ shot: 3, stage: 'flight', reason: 'no spinRate' }]);
  });
});

describe('bad input', () => {
  const shots = session(500, 6, 0);
  it('typed errors', () => {
    expect(caught(() => calibrated(shots.slice(0, 4), ['dragScale'])).message).toMatch(/at least 5 usable/);
    expect(caught(() => calibrated(shots, [])).field).toBe('options.what');
    expect(caught(() => calibrated(shots, ['dragScale', 'dragScale'])).field).toBe('options.what');
    expect(caught(() => calibrated(shots, ['loft' as never])).field).toBe('options.what[0]');
    expect(caught(() => calibrate(shots, { ball: 'range' as never })).field).toBe('scene.ball');
    expect(caught(() => calibrated({} as never, ['dragScale'])).field).toBe('shots');
    expect(caught(() => calibrated(shots, ['dragScale'], { club: 1 } as never)).field).toBe('options.club');
    expect(caught(() => calibrated(shots, ['dragScale'], { flightErrors: { carry: 3 } })).field).toBe(
      'options.flightErrors.carry',
    );
    const prior = { dragScale: { mean: 9, standardDeviation: 1 } };
    expect(caught(() => calibrated(shots, ['dragScale'], { priors: prior })).field).toBe(
      'options.priors.dragScale.mean',
    );
    const fast = [...shots, { ballSpeed: si<never>(150) }];
    expect(caught(() => calibrated(fast, ['dragScale'])).field).toBe('shots[6].ballSpeed');
    const far = [...shots, { carry: si<never>(-3) }];
    expect(caught(() => calibrated(far, ['dragScale'])).field).toBe('shots[6].carry');
    const unknown = [...shots, { carri: 1 } as never];
    expect(caught(() => calibrated(unknown, ['dragScale'])).field).toBe('shots[6].carri');
  });
});
