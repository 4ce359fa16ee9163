import { yards } from 'fairflight/units';
import type { Display } from '../../lib/display.js';
import type { Sheet } from '../../lib/sheet.js';
import { capital, fixed, grouped } from '../../lib/text.js';
import { UsageError } from '../../lib/usage-error.js';
import { cloudChart, strokesChart } from '../../tradeoff/charts.js';
import { holesFor, USUAL_TREES } from '../../tradeoff/course.js';
import { playerFrom } from '../../tradeoff/player.js';
import { rowsOf, scatterRows } from '../../tradeoff/rows.js';
import { tradeoffChart } from '../../tradeoff/scatter-chart.js';
import { type Tradeoff, tradeoffOf, WORK } from '../../tradeoff/tradeoff.js';
import {
  answerSentence,
  CAUTIONS,
  cancellingSentence,
  checkSentence,
  courseWords,
  LIMITS,
  lawWords,
  speedSentence,
  widthSentence,
} from '../../tradeoff/words.js';
import type { Answer } from '../protocol.js';
import { MOST_PLACED, spreadOver } from '../sample.js';
import type { Setup } from '../setup.js';
import { chart, type Drawing, notes, table } from './parts.js';

/** Shots simulated at each speed and scatter. */
const SIMULATED = 512;

/** Works out what speed and scatter are worth in strokes. @throws UsageError where the shots do not say enough */
export function strokesOf({ shots, ladder }: Setup, score: string, tick: (share: number) => void): Tradeoff {
  const { clubhead, scene, hand, keepOutliers } = ladder;
  const averageScore = Number(score.trim() === '' ? '90' : score.trim().replace(',', '.'));
  if (!(averageScore >= 60 && averageScore <= 130)) {
    throw new UsageError(`a usual score lies between 60 and 130, not at ${JSON.stringify(score)}`);
  }
  const chosen = spreadOver(shots, MOST_PLACED);
  const progress = (from: number, share: number, total: number) => ({
    tick: (done: number): void => tick(from + (share * done) / total),
    stop: (): void => undefined,
  });
  const question = { shots: chosen, clubhead, hand, now: undefined, law: undefined, keepOutliers };
  const player = playerFrom(question, progress(0, 0.15, chosen.length));
  const course = {
    lengths: holesFor(player.usual.clubSpeed),
    fairway: yards(32),
    trees: USUAL_TREES,
    bounds: undefined,
    skill: { averageScore },
  };
  return tradeoffOf({ player, course, clubhead, scene, shots: SIMULATED }, progress(0.15, 0.85, WORK));
}

/** Faster, or straighter? */
export function strokesAnswer(tradeoff: Tradeoff, all: number, display: Display, drawing: Drawing): Answer {
  const { words, width } = drawing;
  const figures = speedFigures(tradeoff, display, drawing);
  const { used } = tradeoff.player;
  return {
    id: 'strokes',
    says: [
      answerSentence(tradeoff, display),
      speedSentence(tradeoff, display),
      cancellingSentence(tradeoff, display),
      widthSentence(tradeoff, display),
      ...(all > MOST_PLACED ? [words.answers.sampled(grouped(used), grouped(all))] : []),
    ],
    parts: [
      chart('scatterPays', tradeoffChart(tradeoff, display, width), figures, drawing),
      chart('strokes', strokesChart(tradeoff, display, width), figures, drawing),
      chart(
        'cloud',
        cloudChart(tradeoff, display, width),
        scatterFigures(tradeoff, display, drawing),
        drawing,
      ),
      table('speeds', figures, drawing),
      ...notes(words.answers.method, [
        `${capital(courseWords(tradeoff.course, display))}; ${lawWords(tradeoff, display)}.`,
        checkSentence(tradeoff, display),
      ]),
      ...notes(words.answers.limits, LIMITS),
      ...notes(words.answers.cautions, CAUTIONS),
    ],
  };
}

function speedFigures(tradeoff: Tradeoff, display: Display, { words }: Drawing): Sheet {
  const { heads } = words.answers;
  const { distance, speed } = display;
  return {
    columns: [
      { head: heads.speed, unit: speed.unit },
      { head: heads.carry, unit: distance.unit },
      { head: words.page.quantities.total, unit: distance.unit },
      { head: heads.fairways, unit: '%' },
      { head: heads.strokes },
      { head: heads.more },
      { head: heads.allowed, unit: '%' },
    ],
    rows: rowsOf(tradeoff, display).map((row) => [
      { value: row.speed },
      { value: row.carry },
      { value: row.total },
      { value: row.fairway },
      { value: row.strokes },
      row.now ? { value: '0' } : { value: row.change, small: [`±${row.error}`] },
      { value: row.allowed },
    ]),
  };
}

function scatterFigures(tradeoff: Tradeoff, display: Display, { words }: Drawing): Sheet {
  const { heads } = words.answers;
  const share = ({ dispersion }: Tradeoff['now']): string =>
    `${fixed(100 * (dispersion.fairway?.share ?? 0))} %`;
  const at = ({ clubSpeed }: Tradeoff['now']): string =>
    `${fixed(display.speed.of(clubSpeed))} ${display.speed.unit}`;
  return {
    columns: [{ head: heads.quantity, text: true }, { head: heads.now }, { head: heads.within }],
    rows: [
      ...[tradeoff.now, tradeoff.faster].map((cloud) => [
        { value: `${heads.fairways}, ${at(cloud)}` },
        { value: share(cloud) },
        { value: '' },
      ]),
      ...scatterRows(tradeoff, display).map(([name, usual, scatter]) => [
        { value: name },
        { value: usual },
        { value: `±${scatter}` },
      ]),
    ],
  };
}
