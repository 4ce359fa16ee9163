import type { ShotTable } from 'fairflight/schema';
import type { Display } from '../lib/display.js';
import { gainSentences } from '../lib/gains.js';
import { ODD_RULE, oddLines } from '../lib/odd.js';
import {
  comments,
  figure,
  htmlPage,
  htmlTable,
  kept,
  leftOut,
  list,
  paragraphs,
  section,
} from '../lib/page.js';
import { sceneWords } from '../lib/scene-options.js';
import { readingSummary } from '../lib/shot-table.js';
import { escaped, fixed } from '../lib/text.js';
import { causesChart, scatterChart, speedChart } from './charts.js';
import type { TrainingLog } from './log.js';
import { NO_OVERSPEED_EFFECT, PUBLISHED } from './published.js';
import { sessionColumns } from './sessions.js';
import {
  besideSentence,
  LIMITS,
  scatterSentence,
  targetSentence,
  verdictSentence,
  widthSentence,
  worthSentence,
} from './words.js';

/** The log as one self-contained page. */
export function logPage(log: TrainingLog, table: ShotTable, file: string, display: Display): string {
  const { report } = log;
  const about = `${file}: ${readingSummary(table)}. ${report.sessions.length} sessions. Launches flown in ${sceneWords(log.scene, display)}.`;
  const scatter = scatterChart(log, display);
  const causes = causesChart(log, display);
  const sentences = [
    verdictSentence(log, display),
    worthSentence(log, display),
    scatterSentence(log, display),
    targetSentence(log, display),
    ...gainSentences(log.toShow, display),
  ].filter((each) => each !== '');
  const dates =
    report.timeUnit === 'weeks'
      ? ''
      : ' Not every session has a date written like 2026-03-31, so sessions stand in the order of the file.';
  return htmlPage({
    title: 'Speed log: did the training work?',
    lead: `<p class="lead">${escaped(about)}</p>${comments(table)}`,
    sections: [
      `<div class="card"><h3>In short</h3>${list(sentences)}</div>`,
      kept(
        'Club speed over time',
        `A session’s mean inside the shaded band could be the old speed on another day.${dates}`,
        figure(speedChart(log, display)) + paragraphs([widthSentence(log, display)]),
      ),
      `<div class="banner keep"><h3>Before more speed work</h3>${list(report.cautions)}</div>`,
      ...(scatter === ''
        ? []
        : [
            kept(
              'Did scatter grow?',
              'Standard deviation within sessions, the last over the first, with 95 % intervals. Right of the dashed line is more scatter.',
              figure(scatter),
            ),
          ]),
      ...(causes === ''
        ? []
        : [
            kept(
              'What changed the carry',
              'The change of mean carry between the first and last sessions, split over its causes by the model (the parts add up exactly).',
              figure(causes),
            ),
          ]),
      kept('The sessions', sessionNote(log), sessionTable(log, display)),
      kept(
        'Beside what has been published',
        escaped(besideSentence(log)),
        `<ul>${PUBLISHED.map(({ finding, source }) => `<li>${escaped(finding)} <span class="note">${escaped(source)}.</span></li>`).join('')}</ul><p><strong>${escaped(NO_OVERSPEED_EFFECT)}</strong></p>`,
      ),
      section('Shots that stand apart', '', oddShots(log, display)),
      leftOut(table),
      section('Limits', '', list(LIMITS)),
    ],
    foot: 'Nothing here is medical advice.',
  });
}

function sessionNote({ keptOutliers }: TrainingLog): string {
  return `Mean of each session and, in small print, the standard deviation from shot to shot. ${keptOutliers ? 'All shots count.' : 'Shots far apart are left out and listed below.'}`;
}

function sessionTable(log: TrainingLog, display: Display): string {
  const { report, sessions } = log;
  const columns = sessionColumns(log, display);
  return htmlTable(
    [
      { head: 'session', text: true },
      { head: report.timeUnit === 'weeks' ? 'week' : 'number' },
      { head: 'shots' },
      ...columns.map(({ head, unit }) => ({ head, unit })),
    ],
    sessions.map((band, i) => [
      escaped(band.name),
      fixed(report.sessions[i]?.time, report.timeUnit === 'weeks' ? 1 : 0),
      String(band.shots.length),
      ...columns.map(({ of }) => {
        const shown = of(band);
        if (shown === undefined) return '–';
        return shown.sd === undefined ? shown.mean : `${shown.mean}<span class="range">±${shown.sd}</span>`;
      }),
    ]),
  );
}

function oddShots({ sifted }: TrainingLog, display: Display): string {
  const lines = oddLines(sifted, display);
  return `${lines.length === 0 ? '<p>None.</p>' : list(lines)}<p class="note">${ODD_RULE}</p>`;
}
