import { describe, expect, it } from 'vitest';
import { type Dispersion, disperse, type LaunchSd, type Scattered } from '../../src/dispersion/index.js';
import {
  covariance,
  mean,
  normalCdf,
  standardDeviation,
  stream,
  studentTCdf,
} from '../../src/numerics/index.js';
import { playShot } from '../../src/shot/index.js';
import {
  type Angle,
  degrees,
  millimetres,
  mph,
  rpm,
  si,
  toMetres,
  toYards,
  yards,
} from '../../src/units/index.js';
import { caught } from '../caught.js';

type Quantity = keyof LaunchSd;

const launch = { ballSpeed: mph(150), launchAngle: degrees(12), spinRate: rpm(2600) };
const delivery = { clubSpeed: mph(95), attackAngle: degrees(1), dynamicLoft: degrees(15) };
const sigma = degrees(4);
const aimOnly = { kind: 'normal', sd: { launchDirection: sigma } } as const;

describe('disperse with nothing but the direction scattering', () => {
  const shot = playShot(launch);
  const width = yards(32);
  const far = yards(20);
  const cloud: Dispersion = disperse(
    { launch, spread: aimOnly },
    {},
    {
      shots: 1024,
      fairway: { width },
      limits: { left: far, right: far },
    },
  );

  // Closed form: every ball goes equally far, so it lies on a circle, and a lateral limit w is passed where
  // sin(direction) > w / total. Normal direction with the standard deviation given.
  it('has the fairway share and the share beyond a limit of the closed form', () => {
    const inside = 2 * normalCdf(Math.asin(width / 2 / shot.total) / sigma) - 1;
    expect(Math.abs((cloud.fairway?.share ?? 0) - inside)).toBeLessThan(0.005);
    const beyond = 1 - normalCdf(Math.asin(far / shot.total) / sigma);
    expect(Math.abs((cloud.beyond?.left?.share ?? 0) - beyond)).toBeLessThan(0.005);
    expect(Math.abs((cloud.beyond?.right?.share ?? 0) - beyond)).toBeLessThan(0.005);
  });

  // Broadie (2008): 1° is 1.75 yd to the side per 100 yd.
  it('spreads 1.75 yd a degree and 100 yd to the side, and not at all in length', () => {
    const perDegree = (toYards(cloud.side.sd.value) / 4 / toYards(shot.carry)) * 100;
    expect(perDegree).toBeGreaterThan(1.72);
    expect(perDegree).toBeLessThan(1.76);
    expect(cloud.carry.sd.value).toBeLessThan(1e-3);
    expect(cloud.carry.mean.value).toBeCloseTo(shot.carry, 3);
  });

  it('counts a bent fairway: aimed straight at a bend to the right, balls beyond the corner are left of it', () => {
    const bent = disperse(
      { launch, spread: aimOnly },
      {},
      {
        shots: 256,
        fairway: { width, bend: { at: yards(150), angle: degrees(40) } },
      },
    );
    expect(bent.fairway?.share).toBeLessThan(0.05);
    const beyond = disperse(
      { launch, spread: aimOnly },
      {},
      {
        shots: 256,
        fairway: { width, bend: { at: yards(400), angle: degrees(40) } },
      },
    );
    expect(Math.abs((beyond.fairway?.share ?? 0) - (cloud.fairway?.share ?? 0))).toBeLessThan(0.02);
  });

  it('keeps the standard deviation but not the tails when the scatter is Student t', () => {
    const t = disperse(
      { launch, spread: { kind: 'student-t', dof: 4, sd: { launchDirection: sigma } } },
      {},
      { shots: 4096, limits: { right: yards(60) } },
    );
    const angle = Math.asin(yards(60) / shot.total) / sigma;
    const tail = 1 - studentTCdf(angle * Math.sqrt(2), 4);
    expect(Math.abs((t.beyond?.right?.share ?? 0) - tail)).toBeLessThan(0.0015);
    expect(tail).toBeGreaterThan(2 * (1 - normalCdf(angle)));
  });
});

