import { describe, expect, it } from 'vitest';
import { gripLevel, withGripLevel } from '../../src/clubhead/grip-level.js';
import {
  balls,
  clubheads,
  type Delivery,
  defaultReadingErrors,
  degrees,
  type FairflightError,
  grams,
  isFairflightError,
  type Launch,
  type LocatedStrike,
  locateStrike,
  millimetres,
  mph,
  type PlayerHand,
  rpm,
  type StrikeEstimate,
  type StrikeMeasurement,
  type StrikeSolution,
  strike,
  toDegrees,
} from '../../src/index.js';
import { stream } from '../../src/numerics/index.js';
import { si } from '../../src/units/index.js';
import { CASE_B, loftForLaunch, measuredStrike, steadyDriver, strikeB } from './helpers.js';

const DEGREE = Math.PI / 180;
const driver = clubheads.driver;
const law = driver.tangentialRestitution;

/** Chi-square of two degrees of freedom is exponential with mean 2. */
const CHI_SQUARE_95 = -2 * Math.log(0.05);

/** What a device reads of a launch. */
const ballReadings = ({ rifleSpin: _, ...readings }: Launch): StrikeMeasurement => readings;

/** A driver strike drawn from the default priors, and what a device with the default errors reads of it. */
function simulated(index: number): {
  readonly toe: number;
  readonly high: number;
  readonly measured: Required<Omit<StrikeMeasurement, 'hand'>>;
} {
  const { normal } = stream(20260101, index);
  const toe = 0.015 * normal();
  const high = 0.01 * normal();
  const truth: Delivery = {
    clubSpeed: mph(95 + 8 * normal()),
    attackAngle: degrees(3 * normal()),
    clubPath: degrees(3 * normal()),
    faceAngle: degrees(3 * normal()),
    dynamicLoft: degrees(13 + 2 * normal()),
    strikeOffset: {
      toe: si(Math.max(-0.055, Math.min(0.055, toe))),
      high: si(Math.max(-0.038, Math.min(0.038, high))),
    },
  };
  const head = {
    ...driver,
    tangentialRestitution: withGripLevel(law, gripLevel(law) + 0.1 * normal()),
  };
  const { launch } = strike(truth, { clubhead: head });
  return {
    toe: truth.strikeOffset?.toe ?? 0,
    high: truth.strikeOffset?.high ?? 0,
    measured: measuredStrike(truth, launch, normal),
  };
}

function covers(solution: StrikeSolution, toe: number, high: number): boolean {
  const [[a, b], [, d]] = solution.covariance;
  const x = toe - solution.strikeOffset.toe;
  const y = high - solution.strikeOffset.high;
  return (d * x * x - 2 * b * x * y + a * y * y) / (a * d - b * b) <= CHI_SQUARE_95;
}

function located(estimate: StrikeEstimate): LocatedStrike {
  if (estimate.outcome !== 'located') throw new Error(estimate.message);
  return estimate;
}

describe('round trip on 2,500 simulated strikes', () => {
  it('bias below 0.3 mm, 95 % region covers 93 to 97 %, 1 in 1000 called inconsistent', () => {
    // Locations scatter by 2.9 mm, so a mean of 2,500 is known to 0.06 mm and a share of 95 % to 0.4 %: every bound lies
    // more than four such errors off.
    const runs = 2500;
    let toeBias = 0;
    let highBias = 0;
    let covered = 0;
    let refused = 0;
    for (let i = 0; i < runs; i++) {
      const { toe, high, measured } = simulated(i);
      const estimate = locateStrike(measured);
      if (estimate.outcome === 'inconsistent') {
        refused++;
        continue;
      }
      toeBias += (estimate.strikeOffset.toe - toe) / runs;
      highBias += (estimate.strikeOffset.high - high) / runs;
      if (covers(estimate, toe, high)) covered++;
    }
    expect(Math.abs(toeBias)).toBeLessThan(0.0003);
    expect(Math.abs(highBias)).toBeLessThan(0.0003);
    expect(covered / (runs - refused)).toBeGreaterThan(0.93);
    expect(covered / (runs - refused)).toBeLessThan(0.97);
    expect(refused / runs).toBeLessThan(0.004);
  });

  it('with fewer readings the solutions together still cover 95 %', () => {
    const runs = 1000;
    let covered = 0;
    let several = 0;
    for (let i = 0; i < runs; i++) {
      const { toe, high, measured } = simulated(20_000 + i);
      const { clubSpeed, ballSpeed, launchAngle, launchDirection, spinRate } = measured;
      const estimate = locateStrike({ clubSpeed, ballSpeed, launchAngle, launchDirection, spinRate });
      if (estimate.outcome === 'inconsistent') continue;
      if (estimate.alternatives.length > 0) several++;
      if ([estimate, ...estimate.alternatives].some((s) => covers(s, toe, high))) covered++;
    }
    expect(several).toBeGreaterThan(0);
    expect(covered / runs).toBeGreaterThan(0.935);
  });
});

