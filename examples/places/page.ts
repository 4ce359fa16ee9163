import { sum } from 'd3-array';
import type { ShotTable } from 'fairflight/schema';
import type { Display } from '../lib/display.js';
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
import { counted, escaped, fixed, signed } from '../lib/text.js';
import { CARD_STYLE, pocketCard } from './card.js';
import { changesChart } from './chart.js';
import { type Elsewhere, warningLines, withoutLaunchSentence } from './elsewhere.js';
import {
  basisSentence,
  LIMITS,
  placeSentences,
  spreadWords,
  thereWords,
  widthSentence,
  windSentence,
} from './words.js';

/** The distances elsewhere as one self-contained page, the card to cut out on top. */
export function elsewherePage(answer: Elsewhere, table: ShotTable, file: string, display: Display): string {
  const about = `${file}: ${readingSummary(table)}. Measured in ${sceneWords(answer.home, display)}.`;
  const sentences = [...placeSentences(answer, display), windSentence(answer, display)];
  return htmlPage({
    title: 'The same shot elsewhere',
    lead: `<p class="lead">${escaped(about)}</p>${comments(table)}`,
    style: CARD_STYLE,
    sections: [
      kept('The card', 'To print and cut out; 148 mm wide on paper.', pocketCard(answer, display)),
      `<div class="card keep"><h3>In short</h3>${list([...sentences, widthSentence(answer, display)])}</div>`,
      kept(
        'What each place does to the carry',
        'Change from where the shots were measured, club by club.',
        figure(changesChart(answer, display)),
      ),
      kept(
        'Carry',
        `Mean carry in ${display.distance.unit}; in small print its change, in brackets what models of the ball span; where measured, its 95 % interval.`,
        distanceTable(answer, display, 'carry') +
          paragraphs([basisSentence(answer), withoutLaunchSentence(answer)]),
      ),
      kept(
        'Total',
        'With the run: on soft turf in winter, on firm in summer, else on the turf where it was measured. A guide only.',
        distanceTable(answer, display, 'total'),
      ),
      section('Shots that stand apart', '', oddShots(answer, display)),
      leftOut(table),
      section('Limits', '', list(LIMITS) + beyondModels(answer, display)),
    ],
  });
}

/** Where the models are asked for more than was measured, in small print. */
function beyondModels(answer: Elsewhere, display: Display): string {
  if (answer.warnings.length === 0) return '';
  const all = answer.places.length * sum(answer.clubs, ({ shots }) => shots);
  const each = warningLines(answer, display).map(
    ({ message, shots }) => `${counted(shots, 'flight')} of ${all}: ${message}`,
  );
  return `<p class="note">Beyond what the models were measured on, for example: ${escaped(each.join(' · '))}</p>`;
}

function distanceTable({ clubs, places }: Elsewhere, display: Display, name: 'carry' | 'total'): string {
  const { distance } = display;
  const shown = places.filter(({ key }) => name === 'carry' || key !== 'across');
  const columns = [
    { head: 'club', text: true },
    { head: 'shots' },
    { head: 'as measured', unit: distance.unit },
    ...(name === 'carry' ? [{ head: 'model less measured', unit: distance.unit }] : []),
    ...shown.map(({ key, head: [head, unit] }) => ({
      head: key === 'across' ? 'sideways' : head,
      unit: key === 'across' ? `${unit} across` : unit,
    })),
  ];
  return htmlTable(
    columns,
    clubs.map((club) => {
      const here = club[name];
      const known =
        here.interval === undefined
          ? 'one shot'
          : `±${fixed(distance.of(here.interval.high - here.interval.low) / 2)}`;
      const basis = club.basis[name] === 'modelled' ? ', model' : '';
      return [
        escaped(club.club),
        String(club.shots),
        `${fixed(distance.of(here.mean))}<span class="range">${known}${basis}</span>`,
        ...(name === 'carry'
          ? [club.modelLess === undefined ? '–' : signed(distance.of(club.modelLess), 1)]
          : []),
        ...shown.map(({ key }) => {
          const there = club.there[key];
          const across = key === 'across';
          const changed = across ? there.drift : name === 'carry' ? there.carryChange : there.totalChange;
          const range = changed.spread === undefined ? '' : `(${spreadWords(changed.spread, display)})`;
          const shown = across ? Math.abs(there.drift.value) : there[name];
          const moved = across || changed.known === false ? '' : `${signed(distance.of(changed.value))} `;
          return `${thereWords(shown, changed, display)}<span class="range">${moved}${range}</span>`;
        }),
      ];
    }),
  );
}

function oddShots({ sifted, keptOutliers }: Elsewhere, display: Display): string {
  const lines = oddLines(sifted, display);
  const what = keptOutliers ? 'All count.' : 'Shots far apart are left out of the means, unusual ones kept.';
  return `${lines.length === 0 ? '<p>None.</p>' : `<p>${what}</p>${list(lines)}`}<p class="note">${ODD_RULE}</p>`;
}
