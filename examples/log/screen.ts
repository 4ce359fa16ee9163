import type { ShotTable } from 'fairflight/schema';
import type { Display } from '../lib/display.js';
import { readingHead, SPEED_CAUTION, said, screenText } from '../lib/screen.js';
import type { TrainingLog } from './log.js';
import { scatterSentence, targetSentence, verdictSentence, widthSentence, worthSentence } from './words.js';

/** What matters most of the log, for one screen. */
export function screenReport(log: TrainingLog, table: ShotTable, display: Display): string {
  return screenText([
    ...readingHead(table),
    '',
    'IN SHORT',
    ...said([
      verdictSentence(log, display),
      worthSentence(log, display),
      scatterSentence(log, display),
      targetSentence(log, display),
      widthSentence(log, display),
    ]),
    '',
    SPEED_CAUTION,
  ]);
}