const exact: Delivery = {
  clubSpeed: mph(100),
  attackAngle: degrees(0),
  clubPath: degrees(0),
  faceAngle: degrees(0),
  dynamicLoft: degrees(13),
};

/** Readings without noise, with the device taken as very good. */
function perfect(change: Partial<Delivery>, hand: PlayerHand = 'right'): StrikeEstimate {
  const delivery = { ...exact, ...change, hand };
  const { strikeOffset: _o, hand: _h, closureRate: _c, ...club } = delivery;
  const fine = Object.fromEntries(
    Object.entries(defaultReadingErrors).map(([k, v]) => [k, v / 100]),
  ) as unknown as typeof defaultReadingErrors;
  const wide = { mean: 0, standardDeviation: 0.05 };
  return locateStrike(
    { ...club, ...ballReadings(strike(delivery).launch) },
    {
      clubhead: driver,
      hand,
      readingErrors: fine,
      priors: { toe: wide, high: wide, grip: { mean: gripLevel(law), standardDeviation: 0.001 } },
    },
  );
}

describe('bulge and gear effect both act', () => {
  it.each([
    [12, 5],
    [-18, -6],
    [0, 10],
    [20, 0],
  ])('finds %i mm toe, %i mm high from exact readings', (toe, high) => {
    for (const hand of ['right', 'left'] as const) {
      const found = located(
        perfect({ strikeOffset: { toe: millimetres(toe), high: millimetres(high) } }, hand),
      );
      expect(found.strikeOffset.toe * 1000).toBeCloseTo(toe, 0);
      expect(found.strikeOffset.high * 1000).toBeCloseTo(high, 0);
    }
  });

  it('a left-handed strike is located as its mirror image', () => {
    const right = simulated(7).measured;
    const left = {
      ...right,
      clubPath: si<never>(-right.clubPath),
      faceAngle: si<never>(-right.faceAngle),
      launchDirection: si<never>(-right.launchDirection),
      spinAxisTilt: si<never>(-right.spinAxisTilt),
    };
    const a = located(locateStrike(right));
    const b = located(locateStrike(left, { clubhead: driver, hand: 'left' }));
    expect(locateStrike({ ...left, hand: 'left' }, { clubhead: driver })).toEqual(
      locateStrike(left, { clubhead: driver, hand: 'left' }),
    );
    expect(b.strikeOffset.toe).toBeCloseTo(a.strikeOffset.toe, 6);
    expect(b.strikeOffset.high).toBeCloseTo(a.strikeOffset.high, 6);
    expect(b.chiSquare).toBeCloseTo(a.chiSquare, 5);
  });

  it('a face 0.5° closed to the path whose ball curves hard right is told as a heel strike', () => {
    const delivery = {
      ...exact,
      faceAngle: degrees(-0.5),
      strikeOffset: { toe: millimetres(-24), high: millimetres(0) },
    };
    const { strikeOffset: _, ...club } = delivery;
    const steady = { clubhead: steadyDriver };
    const found = located(
      locateStrike({ ...club, ...ballReadings(strike(delivery, steady).launch) }, steady),
    );
    expect(found.strikeOffset.toe).toBeLessThan(-0.015);
    expect(found.findings.join(' ')).toMatch(/curves the other way.*heel/);
    expect(found.findings[0]).toMatch(/off centre.*heel/);
    const left = located(
      locateStrike(
        {
          ...club,
          faceAngle: degrees(0.5),
          ...ballReadings(strike({ ...delivery, faceAngle: degrees(0.5), hand: 'left' }, steady).launch),
        },
        { ...steady, hand: 'left' },
      ),
    );
    expect(left.findings.join(' ')).toMatch(/curves the other way.*heel/);
  });

  it('a ball that curves as face-to-path says is not blamed on the strike', () => {
    const delivery = { ...exact, faceAngle: degrees(2) };
    const found = located(locateStrike({ ...delivery, ...ballReadings(strike(delivery).launch) }));
    expect(Math.abs(found.strikeOffset.toe)).toBeLessThan(0.002);
    expect(found.findings.join(' ')).not.toMatch(/face-to-path explains/);
    expect(found.findings[0]).toMatch(/face centre lies inside/);
  });

  it('+4° of launch and −800 rpm against a centred strike are placed 15 mm high (newspaper test of 2014, informal)', () => {
    const centre = strikeB(0, 0);
    const found = located(
      locateStrike(
        {
          clubSpeed: si(CASE_B.clubSpeed),
          attackAngle: degrees(CASE_B.attackAngle),
          clubPath: degrees(0),
          faceAngle: degrees(0),
          dynamicLoft: degrees(loftForLaunch(CASE_B.clubSpeed, CASE_B.attackAngle, CASE_B.launchAngle)),
          launchAngle: degrees(toDegrees(centre.launch.launchAngle) + 4),
          spinRate: si(centre.launch.spinRate - rpm(800)),
        },
        { clubhead: driver, priors: { high: { mean: 0, standardDeviation: 0.02 } } },
      ),
    );
    // The quoted figures are rounded and of groups; 4 mm is what 1° of launch or 200 rpm amount to.
    expect(Math.abs(found.strikeOffset.high * 1000 - 15)).toBeLessThan(4);
  });
});

