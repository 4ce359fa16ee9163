import type { ShotTable } from 'fairflight/schema';
import { adviceLines } from '../lib/advice.js';
import type { Display } from '../lib/display.js';
import { ODD_WORDS, oddReadings } from '../lib/odd.js';
import { sceneWords } from '../lib/scene-options.js';
import { readingLines } from '../lib/shot-table.js';
import { terminalTable } from '../lib/table.js';
import { capital, counted, wrapped } from '../lib/text.js';
import { rowsOf, scatterRows } from './rows.js';
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

/** The trade-off as text for the terminal. */
export function terminalReport(tradeoff: Tradeoff, table: ShotTable, display: Display): string {
  const { player, course, scene } = tradeoff;
  const { speed, distance } = display;
  const left = [
    ...player.odd.map(
      (odd) =>
        `${ODD_WORDS[odd.verdict]}, ${odd.line === undefined ? `shot ${odd.shot + 1}` : `line ${odd.line}`} (${odd.band}): ${oddReadings(odd, display)}.`,
    ),
    ...player.unexplained.map((line) => `line ${line}: no strike on this head explains its readings.`),
    ...(player.incomplete === 0
      ? []
      : [`${counted(player.incomplete, 'shot')} without the readings of club and ball that are needed.`]),
  ];
  const blocks = [
    ...readingLines(table),
    `${capital(courseWords(course, display))}; ${sceneWords(scene, display)}; ${lawWords(tradeoff, display)}.`,
    '',
    'FASTER OR STRAIGHTER?',
    ...[
      answerSentence(tradeoff, display),
      speedSentence(tradeoff, display),
      cancellingSentence(tradeoff, display),
      widthSentence(tradeoff, display),
      checkSentence(tradeoff, display),
    ].map((each) => `  ${each}`),
    ...(tradeoff.advice === undefined
      ? []
      : [
          '',
          'WHAT ELSE COULD BE CHANGED: each alone, with its 95 % interval',
          ...adviceLines(tradeoff.advice, display).map((each) => `  ${each}`),
        ]),
    '',
    'SPEED BY SPEED (strokes on all holes together ± half of the simulation’s 95 % interval)',
    terminalTable(
      [
        `club speed\n${speed.unit}`,
        'direction scatter\n% of now',
        `carry\n${distance.unit}`,
        `total\n${distance.unit}`,
        'fairways\n%',
        'strokes',
        'against now',
        'scatter allowed\n% of now',
      ],
      rowsOf(tradeoff, display).map((row) => [
        row.now ? `${row.speed} now` : row.speed,
        row.scatter,
        row.carry,
        row.total,
        row.fairway,
        row.strokes,
        row.now ? '' : `${row.change} ±${row.error}`,
        row.allowed,
      ]),
    ),
    '',
    'WHAT SCATTERS (standard deviation)',
    terminalTable(['quantity', 'usual', 'scatter'], scatterRows(tradeoff, display)),
    '',
    'SHOTS THAT STAND APART (those far apart are left out unless --keep-outliers)',
    ...(left.length === 0 ? ['  none'] : left.map((each) => `  ${each}`)),
    '',
    'LIMITS AND CAUTIONS',
    ...[...LIMITS, ...CAUTIONS].map((each) => `  ${each}`),
  ];
  return `${blocks.flatMap((block) => (block.includes('\n') || block === '' ? block : wrapped(block))).join('\n')}\n`;
}
