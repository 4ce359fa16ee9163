import type { ShotTable } from 'fairflight/schema';
import type { Display } from '../lib/display.js';
import { sceneWords } from '../lib/scene-options.js';
import { readingHead, said, screenTable, screenText } from '../lib/screen.js';
import { fixed, signed } from '../lib/text.js';
import type { Elsewhere } from './elsewhere.js';
import { thereWords, widthSentence, windSentence } from './words.js';

/** What matters most of the distances elsewhere, for one screen. */
export function screenReport(answer: Elsewhere, table: ShotTable, display: Display): string {
  const { distance } = display;
  const columns = [
    { head: 'club', text: true },
    { head: 'as', unit: 'measured' },
    ...answer.places.map(({ head: [head, unit] }) => ({ head, unit })),
  ];
  const rows = answer.clubs.map(({ club, carry, there }) =>
    [
      club,
      fixed(distance.of(carry.mean)),
      ...answer.places.map(({ key }) => {
        const { carry: carryThere, carryChange, drift } = there[key];
        if (key === 'across') {
          return drift.known === false
            ? 'not known'
            : `${fixed(distance.of(Math.abs(drift.value)))} sideways`;
        }
        const shown = thereWords(carryThere, carryChange, display);
        return carryChange.known === false ? shown : `${shown} (${signed(distance.of(carryChange.value))})`;
      }),
    ].map((value) => ({ value })),
  );
  return screenText([
    ...readingHead(table),
    `Measured in ${sceneWords(answer.home, display)}.`,
    '',
    `CARRY (${distance.unit}; in brackets the change from where it was measured)`,
    screenTable({ columns, rows }),
    '',
    ...said([windSentence(answer, display), widthSentence(answer, display)]),
  ]);
}
