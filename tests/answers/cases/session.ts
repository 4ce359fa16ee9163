import { airAt, airAtAltitude } from '../../../src/air/index.js';
import {
  attributeChange,
  calibrate,
  gainsToShow,
  judgeTraining,
  type MeasuredShot,
  rankChanges,
  type SessionSummary,
  scatterTrend,
  standardise,
  summariseSession,
} from '../../../src/session/index.js';
import { celsius, degrees, metres, mph, rpm, si, yards } from '../../../src/units/index.js';
import { wobble } from '../inputs.js';
import { pick, type Room } from '../room.js';

/** Invented shots about a club speed. */
const shotsAt = (speed: number, count: number, label: string, from = 0): readonly MeasuredShot[] =>
  Array.from({ length: count }, (_, k): MeasuredShot => {
    const i = from + k;
    const club = speed + 1.3 * wobble(i, 1);
    const ball = 1.46 * club + 0.9 * wobble(i, 2);
    return {
      label,
      clubSpeed: mph(club),
      attackAngle: degrees(1 + wobble(i, 3)),
      dynamicLoft: degrees(14.5 + wobble(i, 4)),
      ballSpeed: mph(ball),
      launchAngle: degrees(12.7 + 1.1 * wobble(i, 5)),
      launchDirection: degrees((0.03 * speed - 0.5) * wobble(i, 6)),
      spinRate: rpm(2700 + 250 * wobble(i, 7)),
      spinAxisTilt: degrees(6 * wobble(i, 8)),
      carry: yards(1.79 * ball - 22 + 4 * wobble(i, 9)),
      total: yards(1.79 * ball - 2 + 6 * wobble(i, 10)),
    };
  });

const easy = shotsAt(90, 12, 'easy');
const full = shotsAt(98, 14, 'full', 40);
const oneOdd = full.map((shot, i) => (i === 5 ? { ...shot, spinRate: rpm(6400) } : shot));
const log = Array.from({ length: 7 }, (_, day) =>
  shotsAt(94 + 0.8 * day + 0.5 * wobble(day, 11), 8, 'full', 100 + 10 * day).map(
    (shot): MeasuredShot => ({ ...shot, date: `2031-03-0${day + 1}` }),
  ),
).flat();

const summary = (): SessionSummary => summariseSession([...easy, ...oneOdd]);
const here = { air: airAt({ temperature: celsius(8) }), wind: { along: mph(-6), across: mph(3) } };
const there = { air: airAtAltitude({ altitude: metres(1500) }), turf: 'firm' } as const;

/** Measured shots. */
export const session: Room = {
  room: 'session',
  digits: 8,
  questions: {
    summary: () =>
      pick(
        summary(),
        'bands.0.quantities.clubSpeed.mean',
        'bands.0.quantities.clubSpeed.interval.low',
        'bands.0.quantities.carry.sd',
        'bands.0.quantities.smashFactor.median',
        'bands.1.quantities.spinRate.robustSd',
        'bands.1.withoutOutliers.spinRate.mean',
        'oddShots.0.shot',
        'oddShots.0.readings.0.score',
        'trends.carry.slope',
        'trends.carry.interval.low',
        'trends.ballSpeed.intercept',
        'repeatability.clubSpeed.typicalError',
        'repeatability.carry.detectableMean',
      ),
    attribution: () =>
      pick(
        attributeChange(
          { before: easy, after: full },
          {},
          { conditions: { before: here, after: { air: there.air } }, resamples: 200, pairs: 40 },
        ),
        'carry.modelled.value',
        'carry.modelled.low',
        'carry.causes.ballSpeed.value',
        'carry.causes.launch.value',
        'carry.causes.spinRate.value',
        'carry.causes.spinAxis.value',
        'carry.causes.air.value',
        'carry.causes.air.high',
        'carry.measured.value',
        'total.unexplained.value',
      ),
    standardised: () =>
      pick(
        standardise(full[3] ?? {}, { from: here, to: there }),
        'change.carry',
        'change.total',
        'change.side',
        'change.apex',
        'change.descentAngle',
        'change.hangTime',
        'shot.carry',
      ),
    training: () =>
      pick(
        judgeTraining(log),
        'change.value',
        'change.low',
        'perTime.value',
        'dayToDay',
        'detectable',
        'worth.value',
        'worth.high',
        'causes.carry.causes.ballSpeed.value',
        'scatter.launchDirection.ratio',
        'next.clubSpeed',
        'sessions.6.time',
      ),
    'gains-to-show': () =>
      pick(
        gainsToShow(log),
        'gains.0.shots',
        'gains.0.sessions',
        'gains.2.sessions',
        'shotToShot',
        'dayToDay',
      ),
    'ranked-changes': () =>
      pick(
        rankChanges(full, here, { draws: 100 }),
        'now.carry.value',
        'changes.0.step',
        'changes.0.carry.value',
        'changes.0.carry.low',
        'changes.0.total.high',
        'changes.1.carry.value',
        'againstCentred.ballSpeed.value',
        'againstCentred.spin.high',
      ),
    'scatter-trend': () =>
      pick(
        scatterTrend([...easy, ...full]),
        'growthPerMph',
        'interval.low',
        'interval.high',
        'sd',
        'atSpeed',
      ),
    'scatter-trend-carry': () =>
      pick(scatterTrend([...easy, ...full], { quantity: 'carry', level: 0.9 }), 'growthPerMph', 'sd'),
    calibration: () =>
      pick(
        calibrate([...easy, ...full]),
        'values.0.value',
        'values.1.value',
        'values.2.value',
        'values.3.value',
        'residuals.0.typicalAfter',
      ),
    'calibration-of-drag': () =>
      pick(
        calibrate(
          full.map((shot) => ({ ...shot, carry: si<never>(0.95 * (shot.carry ?? 0)) })),
          here,
          { what: ['dragScale'] },
        ),
        'values.0.value',
        'values.0.standardError',
      ),
  },
};
