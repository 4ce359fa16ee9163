import type { ShotTable } from 'fairflight/schema';
import type { Display } from '../lib/display.js';
import { ODD_RULE } from '../lib/odd.js';
import { readingLines } from '../lib/reading.js';
import { sceneWords } from '../lib/scene-options.js';
import { COLUMNS, type Quantity, shownBy } from '../lib/shot-quantities.js';
import { terminalTable } from '../lib/table.js';
import { fixed, grouped, signed, wrapped } from '../lib/text.js';
import { CALIBRATED_NOTE, calibrationLines } from './calibration-report.js';
import type { Ladder } from './ladder.js';
import { oddLine } from './odd-shots.js';
import type { Disagreement, Rung } from './rungs.js';
import type { Step } from './steps.js';
import {
  CAUTIONS,
  fitSentence,
  leftSentence,
  loftSentence,
  modelledSentences,
  payingSentence,
  perSpeed,
  perSpeedUnit,
  scatterSentence,
  shotsSentence,
  shotsWords,
  stepName,
  unassignedLines,
  widthSentence,
  windowSentence,
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
    bandTable(rungs, display),
    '',
    'SHOTS THAT STAND APART',
    ...(ladder.odd.length === 0 ? ['  none'] : ladder.odd.map((odd) => `  ${oddLine(odd)}`)),
    `  ${ODD_RULE}`,
    setup.keepOutliers
      ? '  Outliers count in the means (--keep-outliers).'
      : '  Outliers are left out of the means; stragglers are kept.',
    ...unassignedLines(ladder, table.shots).map((line) => `  ${line}`),
    '',
    'MODEL BESIDE MEASUREMENT: model | measured (model less measured ± spread from shot to shot)',
    rungs.some(({ disagreement }) => Object.keys(disagreement).length > 0)
      ? modelTable(rungs, display)
      : '  Carry, apex and descent were not measured beside a launch, so the model cannot be checked here.',
    ...(ladder.calibration === undefined ? [] : [`  ${CALIBRATED_NOTE}`]),
    ...modelledSentences(rungs).map((each) => `  ${each}`),
    '',
    'BEST LOFT FOR EACH SPEED',
    ...(rungs.some(({ loft }) => loft !== undefined) ? [loftTable(rungs, display)] : []),
    ...rungs.map((rung) => `  ${loftSentence(rung, display)}`),
    '',
    'WHAT EACH STEP OF SPEED BROUGHT',
    ...(ladder.steps.length === 0
      ? ['  One band only: no step to look at.']
      : [
          stepTable(ladder, display),
          '  Club speed and strike together are what ball speed brought; strike is the change of smash factor.',
        ]),
    '',
    'IN SHORT',
    ...[
      payingSentence(ladder, display),
      fitSentence(rungs, display),
      leftSentence(rungs, display),
      scatterSentence(ladder, display),
      shotsSentence(ladder, display),
      widthSentence(ladder, display),
    ].flatMap((each) => (each === '' ? [] : [`  ${each}`])),
    '',
    ...CAUTIONS,
  ];
  return `${blocks.flatMap((block) => (block.includes('\n') || block === '' ? block : wrapped(block))).join('\n')}\n`;
}

function bandTable(rungs: readonly Rung[], display: Display): string {
  const measured = COLUMNS.filter(({ name }) => rungs.some((rung) => rung.estimates[name] !== undefined));
  const head = ['band', ...measured.map((each) => `${each.short}\n${shownBy(each, display).unit}`)];
  const rows = rungs.map((rung) => [
    `${rung.name}\n${shotsWords(rung)}`,
    ...measured.map((each) => estimateCell(rung, each, display)),
  ]);
  return terminalTable(head, rows);
}

function estimateCell(rung: Rung, quantity: Quantity, display: Display): string {
  const estimate = rung.estimates[quantity.name];
  if (estimate === undefined) return '–';
  const { of, decimals } = shownBy(quantity, display);
  const half =
    estimate.interval === undefined
      ? undefined
      : (of(estimate.interval.high) - of(estimate.interval.low)) / 2;
  const mean = decimals === 0 ? grouped(of(estimate.mean)) : fixed(of(estimate.mean), decimals);
  return half === undefined ? mean : `${mean}\n±${fixed(half, decimals)}`;
}

function modelTable(rungs: readonly Rung[], { distance, height, angle }: Display): string {
  const cell = (gap: Disagreement | undefined, of: (si: number) => number): string => {
    if (gap === undefined) return '–';
    const shown = (value: number, decimals = 1): string => fixed(of(value), decimals);
    const spread = gap.sd === undefined ? '' : ` ±${shown(gap.sd)}`;
    return `${shown(gap.measured + gap.mean)} | ${shown(gap.measured)} (${signed(of(gap.mean), 1)}${spread})`;
  };
  return terminalTable(
    ['band', `carry (${distance.unit})`, `apex (${height.unit})`, `descent (${angle.unit})`],
    rungs.map(({ name, disagreement }) => [
      name,
      cell(disagreement.carry, distance.of),
      cell(disagreement.apex, height.of),
      cell(disagreement.descentAngle, angle.of),
    ]),
  );
}

function loftTable(rungs: readonly Rung[], display: Display): string {
  const { distance, angle } = display;
  const head = [
    'band',
    'dynamic\nloft now',
    'best\n(1 % window)',
    'nominal\nadvised',
    `carry\n${distance.unit}`,
    `total\n${distance.unit}`,
    'apex and descent',
  ];
  const rows = rungs.flatMap((rung) => {
    const { loft, model, name } = rung;
    if (loft === undefined) return [];
    const { optimum } = loft;
    const { low, high } = optimum.window.dynamicLoft;
    const end = (value: typeof low): string => (value === undefined ? '' : fixed(angle.of(value), 1));
    return [
      [
        name,
        `${fixed(angle.of(loft.delivered), 1)}°`,
        `${fixed(angle.of(optimum.dynamicLoft), 1)}° (${end(low)}–${end(high)})`,
        `${fixed(angle.of(loft.nominalBest), 1)}°`,
        `${fixed(distance.of(model.carry))} → ${fixed(distance.of(optimum.shot.carry))}`,
        `${fixed(distance.of(model.total))} → ${fixed(distance.of(optimum.shot.total))}`,
        windowSentence(loft.window, display),
      ],
    ];
  });
  return terminalTable(head, rows);
}

function stepTable({ steps }: Ladder, display: Display): string {
  const { speed, distance } = display;
  const causes = steps[0]?.parts.map(({ cause }) => cause) ?? [];
  const unit = perSpeedUnit(display);
  return terminalTable(
    [
      'step',
      `speed\n${speed.unit}`,
      `carry\n${distance.unit}`,
      `carry per speed\n${unit} (95 %)`,
      ...causes.map((cause) => `${cause}\n${distance.unit}`),
    ],
    steps.map((step) => [
      stepName(step),
      signed(speed.of(step.speedGain), 1),
      signed(distance.of(step.carryGain), 1),
      rateCell(step, display),
      ...step.parts.map(({ carry }) => signed(distance.of(carry.value), 1)),
    ]),
  );
}

function rateCell({ carryPerSpeed: { value, interval } }: Step, display: Display): string {
  const shown = (si: number): string => fixed(perSpeed(si, display), 2);
  return interval === undefined
    ? shown(value)
    : `${shown(value)} (${shown(interval.low)}–${shown(interval.high)})`;
}
