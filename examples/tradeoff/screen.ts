import type { ShotTable } from 'fairflight/schema';
import type { Display } from '../lib/display.js';
import { readingHead, SPEED_CAUTION, said, screenTable, screenText } from '../lib/screen.js';
import { capital } from '../lib/text.js';
import { rowsOf } from './rows.js';
import type { Tradeoff } from './tradeoff.js';
import { answerSentence, courseWords, speedSentence, widthSentence } from './words.js';

/** What matters most of the trade-off, for one screen. */
export function screenReport(tradeoff: Tradeoff, table: ShotTable, display: Display): string {
  const { speed, distance } = display;
  const columns = [
    { head: 'club speed', unit: speed.unit, text: true },
    { head: 'scatter', unit: '% of now' },
    { head: 'carry', unit: distance.unit },
    { head: 'fairways', unit: '%' },
    { head: 'strokes' },
    { head: 'against now' },
  ];
  const rows = rowsOf(tradeoff, display).map((row) =>
    [
      row.now ? `${row.speed} now` : row.speed,
      row.scatter,
      row.carry,
      row.fairway,
      row.strokes,
      row.now ? '' : `${row.change} ±${row.error}`,
    ].map((value) => ({ value })),
  );
  return screenText([
    ...readingHead(table),
    `${capital(courseWords(tradeoff.course, display))}.`,
    '',
    'FASTER OR STRAIGHTER?',
    ...said([
      answerSentence(tradeoff, display),
      speedSentence(tradeoff, display),
      widthSentence(tradeoff, display),
    ]),
    screenTable({ columns, rows }),
    SPEED_CAUTION,
  ]);
}
