import type { Maximised } from 'fairflight';
import type { ShotTable } from 'fairflight/schema';
import type { Display } from '../lib/display.js';
import { ODD_RULE } from '../lib/odd.js';
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
import { orderedColours } from '../lib/palette.js';
import { readingSummary } from '../lib/reading.js';
import { sceneWords } from '../lib/scene-options.js';
import { COLUMNS, type Quantity, shownBy } from '../lib/shot-quantities.js';
import { capital, escaped, fixed, grouped, signed } from '../lib/text.js';
import { CALIBRATED_NOTE, calibrationSection } from './calibration-report.js';
import { carryChart } from './carry-chart.js';
import type { Ladder } from './ladder.js';
import { launchSpinMap } from './launch-spin-map.js';
import { oddLine } from './odd-shots.js';
import { planView } from './plan-view.js';
import type { Disagreement, Rung } from './rungs.js';
import { EXAGGERATION, sideView } from './side-view.js';
import type { Ranged } from './steps.js';
import {
  CAUTIONS,
  daysOf,
  fitSentence,
  leftSentence,
  limitsOf,
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
} from './words.js';

/** The ladder as one self-contained page. */
export function ladderPage(ladder: Ladder, table: ShotTable, file: string, display: Display): string {
  const { setup, rungs, calibration } = ladder;
  const colours = orderedColours(rungs.length);
  const loft = `${fixed(display.angle.of(setup.clubhead.staticLoft), 1)}° nominal`;
  const days = daysOf(table.shots);
  const about = `${file}${days === '' ? '' : `, ${days}`}: ${readingSummary(table)}. ${capital(sceneWords(setup.scene, display))}; ${setup.clubhead.name}, ${loft}; ${setup.hand}-handed player.`;
  const swatch = (i: number): string => colours[i] ?? '';
  return htmlPage({
    title: 'Speed ladder: one driver, several speeds',
    lead: `<p class="lead">${escaped(about)}</p>${comments(table)}`,
    sections: [
      answers(ladder, display),
      kept(
        'Carry against club speed',
        'The line is what the best loft would carry at the player’s own attack angle with a centred strike, by the model.',
        figure(carryChart(rungs, ladder.attainable, colours, display)),
      ),
      ...(calibration === undefined ? [] : [calibrationSection(calibration, table.shots, display)]),
      kept(
        'Side view',
        `One rung a speed, the fastest on top. Heights are drawn at ${EXAGGERATION} times the scale of distances.`,
        figure(
          sideView(rungs, colours, display),
          'The flight of the mean launch goes a little further than the mean of the flights: every spread costs carry.',
        ),
      ),
      kept('The bands', bandNote(setup.keepOutliers), bandTable(rungs, swatch, display)),
      ...(ladder.steps.length === 0
        ? []
        : [kept('What each step of speed brought', STEP_NOTE, stepTable(ladder, display))]),
      kept(
        'Is this driver right for each speed?',
        loftNote(setup.maximise),
        (rungs.some(({ loft }) => loft !== undefined) ? loftTable(rungs, swatch, display) : '') +
          list(rungs.map((rung) => loftSentence(rung, display))),
      ),
      kept(
        `Carry over launch and spin at ${escaped(ladder.map.rung.name)}`,
        `Carry in ${display.distance.unit} at the mean ball speed of this band, ${fixed(display.speed.of(ladder.map.rung.launch.ballSpeed), 1)} ${display.speed.unit}. Only pairs near the line can be delivered with this head; far from it the model has no data.`,
        figure(launchSpinMap(ladder, display)),
      ),
      kept(
        'How far to trust the model here',
        calibration === undefined ? MODEL_NOTE : `${MODEL_NOTE} ${CALIBRATED_NOTE}`,
        modelTable(rungs, swatch, display) + paragraphs(modelledSentences(rungs)),
      ),
      kept(
        'Where the balls landed',
        'Seen from above, the target to the right; both directions at one scale.',
        figure(planView(rungs, colours, display)) +
          paragraphs([scatterSentence(ladder, display), shotsSentence(ladder, display)]),
      ),
      section('Shots that stand apart', '', oddShots(ladder, table)),
      leftOut(table),
      section(
        'Limits and cautions',
        '',
        `${list(limitsOf(ladder))}<div class="card">${list(CAUTIONS)}</div>`,
      ),
    ],
  });
}

