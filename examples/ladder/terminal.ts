import type { ShotTable } from 'fairflight/schema';
import type { Display } from '../lib/display.js';
import { gainSentences } from '../lib/gains.js';
import { ODD_RULE } from '../lib/odd.js';
import { sceneWords } from '../lib/scene-options.js';
import type { Sheet } from '../lib/sheet.js';
import { readingLines } from '../lib/shot-table.js';
import { terminalSheet } from '../lib/table.js';
import { fixed, wrapped } from '../lib/text.js';
import { CALIBRATED_NOTE, calibrationLines } from './calibration-report.js';
import type { Ladder } from './ladder.js';
import { oddLine } from './odd-shots.js';
import { bandTable, loftTable, modelTable, stepTable } from './tables.js';
import {
  CAUTIONS,
  changeSentences,
  fitSentence,
  modelledSentences,
  payingSentence,
  scatterSentence,
  unassignedLines,
  widthSentence,
  worthSentence,
} from './words.js';

/** The ladder as text for the terminal. */
export function terminalReport(ladder: Ladder, table: ShotTable, display: Display): string {
  const { rungs, setup } = ladder;
  const blocks = [
    ...readingLines(table),
    `Conditions: ${sceneWords(setup.scene, display)}; ${setup.clubhead.name}, ${fixed(display.angle.of(setup.clubhead.staticLoft), 1)}° nominal; ${setup.hand}-handed; best loft by ${setup.maximise}.`,
    '',
    ...(ladder.calibration === undefined
      ? []
      : [...calibrationLines(ladder.calibration, table.shots, display), '']),
    'BANDS: mean ± half of the 95 % interval',
    terminalSheet(bandTable(rungs, display)),
    '',
    'SHOTS THAT STAND APART',
    ...(ladder.odd.length === 0 ? ['  none'] : ladder.odd.map((odd) => `  ${oddLine(odd)}`)),
    `  ${ODD_RULE}`,
    setup.keepOutliers
      ? '  All count in the means (--keep-outliers).'
      : '  Shots far apart are left out of the means; unusual ones are kept.',
    ...unassignedLines(ladder, table.shots).map((line) => `  ${line}`),
    '',
    'MODEL BESIDE MEASUREMENT: the model, and below it what was measured, model less measured, and its spread',
    rungs.some(({ disagreement }) => Object.keys(disagreement).length > 0)
      ? terminalSheet(modelTable(rungs, display))
      : '  Carry, apex and descent were not measured beside a launch, so the model cannot be checked here.',
    ...(ladder.calibration === undefined ? [] : [`  ${CALIBRATED_NOTE}`]),
    ...modelledSentences(rungs).map((each) => `  ${each}`),
    '',
    'BEST LOFT FOR EACH SPEED: inside the windows no more than 1 % of the distance is lost',
    ...(rungs.some(({ loft }) => loft !== undefined) ? [terminalSheet(loftTable(rungs, display))] : []),
    '',
    'WHAT COULD BE CHANGED: each alone, with its 95 % interval',
    ...rungs.flatMap((rung) => changeSentences(rung, display).map((line) => `  ${line}`)),
    '',
    'WHAT EACH STEP OF SPEED BROUGHT',
    ...(ladder.steps.length === 0
      ? ['  One band only: no step to look at.']
      : [
          terminalSheet(withoutCauseIntervals(stepTable(ladder, display))),
          '  Club speed and strike together are what ball speed brought; strike is the change of smash factor.',
        ]),
    '',
    'IN SHORT',
    ...[
      payingSentence(ladder, display),
      fitSentence(rungs, setup.maximise),
      worthSentence(rungs, display),
      scatterSentence(ladder, display),
      ...gainSentences(ladder.toShow, display),
      widthSentence(ladder, display),
    ].flatMap((each) => (each === '' ? [] : [`  ${each}`])),
    '',
    ...CAUTIONS,
  ];
  return `${blocks.flatMap((block) => (block.includes('\n') || block === '' ? block : wrapped(block))).join('\n')}\n`;
}

/** Columns of a step: its name, speed, carry, and carry per speed. */
const BEFORE_CAUSES = 4;

/** The intervals of the causes would make the table too wide for a terminal; the page has them. */
function withoutCauseIntervals({ columns, rows }: Sheet): Sheet {
  return {
    columns,
    rows: rows.map((row) => row.map((cell, i) => (i < BEFORE_CAUSES ? cell : { value: cell.value }))),
  };
}