describe('honesty', () => {
  it('reports two places when only the lost ball speed speaks', () => {
    const found = located(
      locateStrike({
        clubSpeed: mph(100),
        ballSpeed: mph(139),
        launchAngle: degrees(12),
        spinRate: rpm(2600),
      }),
    );
    expect(found.alternatives).toHaveLength(1);
    expect(found.alternatives[0]?.strikeOffset.toe).toBeCloseTo(-found.strikeOffset.toe, 5);
    expect(found.weight).toBeCloseTo(0.5, 1);
    expect(found.findings[0]).toMatch(/2 places/);
  });

  it('says that toe or heel hangs on the spin axis alone when little else was measured', () => {
    const { clubSpeed, attackAngle, dynamicLoft, launchAngle, spinRate, spinAxisTilt } =
      simulated(3).measured;
    const found = located(
      locateStrike(
        { clubSpeed, attackAngle, dynamicLoft, launchAngle, spinRate, spinAxisTilt },
        {
          clubhead: driver,
          priors: {
            clubPath: { mean: 0, standardDeviation: 1 * DEGREE },
            faceAngle: { mean: 0, standardDeviation: 1 * DEGREE },
          },
        },
      ),
    );
    expect(found.identifiability.toe.restsOn).toEqual(['spinAxisTilt']);
    expect(found.findings.join(' ')).toMatch(/hangs on the spin-axis tilt alone/);
  });

  it('says what face and path would settle, and is less certain without them', () => {
    const { faceAngle: _f, clubPath: _p, ...rest } = simulated(3).measured;
    const full = located(locateStrike(simulated(3).measured));
    const less = located(locateStrike(rest));
    expect(full.findings.join(' ')).not.toMatch(/not both measured/);
    expect(less.findings.join(' ')).toMatch(/not both measured/);
    expect(less.identifiability.toe.standardDeviation).toBeGreaterThan(
      full.identifiability.toe.standardDeviation,
    );
  });

  it('says when the readings hardly determine an offset', () => {
    const found = located(locateStrike({ ballSpeed: mph(140) }));
    expect(found.identifiability.toe.weak).toBe(true);
    expect(found.identifiability.high.weak).toBe(true);
    expect(found.findings.join(' ')).toMatch(/hardly determine/);
  });

  it.each([
    ['ballSpeed', mph(175)],
    ['launchAngle', degrees(30)],
    ['spinRate', rpm(9000)],
    ['launchDirection', degrees(25)],
    ['spinAxisTilt', degrees(70)],
  ] as const)('a misread %s is reported as inconsistent and among the suspects', (reading, value) => {
    const estimate = locateStrike({ ...simulated(5).measured, [reading]: value });
    expect(estimate.outcome).toBe('inconsistent');
    if (estimate.outcome === 'inconsistent') {
      expect(estimate.suspects).toContain(reading);
      expect(estimate.suspects.length).toBeLessThan(4);
      expect(estimate.message).toContain(reading);
      expect(estimate.probability).toBeLessThan(0.001);
    }
  });

  it.each([
    ['launchAngle', degrees(30)],
    ['spinRate', rpm(9000)],
    ['launchDirection', degrees(25)],
    ['dynamicLoft', degrees(35)],
    ['attackAngle', degrees(-20)],
  ] as const)('a gross misread of %s is nearly always the first suspect', (reading, value) => {
    const first = Array.from({ length: 40 }, (_, i) => {
      const estimate = locateStrike({ ...simulated(50_000 + i).measured, [reading]: value });
      return estimate.outcome === 'inconsistent' ? estimate.suspects[0] : undefined;
    });
    // Some strikes far off the centre explain the wrong reading as well as the right one.
    expect(first.filter((each) => each === reading).length).toBeGreaterThan(34);
  });

  it('blames the strike for a curve only beyond twice what the readings leave open', () => {
    const club = { ...exact, faceAngle: degrees(0.5) };
    const { launch } = strike(club);
    const told = (excess: number): boolean =>
      located(
        locateStrike({
          ...club,
          ...ballReadings(launch),
          spinAxisTilt: si((launch.spinAxisTilt ?? 0) + degrees(excess)),
        }),
      )
        .findings.join(' ')
        .includes('face-to-path explains');
    // Face and path 1° each at about 4° of tilt per degree, with 2° of reading error: 6.2°, twice that 12.4°.
    expect([10, 15].map(told)).toEqual([false, true]);
  });

  it('a centre just inside the 95 % region is said to lie inside, with the correlation of toe and high counted', () => {
    for (let i = 0; i < 40; i++) {
      const found = locateStrike(simulated(60_000 + i).measured);
      if (found.outcome !== 'located' || found.alternatives.length > 0) continue;
      expect(/face centre lies inside/.test(found.findings[0] ?? '')).toBe(covers(found, 0, 0));
    }
  });

  it('weighs each reading with its stated error, overridden one by one', () => {
    const { measured } = simulated(11);
    const sds = (readingErrors?: { spinRate: number }): ReadonlyMap<string, number> => {
      const found = located(
        locateStrike(measured, {
          ...(readingErrors === undefined ? {} : { readingErrors }),
          clubhead: driver,
        }),
      );
      return new Map(found.residuals.map((r) => [r.reading, r.standardDeviation]));
    };
    const e = defaultReadingErrors;
    for (const reading of ['clubSpeed', 'ballSpeed', 'spinRate'] as const) {
      expect(sds().get(reading)).toBeCloseTo(e[reading] * measured[reading], 12);
    }
    for (const reading of ['attackAngle', 'faceAngle', 'launchAngle', 'spinAxisTilt'] as const) {
      expect(sds().get(reading)).toBeCloseTo(e[reading], 12);
    }
    expect(sds({ spinRate: 0.1 }).get('spinRate')).toBeCloseTo(0.1 * measured.spinRate, 12);
    expect(sds({ spinRate: 0.1 }).get('ballSpeed')).toBeCloseTo(sds().get('ballSpeed') ?? 0, 12);
  });

  it('a tilt of +179° lies 2° from one of −179°: topspin from a thin, high strike', () => {
    const delivery = {
      clubSpeed: mph(95),
      attackAngle: degrees(4),
      clubPath: degrees(0),
      faceAngle: degrees(0),
      dynamicLoft: degrees(5),
      strikeOffset: { toe: millimetres(0), high: millimetres(25) },
    };
    const { strikeOffset: _, ...club } = delivery;
    const { launch } = strike(delivery);
    expect(Math.abs(launch.spinAxisTilt ?? 0)).toBeGreaterThan(degrees(179));
    const [right, left] = [179, -179].map((tilt) =>
      located(locateStrike({ ...club, ...ballReadings(launch), spinAxisTilt: degrees(tilt) })),
    ) as [LocatedStrike, LocatedStrike];
    // Path and face are square, so the two readings are mirror images and equally likely.
    expect(left.chiSquare).toBeCloseTo(right.chiSquare, 6);
    expect(left.strikeOffset.toe).toBeCloseTo(-right.strikeOffset.toe, 6);
    expect(left.chiSquare).toBeLessThan(12);
  });

  it('+180° and −180° are one tilt, whichever side the strike lies', () => {
    const delivery = {
      clubSpeed: mph(95),
      attackAngle: degrees(4),
      clubPath: degrees(0),
      faceAngle: degrees(0),
      dynamicLoft: degrees(5),
      strikeOffset: { toe: millimetres(-1), high: millimetres(25) },
    };
    const { strikeOffset: _, ...club } = delivery;
    const { launch } = strike(delivery);
    const [plus, minus] = [Math.PI, -Math.PI].map((tilt) =>
      located(locateStrike({ ...club, ...ballReadings(launch), spinAxisTilt: si(tilt) })),
    ) as [LocatedStrike, LocatedStrike];
    expect(minus.chiSquare).toBeCloseTo(plus.chiSquare, 9);
    expect(minus.strikeOffset.toe).toBeCloseTo(plus.strikeOffset.toe, 9);
    for (const { residuals } of [plus, minus]) {
      const tilt = residuals.find(({ reading }) => reading === 'spinAxisTilt');
      expect(Math.abs(tilt?.standardised ?? 99)).toBeLessThan(5);
    }
  });

  it('the orientation of the region is that of its long axis', () => {
    const { measured } = simulated(11);
    const { clubSpeed, attackAngle, dynamicLoft, launchAngle, spinRate, ballSpeed } = measured;
    for (const readings of [
      measured,
      { clubSpeed, attackAngle, dynamicLoft, launchAngle, spinRate, ballSpeed },
    ]) {
      const estimate = locateStrike(readings);
      const {
        covariance: [[a, b], [, d]],
        regions: { p95 },
      } = located(estimate);
      const [x, y] = [Math.cos(p95.orientation), Math.sin(p95.orientation)];
      // Variance along the long axis is its eigenvalue (semi-axis² over chi-square of 95 %, two degrees of freedom).
      expect((x * x * a + 2 * x * y * b + y * y * d) / (p95.semiMajor ** 2 / CHI_SQUARE_95)).toBeCloseTo(
        1,
        9,
      );
    }
  });

  it('deletion residuals of good readings have unit spread, plain ones less (Cook and Weisberg 1982, sec. 2.2)', () => {
    const all = Array.from({ length: 300 }, (_, i) => locateStrike(simulated(40_000 + i).measured).residuals);
    const of = (reading: string, kind: 'deletion' | 'standardised'): number => {
      const values = all.map((rs) => rs.find((r) => r.reading === reading)?.[kind] ?? 0);
      return Math.sqrt(values.reduce((sum, v) => sum + v * v, 0) / values.length);
    };
    for (const reading of [
      'ballSpeed',
      'launchAngle',
      'spinRate',
      'spinAxisTilt',
      'clubSpeed',
      'faceAngle',
    ]) {
      // The spread of 300 normal values is good to 4 % (1/√600); four of these.
      expect(Math.abs(of(reading, 'deletion') - 1), reading).toBeLessThan(0.17);
      expect(of(reading, 'standardised'), reading).toBeLessThan(0.95);
    }
    // Measured less predicted, in the direction of the reading.
    for (const r of all[0] ?? []) {
      expect(r.standardised).toBeCloseTo((r.measured - r.predicted) / r.standardDeviation, 6);
      expect(Math.sign(r.deletion)).toBe(Math.sign(r.standardised));
    }
  });

  it('the delivery that goes with the strike gives the predicted launch', () => {
    const { measured } = simulated(12);
    const found = located(locateStrike(measured));
    const club = found.residuals.filter(({ reading }) => reading in found.delivery);
    expect(club).toHaveLength(5);
    for (const { reading, predicted } of club) {
      expect(found.delivery[reading as 'clubSpeed'], reading).toBeCloseTo(predicted, 9);
    }
    // The grip is fitted too, so spin differs; direction hardly feels it.
    const { launch } = strike(found.delivery);
    const direction = found.residuals.find(({ reading }) => reading === 'launchDirection');
    expect(launch.launchDirection).toBeCloseTo(direction?.predicted ?? 99, 2);
  });

  it('states its priors: 15 and 10 mm where nothing speaks, club speed from ball speed and a usual smash factor', () => {
    const found = located(locateStrike({ launchDirection: degrees(0) }));
    expect(found.identifiability.toe.prior).toBe(0.015);
    expect(found.identifiability.high.prior).toBe(0.01);
    expect(found.identifiability.high.standardDeviation).toBeCloseTo(0.01, 4);
    expect(found.strikeOffset.high).toBeCloseTo(0, 6);
    // The centred strike of a usual delivery: 12.5° of loft, level attack.
    const delivery = { clubSpeed: mph(100), attackAngle: degrees(0), dynamicLoft: degrees(12.5) };
    const usual = strike(delivery);
    const fromBall = located(locateStrike({ ballSpeed: usual.launch.ballSpeed }));
    expect(fromBall.delivery.clubSpeed / mph(100)).toBeCloseTo(1, 2);
    const light = { ...balls.conforming, mass: grams(35) };
    const { ballSpeed } = strike(delivery, { clubhead: driver, ball: light }).launch;
    const ofLight = located(locateStrike({ ballSpeed }, { clubhead: driver, ball: light }));
    expect(ofLight.delivery.clubSpeed / mph(100)).toBeCloseTo(1, 2);
    // The expected club speed is that of this ball: one of another mass would have to be left behind.
    expect(ofLight.chiSquare).toBeLessThan(0.02);
    const wedge = { clubSpeed: mph(80), attackAngle: degrees(-3.5), dynamicLoft: degrees(40) };
    const pitch = located(
      locateStrike(
        { ballSpeed: strike(wedge, { clubhead: clubheads.wedge }).launch.ballSpeed },
        { clubhead: clubheads.wedge },
      ),
    );
    // The usual smash factor leaves friction out, worth 2 % of a wedge's; it is taken to 10 %.
    expect(pitch.delivery.clubSpeed / mph(80)).toBeCloseTo(1, 1);
    // 5 % off at most, taken to 10 %: half a standard deviation.
    expect(pitch.chiSquare).toBeLessThan(0.25);
  });

  it('rests on the readings without which the uncertainty grows by a quarter', () => {
    const { measured } = simulated(13);
    const full = located(locateStrike(measured)).identifiability;
    for (const reading of [
      'ballSpeed',
      'launchAngle',
      'launchDirection',
      'spinRate',
      'spinAxisTilt',
    ] as const) {
      const { [reading]: _, ...rest } = measured;
      const without = located(locateStrike(rest)).identifiability;
      for (const offset of ['toe', 'high'] as const) {
        const growth = without[offset].standardDeviation / full[offset].standardDeviation;
        // Linear at the full estimate; the estimate moves a little without the reading.
        if (growth < 1.15 || growth > 1.35) {
          expect(full[offset].restsOn.includes(reading), `${offset} on ${reading}`).toBe(growth > 1.25);
        }
      }
    }
    expect([...full.toe.restsOn, ...full.high.restsOn].length).toBeGreaterThan(0);
  });

  it('takes no spin reading for better than 30 rpm', () => {
    const spun = { clubSpeed: mph(95), ballSpeed: mph(140), spinRate: rpm(500) };
    const spin = locateStrike(spun).residuals.find(({ reading }) => reading === 'spinRate');
    expect(spin?.standardDeviation).toBeCloseTo(rpm(30), 9);
  });

  it('the weights of two places follow their likelihood and their size', () => {
    const shot = { clubSpeed: mph(100), launchAngle: degrees(12), spinRate: rpm(2600) };
    const two = [137, 139, 141].map((ballSpeed) =>
      located(
        locateStrike(
          { ...shot, ballSpeed: mph(ballSpeed) },
          { clubhead: steadyDriver, priors: { toe: { mean: 0.004, standardDeviation: 0.015 } } },
        ),
      ),
    );
    for (const first of two) {
      const [second] = first.alternatives as [StrikeSolution];
      expect(first.weight + second.weight).toBeCloseTo(1, 12);
      const size = (s: StrikeSolution): number =>
        Math.sqrt(s.covariance[0][0] * s.covariance[1][1] - s.covariance[0][1] ** 2);
      // Laplace's approximation: density at the mode times the root of the determinant. The sum over the face counts the
      // bend between the places too, each half to its own.
      const odds = (Math.exp((second.chiSquare - first.chiSquare) / 2) * size(first)) / size(second);
      expect(Math.abs(first.weight / second.weight / odds - 1)).toBeLessThan(0.25);
    }
  });

  it('regions: semi-axes from the covariance, 68 % inside 95 %', () => {
    const { covariance, regions } = located(locateStrike(simulated(11).measured));
    const area = Math.PI * Math.sqrt(covariance[0][0] * covariance[1][1] - covariance[0][1] ** 2);
    expect(Math.PI * regions.p95.semiMajor * regions.p95.semiMinor).toBeCloseTo(CHI_SQUARE_95 * area, 12);
    expect(Math.PI * regions.p68.semiMajor * regions.p68.semiMinor).toBeCloseTo(
      -2 * Math.log(1 - 0.6827) * area,
      12,
    );
  });
});