const STEP_NOTE =
  'Carry gained from one band to the next, and how it splits over its causes by the model (Shapley values; small print: 95 % intervals by bootstrap, stretched for few shots). Club speed and strike together are what ball speed brought; strike is the change of smash factor.';
const MODEL_NOTE =
  'Mean of the model’s flights of every measured launch, and what was measured; then the difference, model less measured, and its spread from shot to shot. Read the other figures with this in mind.';

function loftNote(maximise: Maximised): string {
  return `The loft that gives the greatest ${maximise}, for each speed and attack angle with this head. Nominal loft is advised as a change from the present one, since a player goes on delivering the head as now. Inside the windows (small print) no more than 1 % of the distance is lost.`;
}

/** Colour of a band. */
type Swatch = (band: number) => string;

function answers(ladder: Ladder, display: Display): string {
  const { rungs } = ladder;
  const sentences = [
    payingSentence(ladder, display),
    fitSentence(rungs, display),
    leftSentence(rungs, display),
    scatterSentence(ladder, display),
    widthSentence(ladder, display),
  ];
  return `<div class="card"><h3>In short</h3>${list(sentences.filter((each) => each !== ''))}</div>`;
}

function bandNote(keepOutliers: boolean): string {
  const outliers = keepOutliers
    ? 'Outliers count in the means.'
    : 'Outliers are left out of the means and listed below.';
  return `Mean of each band and its 95 % interval. ${outliers}`;
}

function bandTable(rungs: readonly Rung[], swatch: Swatch, display: Display): string {
  const measured = COLUMNS.filter(({ name }) => rungs.some((rung) => rung.estimates[name] !== undefined));
  const columns = [
    { head: 'band', text: true },
    ...measured.map((each) => ({ head: each.short, unit: shownBy(each, display).unit })),
  ];
  return htmlTable(
    columns,
    rungs.map((rung, i) => [
      bandCell(rung, swatch(i)),
      ...measured.map((each) => estimateCell(rung, each, display)),
    ]),
  );
}

function bandCell(rung: Rung, colour: string): string {
  return `<span class="swatch" style="background:${colour}"></span>${escaped(rung.name)}<span class="range">${shotsWords(rung)}</span>`;
}

function estimateCell(rung: Rung, quantity: Quantity, display: Display): string {
  const estimate = rung.estimates[quantity.name];
  if (estimate === undefined) return '–';
  const { of, decimals } = shownBy(quantity, display);
  const mean = decimals === 0 ? grouped(of(estimate.mean)) : fixed(of(estimate.mean), decimals);
  if (estimate.interval === undefined) return mean;
  const half = (of(estimate.interval.high) - of(estimate.interval.low)) / 2;
  return `${mean}<span class="range">±${fixed(half, decimals)}</span>`;
}

function modelTable(rungs: readonly Rung[], swatch: Swatch, { distance, height, angle }: Display): string {
  const cell = (gap: Disagreement | undefined, of: (si: number) => number): string => {
    if (gap === undefined) return '–';
    const measured = `measured ${fixed(of(gap.measured), 1)}`;
    const spread = gap.sd === undefined ? '' : `, spread ${fixed(of(gap.sd), 1)}`;
    const apart = `${signed(of(gap.mean), 1)}${spread}`;
    return `${fixed(of(gap.measured + gap.mean), 1)}<span class="range">${measured}; ${apart}</span>`;
  };
  return htmlTable(
    [
      { head: 'band', text: true },
      { head: 'carry', unit: distance.unit },
      { head: 'apex', unit: height.unit },
      { head: 'descent', unit: angle.unit },
    ],
    rungs.map((rung, i) => [
      bandCell(rung, swatch(i)),
      cell(rung.disagreement.carry, distance.of),
      cell(rung.disagreement.apex, height.of),
      cell(rung.disagreement.descentAngle, angle.of),
    ]),
  );
}

