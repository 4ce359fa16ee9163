import {
  type BallLie,
  type Dispersion,
  type DispersionOptions,
  disperse,
  type ExpectedStrokesOptions,
  expectedStrokes,
  fasterOrStraighter,
  type Hole,
  type ScalableSpread,
  type StrokesOnHoleOptions,
  speedToClear,
  strokesOnHole,
} from '../../../src/dispersion/index.js';
import { degrees, feet, type Length, millimetres, mph, rpm, yards } from '../../../src/units/index.js';
import { delivery, launch, wobble } from '../inputs.js';
import { each, type Numbers, pick, type Room } from '../room.js';

const usual = delivery({ speed: 95, loft: 14, attack: 1 });
const iron = launch([115, 17, 6500]);
const SHOTS = 256;
const spread: ScalableSpread = {
  kind: 'normal',
  sd: {
    clubSpeed: mph(1.5),
    faceAngle: degrees(2),
    clubPath: degrees(2),
    toe: millimetres(8),
    high: millimetres(6),
  },
  correlations: [{ between: ['faceAngle', 'clubPath'], value: 0.4 }],
};
const hole: Hole = {
  length: yards(410),
  fairway: { width: yards(32), bend: { at: yards(230), angle: degrees(12) } },
  hazards: [
    { kind: 'trees', acrossTo: yards(-30) },
    { kind: 'penalty-area', acrossFrom: yards(26), alongFrom: yards(180) },
    { kind: 'sand', alongFrom: yards(225), alongTo: yards(245), acrossFrom: yards(10), acrossTo: yards(20) },
    { kind: 'out-of-bounds', acrossFrom: yards(50) },
  ],
};

const cloud = (options: DispersionOptions = {}): Dispersion =>
  disperse({ delivery: usual, spread }, {}, { shots: SHOTS, seed: 3, ...options });
const strokesFor = (options: StrokesOnHoleOptions = {}): Numbers =>
  pick(
    strokesOnHole({ delivery: usual, spread, hole }, {}, { shots: SHOTS, seed: 3, ...options }),
    'strokes.value',
    'strokes.standardError',
    'aim',
    'endings.fairway.share',
    'endings.recovery.share',
    'cost.rough',
  );
const need = (lie: BallLie, distance: Length, options: ExpectedStrokesOptions = {}): number =>
  expectedStrokes(lie, distance, options).strokes;
const SPOTS = {
  'tee-433yd': ['tee', yards(433)],
  'fairway-157yd': ['fairway', yards(157)],
  'sand-12yd': ['sand', yards(12)],
  'green-17ft': ['green', feet(17)],
  'limit-tee-50yd': ['tee', yards(50)],
  'limit-fairway-780yd': ['fairway', yards(780)],
} as const;

const CLOUD = [
  'carry.mean.value',
  'carry.mean.standardError',
  'carry.sd.value',
  'total.p5.value',
  'side.sd.value',
];

/** Scatter and score. */
export const dispersion: Room = {
  room: 'dispersion',
  digits: 8,
  questions: {
    normal: () =>
      pick(
        cloud({ fairway: hole.fairway, limits: { left: yards(25), right: yards(25) } }),
        ...CLOUD,
        'fairway.share',
        'fairway.interval.low',
        'beyond.left.share',
        'landingEllipses.1.area',
        'restEllipses.2.semiMajor',
        'restEllipses.2.direction',
        'restRegion.regions.0.area',
        'convergence.3.total.standardError',
      ),
    'random-draws': () => pick(cloud({ sampling: 'random' }), ...CLOUD),
    'student-t-launch': () =>
      pick(
        disperse(
          {
            launch: iron,
            spread: {
              kind: 'student-t',
              dof: 4,
              sd: {
                ballSpeed: mph(2),
                launchAngle: degrees(1),
                launchDirection: degrees(2),
                spinRate: rpm(300),
              },
            },
          },
          {},
          { shots: SHOTS },
        ),
        ...CLOUD,
      ),
    'own-shots': () =>
      pick(
        disperse(
          {
            launch: iron,
            spread: {
              kind: 'own',
              shots: Array.from({ length: 9 }, (_, i) =>
                launch([114 + 2 * wobble(i, 1), 17, 6500, 2 * wobble(i, 2)]),
              ),
            },
          },
          {},
          { shots: SHOTS },
        ),
        ...CLOUD,
      ),
    ...each(SPOTS, ([lie, distance]) => ({
      professional: need(lie, distance),
      'scores-95': need(lie, distance, { skill: { averageScore: 95 } }),
    })),
    'raw-table': () => ({ 'tee-130yd': need('tee', yards(130), { table: 'raw' }) }),
    'on-hole': () => strokesFor(),
    'on-hole-best-aim': () => strokesFor({ aim: 'best', skill: { averageScore: 88 } }),
    'faster-or-straighter': () =>
      pick(
        fasterOrStraighter(
          { delivery: usual, spread, hole, law: { directionPerMph: 0.02, strikePerMph: 0.01 } },
          {},
          { shots: 64, speeds: [mph(91), mph(95), mph(99)] },
        ),
        'steps.0.strokes.value',
        'steps.2.carry.value',
        'steps.2.directionFactor',
        'steps.2.change.value',
        'oneMphFaster.value',
        'tenPercentStraighter.value',
        'cancellingOneMph.factors.0.value',
        'breakEven.0.factors.0.value',
      ),
    'speed-to-clear': () =>
      pick(
        speedToClear(
          { delivery: usual, spread, carry: yards(205), share: 0.9 },
          {},
          { shots: SHOTS, seed: 3 },
        ),
        'clubSpeed',
        'interval.low',
        'interval.high',
        'now.share',
      ),
    'speed-to-clear-out-of-reach': () =>
      pick(
        speedToClear(
          { delivery: usual, spread, carry: yards(240), share: 0.8 },
          {},
          { shots: SHOTS, clubSpeed: { min: mph(85), max: mph(100) }, margin: yards(5) },
        ),
        'missing',
        'share.share',
      ),
  },
};