describe('disperse', () => {
  const spread = {
    kind: 'normal',
    sd: {
      clubSpeed: mph(1.5),
      faceAngle: degrees(2),
      clubPath: degrees(2.5),
      toe: millimetres(8),
      high: millimetres(6),
    },
  } as const;

  it('gives the same shots for the same seed, whatever their number, and others for another', () => {
    for (const sampling of ['sobol', 'random'] as const) {
      const few = disperse({ delivery, spread }, {}, { shots: 64, sampling, seed: 5 }).columns;
      const more = disperse({ delivery, spread }, {}, { shots: 96, sampling, seed: 5 }).columns;
      expect(more.carry.slice(0, 64)).toEqual(few.carry);
      expect(disperse({ delivery, spread }, {}, { shots: 64, sampling, seed: 6 }).columns.carry).not.toEqual(
        few.carry,
      );
    }
  });

  it('states an error that other seeds confirm, smaller for Sobol points, and falling as shots are added', () => {
    const seeds = [1, 2, 3, 4, 5, 6];
    const runs = (sampling: 'sobol' | 'random'): readonly Dispersion[] =>
      seeds.map((seed) => disperse({ delivery, spread }, {}, { shots: 256, sampling, seed }));
    const rms = (values: readonly number[]): number =>
      Math.sqrt(values.reduce((s, v) => s + v * v, 0) / values.length);
    const [sobol, random] = [runs('sobol'), runs('random')];
    const truth = disperse({ delivery, spread }, {}, { shots: 2048, seed: 77 }).carry.mean.value;
    const errors = (set: readonly Dispersion[]): number => rms(set.map((d) => d.carry.mean.value - truth));
    const stated = (set: readonly Dispersion[]): number => rms(set.map((d) => d.carry.mean.standardError));
    for (const set of [sobol, random]) {
      expect(errors(set) / stated(set)).toBeGreaterThan(0.3);
      expect(errors(set) / stated(set)).toBeLessThan(2.5);
    }
    expect(stated(sobol)).toBeLessThan(0.6 * stated(random));
    const rows = sobol[0]?.convergence ?? [];
    expect(rows.at(-1)?.shots).toBe(256);
    expect(rows.at(-1)?.carry.value).toBe(sobol[0]?.carry.mean.value);
  });

  it('states errors of ellipses, regions and convergence that other seeds confirm', () => {
    const runs = Array.from({ length: 10 }, (_, seed) =>
      disperse({ delivery, spread }, {}, { shots: 256, seed, fairway: { width: yards(32) } }),
    );
    const figures: readonly ((
      d: Dispersion,
    ) => readonly [value: number | undefined, standardError: number | undefined])[] = [
      ({ restEllipses: [e] }) => [e?.semiMajor, e?.standardErrors.semiMajor],
      ({ restEllipses: [e] }) => [e?.semiMinor, e?.standardErrors.semiMinor],
      ({ restEllipses: [e] }) => [e?.area, e?.standardErrors.area],
      // The longer axis lies across the line here: half a turn is added where it points to the left.
      ({ restEllipses: [e] }) => [((e?.direction ?? 0) + Math.PI) % Math.PI, e?.standardErrors.direction],
      ({ landingEllipses: [e] }) => [e?.centre.x, e?.standardErrors.centre.x],
      ({ landingEllipses: [e] }) => [e?.centre.z, e?.standardErrors.centre.z],
      ({ restEllipses: [e] }) => [e?.holds, e?.standardErrors.holds],
      ({ restRegion }) => [restRegion?.regions[0]?.area, restRegion?.regions[0]?.standardErrors.area],
      ({ restRegion }) => [
        restRegion?.regions[0]?.threshold,
        restRegion?.regions[0]?.standardErrors.threshold,
      ],
      ({ convergence }) => [convergence[3]?.fairway?.value, convergence[3]?.fairway?.standardError],
    ];
    figures.forEach((figure, k) => {
      const [values, stated] = [0, 1].map((i) => runs.map((run) => figure(run)[i] ?? Number.NaN));
      const rms = Math.sqrt(mean((stated ?? []).map((v) => v * v)));
      const ratio = standardDeviation(values ?? []) / rms;
      expect(ratio, `figure ${k}`).toBeGreaterThan(0.4);
      expect(ratio, `figure ${k}`).toBeLessThan(2);
    });
  });

  it('has a kernel region that a few wild shots do not stretch as they stretch the ellipse', () => {
    const random = stream(12);
    const about = (wild: number): typeof launch & { launchDirection: Angle } => ({
      ...launch,
      ballSpeed: mph(150 + 2 * wild * random.normal()),
      launchDirection: degrees(1.5 * wild * random.normal()),
    });
    const steady = Array.from({ length: 190 }, () => about(1));
    const tame = disperse({ launch, spread: { kind: 'own', shots: steady } }, {}, { shots: 1024 });
    const wild = disperse(
      { launch, spread: { kind: 'own', shots: [...steady, ...Array.from({ length: 10 }, () => about(8))] } },
      {},
      { shots: 1024 },
    );
    const [of, beside] = [wild, tame].map(({ restRegion, restEllipses }) => ({
      region: restRegion?.regions[0]?.area ?? 0,
      ellipse: restEllipses[0]?.area ?? 0,
    }));
    expect((of?.region ?? 0) / (beside?.region ?? 1)).toBeLessThan(1.35);
    expect((of?.ellipse ?? 0) / (beside?.ellipse ?? 1)).toBeGreaterThan(2.5);
  });

  it('loses carry to mishits, goes as far left as right, and shows it in ellipses and regions', () => {
    const cloud = disperse({ delivery, spread }, {}, { shots: 1024, seed: 3 });
    const clean = playShot(delivery).carry;
    expect(cloud.carry.mean.value).toBeLessThan(clean);
    // Left-skewed: the mean lies below the median, the short tail is the longer one.
    const { p5, median, p95 } = cloud.carry;
    expect(median.value - p5.value).toBeGreaterThan(p95.value - median.value);
    expect(Math.abs(toYards(cloud.side.median.value))).toBeLessThan(2.5);
    for (const ellipse of [...cloud.landingEllipses, ...cloud.restEllipses]) {
      expect(Math.abs(ellipse.holds - ellipse.level)).toBeLessThan(0.08);
    }
    const [half, , most] = cloud.restRegion?.regions ?? [];
    expect(half?.area).toBeLessThan(most?.area ?? 0);
    expect(half?.area).toBeLessThan(1.05 * (cloud.restEllipses[0]?.area ?? 0));
    const grid = cloud.restRegion?.grid;
    const mass = (grid?.density.reduce((s, v) => s + v, 0) ?? 0) * (grid?.x.step ?? 0) * (grid?.z.step ?? 0);
    expect(mass).toBeCloseTo(1, 1);
  });

  it('mirrors for a left-handed player', () => {
    const right = disperse({ delivery: { ...delivery, clubPath: degrees(2) }, spread }, {}, { shots: 512 });
    const left = disperse(
      { delivery: { ...delivery, clubPath: degrees(-2), hand: 'left' }, spread },
      {},
      {
        shots: 512,
      },
    );
    expect(Math.abs(left.side.mean.value + right.side.mean.value)).toBeLessThan(
      4 * (left.side.mean.standardError + right.side.mean.standardError),
    );
    expect(Math.abs(left.carry.mean.value - right.carry.mean.value)).toBeLessThan(0.5);
  });

  it('ties quantities by the correlation given', () => {
    const tied = disperse(
      {
        launch,
        spread: {
          kind: 'normal',
          sd: { ballSpeed: mph(4), launchDirection: degrees(3) },
          correlations: [{ between: ['ballSpeed', 'launchDirection'], value: 0.8 }],
        },
      },
      {},
      { shots: 1024 },
    );
    const { carry, landingZ } = tied.columns;
    const correlation =
      covariance(carry, landingZ) / (standardDeviation(carry) * standardDeviation(landingZ));
    expect(correlation).toBeCloseTo(0.8, 1);
    const tie = (...values: readonly (readonly [Quantity, Quantity, number])[]): Dispersion =>
      disperse({
        launch,
        spread: {
          kind: 'normal',
          sd: { ballSpeed: mph(4), launchDirection: degrees(3), spinRate: rpm(200) },
          correlations: values.map(([a, b, value]) => ({ between: [a, b], value })),
        },
      });
    const contradiction = caught(() =>
      tie(
        ['ballSpeed', 'launchDirection', 0.9],
        ['launchDirection', 'spinRate', 0.9],
        ['ballSpeed', 'spinRate', -0.9],
      ),
    );
    expect(contradiction.field).toBe('spread.correlations');
    expect(contradiction.message).toMatch(/contradict/);
    const twice = caught(() => tie(['ballSpeed', 'spinRate', 0.9], ['spinRate', 'ballSpeed', 0.1]));
    expect(twice.message).toMatch(/correlations\[1\] joins ballSpeed and spinRate a second time/);
    for (const still of ['ballSpeed', 'launchAngle'] as const) {
      expect(caught(() => tie(['ballSpeed', still, 0.5])).message).toMatch(/two different quantities/);
    }
  });

  it("draws the player's own shots, their differences laid about the usual one", () => {
    const shots = [-3, -1, 0, 4].map((off) => ({ ...launch, ballSpeed: mph(140 + off) }));
    const own = disperse({ launch, spread: { kind: 'own', shots } }, {}, { shots: 64 });
    expect(new Set(own.columns.carry).size).toBe(4);
    expect(Math.max(...own.columns.carry)).toBeCloseTo(playShot({ ...launch, ballSpeed: mph(154) }).carry, 9);
    const one = caught(() => disperse({ launch, spread: { kind: 'own', shots: shots.slice(1, 2) } }));
    expect(one.message).toMatch(/spread.shots must have 2 to/);
  });

  it("refuses own shots of the other hand, and keeps a launch's rifle spin", () => {
    const left = { ...delivery, hand: 'left' } as const;
    const mixed = caught(() => disperse({ delivery, spread: { kind: 'own', shots: [delivery, left] } }));
    expect(mixed.field).toBe('spread.shots[1].hand');
    const rifled = [0, 2000].map((spin) => ({ ...launch, rifleSpin: rpm(spin) }));
    const cloud = disperse({ launch, spread: { kind: 'own', shots: rifled } }, {}, { shots: 64 });
    expect(new Set(cloud.columns.landingZ).size).toBe(2);
  });

  it('names what is wrong with its inputs', () => {
    const field = (action: () => unknown): string | undefined => caught(action).field;
    const sd = { faceAngel: degrees(2) } as never;
    expect(field(() => disperse({ delivery, spread: { kind: 'normal', sd } }))).toBe('spread.sd.faceAngel');
    expect(field(() => disperse({ delivery, spread }, {}, { shots: 8 }))).toBe('options.shots');
    expect(field(() => disperse({ delivery, spread }, {}, { seed: 0.5 }))).toBe('options.seed');
    expect(field(() => disperse({ delivery, spread }, {}, { fairway: { width: si(-1) } }))).toBe(
      'options.fairway.width',
    );
    expect(field(() => disperse({ delivery, spread }, {}, { limits: { left: si(-1) } }))).toBe(
      'options.limits.left',
    );
    expect(field(() => disperse({ delivery, spread: { kind: 'student-t', dof: 2, sd: {} } }))).toBe(
      'spread.dof',
    );
    const wide = { kind: 'normal', sd: { clubSpeed: mph(60) } } as const;
    const tooWide = caught(() => disperse({ delivery, spread: wide }, {}, { shots: 64 }));
    expect(tooWide).toMatchObject({ code: 'outside-range', field: 'spread' });
    expect(tooWide.message).toMatch(/wider than/);
    const widest = { kind: 'normal', sd: { clubSpeed: mph(101) } } as const;
    expect(field(() => disperse({ delivery, spread: widest }))).toBe('spread.sd.clubSpeed');
  });

  it('takes a delivery or a launch, not both, neither, or one for the other', () => {
    const ask = (subject: object): string => caught(() => disperse(subject as Scattered)).message;
    expect(ask({ delivery, launch, spread })).toMatch(/give delivery or launch.*not both/);
    expect(ask({ spread })).toMatch(/give delivery or launch/);
    expect(ask({ delivery })).toMatch(/spread is missing/);
    expect(ask({ delivery: launch, spread })).toMatch(/delivery has no field "ballSpeed"/);
    expect(ask({ delivery, spread: aimOnly })).toMatch(/spread.sd has no field "launchDirection"/);
    expect(ask({ delivery, spread, hole: {} })).toMatch(/subject has no field "hole"/);
    expect(caught(() => disperse(undefined as never)).field).toBe('subject');
  });

  it('gives plain data of its own, which survives a copy and JSON', () => {
    const cloud = disperse(
      { delivery, spread },
      {},
      { shots: 64, fairway: { width: yards(32) }, limits: { left: yards(20) } },
    );
    expect(structuredClone(cloud)).toEqual(cloud);
    expect(JSON.parse(JSON.stringify(cloud))).toEqual(cloud);
  });

  it('lists scattered shots that the models refuse instead of bending them', () => {
    const spread = { kind: 'normal', sd: { dynamicLoft: degrees(20) } } as const;
    const wide = disperse({ delivery, spread }, {}, { shots: 256 });
    expect(wide.shots + wide.failures.length).toBe(256);
    expect(wide.columns.shot).toHaveLength(wide.shots);
    expect(wide.failures.length).toBeGreaterThan(0);
    for (const failure of wide.failures) {
      expect(wide.columns.shot).not.toContain(failure.shot);
      expect(failure).toMatchObject({ code: 'outside-range', field: 'delivery.dynamicLoft' });
    }
    expect(toMetres(wide.carry.mean.value)).toBeGreaterThan(0);
  });
});