function loftTable(rungs: readonly Rung[], swatch: Swatch, display: Display): string {
  const { distance, angle, height } = display;
  const columns = [
    { head: 'band', text: true },
    { head: 'loft', text: true },
    { head: 'nominal best', unit: '°' },
    { head: 'dynamic best', unit: '°, window' },
    { head: 'carry', unit: distance.unit },
    { head: 'total', unit: distance.unit },
    { head: 'apex', unit: `${height.unit}, window` },
    { head: 'descent', unit: '°, window' },
    { head: 'flight', text: true },
  ];
  const rows = rungs.flatMap((rung, i) => {
    const { loft, model } = rung;
    if (loft === undefined) return [];
    const { optimum, window } = loft;
    const { low, high } = optimum.window.dynamicLoft;
    const range = [low, high]
      .map((value) => (value === undefined ? '' : fixed(angle.of(value), 1)))
      .join('–');
    const apex = rung.estimates.apex?.mean ?? model.flight.apex;
    const descent = rung.estimates.descentAngle?.mean ?? model.flight.descentAngle;
    const apexes = window?.apex.map((value) => fixed(height.of(value))).join('–') ?? '–';
    const descents = window?.descent.map((value) => fixed(angle.of(value))).join('–') ?? '–';
    return [
      [
        bandCell(rung, swatch(i)),
        loft.verdict,
        `${fixed(angle.of(loft.nominalBest), 1)}<span class="range">now ${fixed(angle.of(loft.nominalNow), 1)}</span>`,
        `${fixed(angle.of(optimum.dynamicLoft), 1)}<span class="range">${range}</span><span class="range">now ${fixed(angle.of(loft.delivered), 1)}</span>`,
        `${fixed(distance.of(optimum.shot.carry))}<span class="range">now ${fixed(distance.of(model.carry))}</span>`,
        `${fixed(distance.of(optimum.shot.total))}<span class="range">now ${fixed(distance.of(model.total))}</span>`,
        `${fixed(height.of(apex))}<span class="range">${apexes}</span>`,
        `${fixed(angle.of(descent))}<span class="range">${descents}</span>`,
        window?.verdict ?? '–',
      ],
    ];
  });
  return htmlTable(columns, rows);
}

function stepTable({ steps }: Ladder, display: Display): string {
  const { speed, distance } = display;
  const causes = steps[0]?.parts.map(({ cause }) => cause) ?? [];
  const columns = [
    { head: 'step', text: true },
    { head: 'speed', unit: speed.unit },
    { head: 'carry', unit: distance.unit },
    { head: 'carry per speed', unit: `${perSpeedUnit(display)}, 95 %` },
    ...causes.map((cause) => ({ head: cause, unit: distance.unit })),
  ];
  const ranged = (
    { value, interval }: Ranged,
    of: (si: number) => number,
    figureOf: (value: number, decimals: number) => string,
    decimals: number,
  ): string => {
    const figure = figureOf(of(value), decimals);
    if (interval === undefined) return figure;
    return `${figure}<span class="range">${fixed(of(interval.low), decimals)} to ${fixed(of(interval.high), decimals)}</span>`;
  };
  return htmlTable(
    columns,
    steps.map((step) => [
      escaped(stepName(step)),
      signed(speed.of(step.speedGain), 1),
      signed(distance.of(step.carryGain), 1),
      ranged(step.carryPerSpeed, (value) => perSpeed(value, display), fixed, 2),
      ...step.parts.map(({ carry }) => ranged(carry, distance.of, signed, 1)),
    ]),
  );
}

function oddShots(ladder: Ladder, { shots }: ShotTable): string {
  const items = [...ladder.odd.map(oddLine), ...unassignedLines(ladder, shots)];
  return `${items.length === 0 ? '<p>None.</p>' : list(items)}<p class="note">${ODD_RULE}</p>`;
}
