import type { ShotTable } from 'fairflight/schema';
import type { ChangeFactor, QuantityName, ScatterChange } from 'fairflight/session';
import type { Display } from '../lib/display.js';
import { gainSentences, gainsRecord } from '../lib/gains.js';
import { oddLines } from '../lib/odd.js';
import { sceneWords } from '../lib/scene-options.js';
import { quantityNamed, shownBy } from '../lib/shot-quantities.js';
import { near } from '../lib/text.js';
import { causeName } from './charts.js';
import type { TrainingLog } from './log.js';
import { NO_OVERSPEED_EFFECT, PUBLISHED } from './published.js';
import {
  LIMITS,
  scatterSentence,
  targetSentence,
  verdictSentence,
  widthSentence,
  worthSentence,
} from './words.js';

interface Range {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

/** The log as JSON: every number under a key that says its unit. */
export function logRecord(log: TrainingLog, table: ShotTable, file: string, display: Display): unknown {
  const { speed, distance } = display;
  const { report } = log;
  const range = ({ value, low, high }: Range, of: (si: number) => number, decimals: number): Range => ({
    value: near(of(value), decimals),
    low: near(of(low), decimals),
    high: near(of(high), decimals),
  });
  const split = report.causes?.carry;
  return {
    about: {
      what: 'Did speed training work',
      file,
      comments: table.comments,
      conditions: sceneWords(log.scene, display),
      'outliers count': log.keptOutliers,
      limits: LIMITS,
      cautions: report.cautions,
    },
    input: {
      rows: table.rowsRead,
      used: table.shots.length,
      'left out': table.rowsLeftOut,
      rejected: table.rejected,
      notes: table.notes,
    },
    sessions: report.sessions.map((session) => ({
      name: session.name,
      [report.timeUnit === 'weeks' ? 'week' : 'number']: near(session.time, 2),
      shots: session.shots,
      [`club speed (${speed.unit})`]: near(speed.of(session.clubSpeed), 2),
      ...(session.carry !== undefined && {
        [`carry (${distance.unit})`]: near(distance.of(session.carry), 1),
      }),
    })),
    verdict: report.verdict,
    'sessions averaged at each end': report.block,
    ...(report.change && { [`change of club speed (${speed.unit})`]: range(report.change, speed.of, 2) }),
    ...(report.perTime && {
      [`trend (${speed.unit} a ${report.timeUnit === 'weeks' ? 'week' : 'session'})`]: range(
        report.perTime,
        speed.of,
        3,
      ),
    }),
    ...(report.dayToDay !== undefined && {
      [`day to day (${speed.unit})`]: near(speed.of(report.dayToDay), 2),
    }),
    ...(report.detectable !== undefined && {
      [`least change shown (${speed.unit})`]: near(speed.of(report.detectable), 2),
    }),
    ...(report.worth && { [`worth (${distance.unit})`]: range(report.worth, distance.of, 1) }),
    ...(split && {
      [`change of carry (${distance.unit})`]: {
        ...(split.measured && { measured: range(split.measured, distance.of, 1) }),
        modelled: range(split.modelled, distance.of, 1),
        parts: Object.fromEntries(
          (Object.keys(split.causes) as ChangeFactor[]).map((cause) => [
            causeName(cause),
            range(split.causes[cause], distance.of, 1),
          ]),
        ),
        ...(split.unexplained && { 'not explained': range(split.unexplained, distance.of, 1) }),
      },
    }),
    scatter: Object.fromEntries(
      (Object.entries(report.scatter) as [QuantityName, ScatterChange][]).map(([name, change]) => {
        const quantity = quantityNamed(name);
        const { unit, of, decimals } = shownBy(quantity, display);
        return [
          unit === '' ? quantity.label : `${quantity.label} (${unit === '°' ? 'deg' : unit})`,
          {
            before: near(of(change.before), decimals + 1),
            after: near(of(change.after), decimals + 1),
            ratio: near(change.ratio, 2),
            low: near(change.interval.low, 2),
            high: near(change.interval.high, 2),
            verdict: change.verdict,
          },
        ];
      }),
    ),
    ...(report.next && {
      'next target': {
        [`club speed (${speed.unit})`]: near(speed.of(report.next.clubSpeed), 1),
        [`step (${speed.unit})`]: near(speed.of(report.next.step), 1),
      },
    }),
    ...(log.toShow && { 'to show a gain of club speed': gainsRecord(log.toShow, display) }),
    answers: [
      verdictSentence(log, display),
      worthSentence(log, display),
      scatterSentence(log, display),
      targetSentence(log, display),
      ...gainSentences(log.toShow, display),
      widthSentence(log, display),
    ].filter((each) => each !== ''),
    'odd shots': oddLines(log.sifted, display),
    published: { findings: PUBLISHED, overspeed: NO_OVERSPEED_EFFECT },
  };
}
