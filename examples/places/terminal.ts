import type { ShotTable } from 'fairflight/schema';
import type { Display } from '../lib/display.js';
import { ODD_RULE, oddLines } from '../lib/odd.js';
import { sceneWords } from '../lib/scene-options.js';
import { readingLines } from '../lib/shot-table.js';
import { terminalTable } from '../lib/table.js';
import { counted, fixed, signed, wrapped } from '../lib/text.js';
import { type Elsewhere, warningLines, withoutLaunchSentence } from './elsewhere.js';
import {
  basisSentence,
  CARD_NOTE,
  LIMITS,
  placeSentences,
  spreadWords,
  thereWords,
  widthSentence,
  windSentence,
} from './words.js';

/** The distances elsewhere as text for the terminal. */
export function terminalReport(answer: Elsewhere, table: ShotTable, display: Display): string {
  const odd = oddLines(answer.sifted, display);
  const { unit } = display.distance;
  const blocks = [
    ...readingLines(table),
    `Measured in ${sceneWords(answer.home, display)}.`,
    '',
    `CARRY (${unit}; then the change from where it was measured, in brackets what models of the ball span)`,
    distanceTable(answer, display, 'carry'),
    '',
    `TOTAL (${unit}; on soft turf in winter, on firm in summer)`,
    distanceTable(answer, display, 'total'),
    '',
    'IN SHORT',
    ...[
      ...placeSentences(answer, display),
      windSentence(answer, display),
      widthSentence(answer, display),
      basisSentence(answer),
      withoutLaunchSentence(answer),
    ].flatMap((each) => (each === '' ? [] : [`  ${each}`])),
    '',
    'SHOTS THAT STAND APART',
    ...(odd.length === 0 ? ['  none'] : odd.map((each) => `  ${each}`)),
    `  ${ODD_RULE}`,
    answer.keptOutliers
      ? '  All count in the means (--keep-outliers).'
      : '  Shots far apart are left out of the means; unusual ones are kept.',
    '',
    'LIMITS',
    ...[CARD_NOTE, ...LIMITS].map((each) => `  ${each}`),
    ...warningLines(answer, display).map(
      ({ message, shots }) => `  In ${counted(shots, 'flight')}, for example: ${message}`,
    ),
  ];
  return `${blocks.flatMap((block) => (block.includes('\n') || block === '' ? block : wrapped(block))).join('\n')}\n`;
}

function distanceTable({ clubs, places }: Elsewhere, display: Display, name: 'carry' | 'total'): string {
  const { distance } = display;
  const shown = places.filter(({ key }) => name === 'carry' || key !== 'across');
  return terminalTable(
    ['club', 'shots', 'as\nmeasured', ...shown.map(({ head }) => head.join('\n'))],
    clubs.map((club) => {
      const { mean, interval } = club[name];
      const half = interval === undefined ? '' : ` ±${fixed(distance.of(interval.high - interval.low) / 2)}`;
      return [
        club.club,
        String(club.shots),
        `${fixed(distance.of(mean))}${half}`,
        ...shown.map(({ key }) => {
          const there = club.there[key];
          if (key === 'across') {
            const { known, value, spread } = there.drift;
            const drift = known === false ? 'not known' : fixed(distance.of(Math.abs(value)));
            return `${drift} sideways${spread ? `\n(${spreadWords(spread, display)})` : ''}`;
          }
          const changed = name === 'carry' ? there.carryChange : there.totalChange;
          const range = changed.spread ? `\n(${spreadWords(changed.spread, display)})` : '';
          return `${thereWords(there[name], changed, display)}${changed.known === false ? '' : ` ${signed(distance.of(changed.value))}`}${range}`;
        }),
      ];
    }),
  );
}
