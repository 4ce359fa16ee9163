import type { ShotTable } from 'fairflight/schema';
import type { Display } from '../lib/display.js';
import { sceneWords } from '../lib/scene-options.js';
import { readingHead, SPEED_CAUTION, said, screenTable, screenText } from '../lib/screen.js';
import type { Ladder } from './ladder.js';
import { bandTable } from './tables.js';
import { fitSentence, payingSentence, scatterSentence, worthSentence } from './words.js';

/** What matters most of the ladder, for one screen. */
export function screenReport(ladder: Ladder, table: ShotTable, display: Display): string {
  const { rungs, setup } = ladder;
  return screenText([
    ...readingHead(table),
    '',
    `BANDS: means, in ${sceneWords(setup.scene, display)}`,
    screenTable(bandTable(rungs, display)),
    '',
    'IN SHORT',
    ...said([
      payingSentence(ladder, display),
      fitSentence(rungs, setup.maximise),
      worthSentence(rungs, display),
      scatterSentence(ladder, display),
    ]),
    '',
    SPEED_CAUTION,
  ]);
}