describe('bad input', () => {
  const fails = (run: () => unknown): FairflightError => {
    try {
      run();
    } catch (error) {
      if (isFairflightError(error)) return error;
    }
    throw new Error('no typed error');
  };

  it.each([
    [{ ballSpeed: si<never>(150) }, 'measured.ballSpeed'],
    [{ ballSpeed: mph(150), spinRate: si<never>(2600) }, 'measured.spinRate'],
    [{ ballSpeed: mph(150), launchAngle: si<never>(12) }, 'measured.launchAngle'],
    [{ ballSpeed: si<never>(Number.NaN) }, 'measured.ballSpeed'],
    [{ clubSpeed: mph(100) }, 'measured'],
    [{}, 'measured'],
    [null as never, 'measured'],
  ] as [StrikeMeasurement, string][])('%j', (measured, field) => {
    expect(fails(() => locateStrike(measured)).field).toBe(field);
  });

  it('options', () => {
    const good = { ballSpeed: mph(150) };
    expect(fails(() => locateStrike(good, { clubhead: driver, hand: 'both' as never })).field).toBe(
      'options.hand',
    );
    expect(fails(() => locateStrike(good, { clubhead: driver, readingErrors: { spinRate: 3 } })).field).toBe(
      'options.readingErrors.spinRate',
    );
    expect(
      fails(() => locateStrike(good, { clubhead: driver, readingErrors: { face: 1 } as never })).field,
    ).toBe('options.readingErrors.face');
    expect(
      fails(() =>
        locateStrike(good, { clubhead: driver, priors: { toe: { mean: 0, standardDeviation: 0 } } }),
      ).field,
    ).toBe('options.priors.toe.standardDeviation');
  });
});
