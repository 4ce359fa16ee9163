import type { Scene } from 'fairflight';
import type { ChangeFactor, MeasuredShot, QuantityName, ScatterChange } from 'fairflight/session';
import type { Display } from '../../lib/display.js';
import { gainSentences } from '../../lib/gains.js';
import { oddLines } from '../../lib/odd.js';
import type { Sheet } from '../../lib/sheet.js';
import { fixed, signed } from '../../lib/text.js';
import { causeName, causesChart, scatterChart, speedChart } from '../../log/charts.js';
import { sessionOf, type TrainingLog, trainingLog } from '../../log/log.js';
import { sessionColumns } from '../../log/sessions.js';
import {
  besideSentence,
  LIMITS,
  scatterName,
  scatterSentence,
  scatterShown,
  targetSentence,
  verdictSentence,
  widthSentence,
  worthSentence,
} from '../../log/words.js';
import type { Answer, Part } from '../protocol.js';
import { MOST_DRAWN, spreadOver } from '../sample.js';
import { chart, type Drawing, notes, table } from './parts.js';

/** Fewest sessions that make a log. */
const FEWEST = 2;

/** The log of these shots; undefined where all are of one day. */
export function weeksOf(
  shots: readonly MeasuredShot[],
  scene: Scene,
  keepOutliers: boolean,
): TrainingLog | undefined {
  const speeds = shots.filter(({ clubSpeed }) => clubSpeed !== undefined);
  if (new Set(speeds.map(sessionOf)).size < FEWEST) return undefined;
  const quiet = { tick: (): void => undefined, stop: (): void => undefined };
  return trainingLog({ shots: speeds, block: undefined, scene, keepOutliers }, quiet);
}

/** The log with only as many shots as a picture can show. */
export function drawnLog(log: TrainingLog): TrainingLog {
  return { ...log, sifted: { ...log.sifted, used: spreadOver(log.sifted.used, MOST_DRAWN) } };
}

/** Did the weeks work? */
export function weeksAnswer(log: TrainingLog, display: Display, drawing: Drawing): Answer {
  const { words, width } = drawing;
  const scatter = scatterChart(log, display, width);
  const causes = causesChart(log, display, width);
  const parts: Part[] = [
    chart('weeks', speedChart(drawnLog(log), display, width), sessionSheet(log, display, drawing), drawing),
    ...(scatter === '' ? [] : [chart('scatter', scatter, scatterFigures(log, display, drawing), drawing)]),
    ...(causes === '' ? [] : [chart('causes', causes, causeFigures(log, display, drawing), drawing)]),
    table('sessions', sessionSheet(log, display, drawing), drawing),
    ...notes(words.answers.oddTitle, oddLines(log.sifted, display).slice(0, 30)),
    ...notes(words.answers.limits, [besideSentence(log), ...LIMITS]),
    ...notes(words.answers.cautions, log.report.cautions),
  ];
  const says = [
    verdictSentence(log, display),
    worthSentence(log, display),
    scatterSentence(log, display),
    targetSentence(log, display),
    ...gainSentences(log.toShow, display),
    widthSentence(log, display),
  ];
  return { id: 'weeks', says: says.filter((each) => each !== ''), parts };
}

function sessionSheet(log: TrainingLog, display: Display, { words }: Drawing): Sheet {
  const { heads } = words.answers;
  const columns = sessionColumns(log, display);
  return {
    columns: [
      { head: heads.session, text: true },
      { head: heads.shots },
      ...columns.map(({ head, unit }) => ({ head, unit })),
    ],
    rows: log.sessions.map((band) => [
      { value: band.name },
      { value: String(band.shots.length) },
      ...columns.map(({ of }) => {
        const shown = of(band);
        if (shown === undefined) return { value: '–' };
        return { value: shown.mean, ...(shown.sd !== undefined && { small: [`±${shown.sd}`] }) };
      }),
    ]),
  };
}

function scatterFigures({ report }: TrainingLog, display: Display, { words }: Drawing): Sheet {
  const { heads } = words.answers;
  return {
    columns: [
      { head: heads.quantity, text: true },
      { head: heads.last },
      { head: heads.this },
      { head: heads.interval },
    ],
    rows: (Object.entries(report.scatter) as [QuantityName, ScatterChange][]).map(
      ([name, { before, after, interval }]) => [
        { value: scatterName(name) },
        { value: scatterShown(name, before, display) },
        { value: scatterShown(name, after, display) },
        { value: `${fixed(interval.low, 2)} – ${fixed(interval.high, 2)}` },
      ],
    ),
  };
}

function causeFigures({ report }: TrainingLog, { distance }: Display, { words }: Drawing): Sheet {
  const { heads } = words.answers;
  const causes = report.causes?.carry.causes;
  return {
    columns: [
      { head: heads.cause, text: true },
      { head: heads.change, unit: distance.unit },
      { head: heads.interval, unit: distance.unit },
    ],
    rows: (Object.keys(causes ?? {}) as ChangeFactor[]).map((cause) => {
      const part = causes?.[cause];
      return [
        { value: causeName(cause) },
        { value: signed(part && distance.of(part.value), 1) },
        {
          value: `${signed(part && distance.of(part.low), 1)} – ${signed(part && distance.of(part.high), 1)}`,
        },
      ];
    }),
  };
}
