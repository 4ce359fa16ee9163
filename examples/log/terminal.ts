import type { ShotTable } from 'fairflight/schema';
import type { ChangeFactor } from 'fairflight/session';
import type { Display } from '../lib/display.js';
import { gainSentences } from '../lib/gains.js';
import { ODD_RULE, oddLines } from '../lib/odd.js';
import { sceneWords } from '../lib/scene-options.js';
import { readingLines } from '../lib/shot-table.js';
import { terminalTable } from '../lib/table.js';
import { fixed, signed, wrapped } from '../lib/text.js';
import { causeName } from './charts.js';
import type { TrainingLog } from './log.js';
import { NO_OVERSPEED_EFFECT, PUBLISHED } from './published.js';
import { sessionColumns } from './sessions.js';
import {
  besideSentence,
  scatterSentence,
  targetSentence,
  verdictSentence,
  widthSentence,
  worthSentence,
} from './words.js';

/** The log as text for the terminal. */
export function terminalReport(log: TrainingLog, table: ShotTable, display: Display): string {
  const { report } = log;
  const odd = oddLines(log.sifted, display);
  const blocks = [
    ...readingLines(table),
    `Launches flown in ${sceneWords(log.scene, display)}.`,
    '',
    'SESSIONS: mean ± standard deviation from shot to shot',
    sessionTable(log, display),
    '',
    'IN SHORT',
    ...[
      verdictSentence(log, display),
      worthSentence(log, display),
      scatterSentence(log, display),
      targetSentence(log, display),
      ...gainSentences(log.toShow, display),
      widthSentence(log, display),
    ].flatMap((each) => (each === '' ? [] : [`  ${each}`])),
    '',
    'WHAT CHANGED THE CARRY',
    ...causes(log, display).map((each) => `  ${each}`),
    '',
    'SHOTS THAT STAND APART',
    ...(odd.length === 0 ? ['  none'] : odd.map((each) => `  ${each}`)),
    `  ${ODD_RULE}`,
    log.keptOutliers
      ? '  All count (--keep-outliers).'
      : '  Shots far apart are left out; unusual ones are kept.',
    '',
    'BESIDE WHAT HAS BEEN PUBLISHED',
    ...[
      besideSentence(log),
      ...PUBLISHED.map(({ finding, source }) => `${finding} ${source}.`),
      NO_OVERSPEED_EFFECT,
    ].flatMap((each) => (each === '' ? [] : [`  ${each}`])),
    '',
    'BEFORE MORE SPEED WORK',
    ...report.cautions.map((each) => `  ${each}`),
  ];
  return `${blocks.flatMap((block) => (block.includes('\n') || block === '' ? block : wrapped(block))).join('\n')}\n`;
}

function sessionTable(log: TrainingLog, display: Display): string {
  const columns = sessionColumns(log, display);
  return terminalTable(
    [
      'session',
      log.report.timeUnit === 'weeks' ? 'week' : 'number',
      'shots',
      ...columns.map(({ head, unit }) => (unit === '' ? head : `${head}\n${unit}`)),
    ],
    log.sessions.map((band, i) => [
      band.name,
      fixed(log.report.sessions[i]?.time, log.report.timeUnit === 'weeks' ? 1 : 0),
      String(band.shots.length),
      ...columns.map(({ of }) => {
        const shown = of(band);
        if (shown === undefined) return '–';
        return shown.sd === undefined ? shown.mean : `${shown.mean} ±${shown.sd}`;
      }),
    ]),
  );
}

function causes({ report }: TrainingLog, { distance }: Display): readonly string[] {
  const split = report.causes?.carry;
  if (split === undefined) return ['Launches were not measured at both ends, so this cannot be said.'];
  const said = ({ value, low, high }: { value: number; low: number; high: number }): string =>
    `${signed(distance.of(value), 1)} ${distance.unit} (${signed(distance.of(low), 1)} to ${signed(distance.of(high), 1)})`;
  const parts = (Object.keys(split.causes) as ChangeFactor[]).filter(
    (cause) => split.causes[cause].low !== 0 || split.causes[cause].high !== 0,
  );
  return [
    ...(split.measured === undefined ? [] : [`measured: ${said(split.measured)}`]),
    ...parts.map((cause) => `${causeName(cause)}: ${said(split.causes[cause])}`),
    ...(split.unexplained === undefined ? [] : [`not explained by the model: ${said(split.unexplained)}`]),
  ];
}
