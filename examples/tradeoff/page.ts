import type { ShotTable } from 'fairflight/schema';
import { adviceLines } from '../lib/advice.js';
import type { Display } from '../lib/display.js';
import { ODD_RULE, ODD_WORDS, oddReadings } from '../lib/odd.js';
import { comments, figure, htmlPage, htmlTable, kept, list, paragraphs, section } from '../lib/page.js';
import { sceneWords } from '../lib/scene-options.js';
import { readingSummary, tableNotes } from '../lib/shot-table.js';
import { capital, counted, escaped, fixed } from '../lib/text.js';
import { cloudChart, strokesChart } from './charts.js';
import { rowsOf, scatterRows } from './rows.js';
import { tradeoffChart } from './scatter-chart.js';
import type { Tradeoff } from './tradeoff.js';
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
} from './words.js';

/** The trade-off as one self-contained page. */
export function tradeoffPage(tradeoff: Tradeoff, table: ShotTable, file: string, display: Display): string {
  const { course, scene, clubhead, now, faster } = tradeoff;
  const loft = `${fixed(display.angle.of(clubhead.staticLoft), 1)}° nominal`;
  const about = `${file}: ${readingSummary(table)}. ${capital(courseWords(course, display))}; ${clubhead.name}, ${loft}; ${sceneWords(scene, display)}; ${lawWords(tradeoff, display)}.`;
  const share = (cloud: typeof now): string =>
    `${fixed(100 * (cloud.dispersion.fairway?.share ?? 0))} % on the fairway at ${fixed(display.speed.of(cloud.clubSpeed))} ${display.speed.unit}`;
  return htmlPage({
    title: 'Faster or straighter?',
    lead: `<p class="lead">${escaped(about)}</p>${comments(table)}`,
    sections: [
      `<div class="card"><h3>In short</h3><p><strong>${escaped(answerSentence(tradeoff, display))}</strong></p>${list(
        [
          speedSentence(tradeoff, display),
          cancellingSentence(tradeoff, display),
          widthSentence(tradeoff, display),
        ],
      )}</div>`,
      kept(
        'The trade-off',
        'Below the black curve a speed is worth having at that scatter; above it, the rough costs more than the distance brings. The curve counts path, face and strike together; the player’s trend is that of direction alone.',
        figure(tradeoffChart(tradeoff, display)),
      ),
      kept(
        'Strokes against club speed',
        `On all holes together, against now; ${lawWords(tradeoff, display)}.`,
        figure(strokesChart(tradeoff, display)),
      ),
      kept(
        'Where tee shots come to rest',
        `Simulated, seen from above, both directions at one scale: ${share(now)}, ${share(faster)}.`,
        cloudChart(tradeoff, display) + paragraphs([checkSentence(tradeoff, display)]),
      ),
      kept(
        'Speed by speed',
        'Means of the simulation; small print: half of the 95 % interval that the number of shots leaves.',
        stepTable(tradeoff, display),
      ),
      ...(tradeoff.advice === undefined
        ? []
        : [
            kept(
              'What else could be changed',
              'Each alone, at the present speed, with its 95 % interval.',
              list(adviceLines(tradeoff.advice, display)),
            ),
          ]),
      kept(
        'What scatters',
        `Standard deviations from shot to shot at ${fixed(display.speed.of(now.clubSpeed))} ${display.speed.unit}, from ${counted(tradeoff.player.used, 'shot')}. Delivery and place on the face are worked out together from the readings of each impact.`,
        htmlTable(
          [{ head: 'quantity', text: true }, { head: 'usual' }, { head: 'scatter' }],
          scatterRows(tradeoff, display).map((row) => row.map(escaped)),
        ),
      ),
      section(
        'Shots that stand apart, rows left out',
        'Shots far apart are left out unless asked for, unusual ones kept.',
        leftOut(tradeoff, table, display),
      ),
      section('Limits and cautions', '', `${list(LIMITS)}<div class="card">${list(CAUTIONS)}</div>`),
    ],
  });
}

function stepTable(tradeoff: Tradeoff, display: Display): string {
  const { speed, distance } = display;
  return htmlTable(
    [
      { head: 'club speed', unit: speed.unit },
      { head: 'direction scatter', unit: '% of now' },
      { head: 'carry', unit: distance.unit },
      { head: 'total', unit: distance.unit },
      { head: 'fairways', unit: '%' },
      { head: 'strokes', unit: 'all holes' },
      { head: 'against now', unit: 'strokes' },
      { head: 'scatter allowed', unit: '% of now' },
    ],
    rowsOf(tradeoff, display).map((row) => [
      row.now ? `<strong>${row.speed}</strong>` : row.speed,
      row.scatter,
      row.carry,
      row.total,
      row.fairway,
      row.strokes,
      row.now ? 'now' : `${row.change}<span class="range">±${row.error}</span>`,
      row.allowed,
    ]),
  );
}

function leftOut({ player }: Tradeoff, table: ShotTable, display: Display): string {
  const items = [
    ...player.odd.map(
      (odd) =>
        `${ODD_WORDS[odd.verdict]}, ${odd.line === undefined ? `shot ${odd.shot + 1}` : `line ${odd.line}`} (${odd.band}): ${oddReadings(odd, display)}.`,
    ),
    ...player.unexplained.map(
      (line) => `Line ${line}: no strike on this head explains its readings; left out as a misread.`,
    ),
    ...(player.incomplete === 0
      ? []
      : [
          `${counted(player.incomplete, 'shot')} without club speed, ball speed, launch angle, launch direction and spin.`,
        ]),
    ...tableNotes(table),
  ];
  return `${items.length === 0 ? '<p>None.</p>' : list(items)}<p class="note">${ODD_RULE} In the simulation wild shots come back as the tails of a Student t distribution.</p>`;
}
