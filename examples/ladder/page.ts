import type { MaximisedDistance } from 'fairflight';
import type { ShotTable } from 'fairflight/schema';
import type { Display } from '../lib/display.js';
import { gainSentences } from '../lib/gains.js';
import { ODD_RULE } from '../lib/odd.js';
import {
  comments,
  figure,
  htmlPage,
  htmlSheet,
  kept,
  leftOut,
  list,
  paragraphs,
  section,
} from '../lib/page.js';
import { orderedColours } from '../lib/palette.js';
import { sceneWords } from '../lib/scene-options.js';
import { readingSummary } from '../lib/shot-table.js';
import { capital, escaped, fixed } from '../lib/text.js';
import { CALIBRATED_NOTE, calibrationSection } from './calibration-report.js';
import { carryChart } from './carry-chart.js';
import type { Ladder } from './ladder.js';
import { launchSpinMap } from './launch-spin-map.js';
import { oddLine } from './odd-shots.js';
import { planView } from './plan-view.js';
import { EXAGGERATION, sideView } from './side-view.js';
import { bandTable, changeTable, loftTable, modelTable, stepTable } from './tables.js';
import {
  adviceSentences,
  CAUTIONS,
  daysOf,
  fitSentence,
  leaveSentences,
  limitsOf,
  modelledSentences,
  payingSentence,
  scatterSentence,
  unassignedLines,
  widthSentence,
  worthSentence,
} from './words.js';

/** The ladder as one self-contained page. */
export function ladderPage(ladder: Ladder, table: ShotTable, file: string, display: Display): string {
  const { setup, rungs, calibration } = ladder;
  const colours = orderedColours(rungs.length);
  const loft = `${fixed(display.angle.of(setup.clubhead.staticLoft), 1)}° nominal`;
  const days = daysOf(table.shots);
  const about = `${file}${days === '' ? '' : `, ${days}`}: ${readingSummary(table)}. ${capital(sceneWords(setup.scene, display))}; ${setup.clubhead.name}, ${loft}; ${setup.hand}-handed player.`;
  const swatch = (i: number): string => colours[i] ?? '';
  const advised = colours.filter((_, i) => rungs[i]?.loft !== undefined);
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
      kept('The bands', bandNote(setup.keepOutliers), htmlSheet(bandTable(rungs, display), swatch)),
      ...(ladder.steps.length === 0
        ? []
        : [kept('What each step of speed brought', STEP_NOTE, htmlSheet(stepTable(ladder, display)))]),
      kept(
        'What could be changed at each speed?',
        loftNote(setup.maximise),
        (advised.length > 0 ? htmlSheet(loftTable(rungs, display), (i) => advised[i] ?? '') : '') +
          htmlSheet(changeTable(rungs, display)) +
          list([...leaveSentences(rungs), ...rungs.flatMap((rung) => adviceSentences(rung, display))]),
      ),
      kept(
        `Carry over launch and spin at ${escaped(ladder.map.rung.name)}`,
        `Carry in ${display.distance.unit} at the mean ball speed of this band, ${fixed(display.speed.of(ladder.map.rung.launch.ballSpeed), 1)} ${display.speed.unit}. Only pairs near the line can be delivered with this head; far from it the model has no data.`,
        figure(launchSpinMap(ladder, display)),
      ),
      kept(
        'How far to trust the model here',
        calibration === undefined ? MODEL_NOTE : `${MODEL_NOTE} ${CALIBRATED_NOTE}`,
        htmlSheet(modelTable(rungs, display), swatch) + paragraphs(modelledSentences(rungs)),
      ),
      kept(
        'Where the balls landed',
        'Seen from above, the target to the right; both directions at one scale.',
        figure(planView(rungs, colours, display)) +
          paragraphs([scatterSentence(ladder, display), ...gainSentences(ladder.toShow, display)]),
      ),
      section('Shots that stand apart', '', oddShots(ladder, table)),
      leftOut(table),
      section(
        'Limits and cautions',
        '',
        `${list(limitsOf(ladder, display))}<div class="card">${list(CAUTIONS)}</div>`,
      ),
    ],
  });
}

const STEP_NOTE =
  'Carry gained from one band to the next, and how it splits over its causes by the model (small print: 95 % intervals, which few shots make wide). Club speed and strike together are what ball speed brought; strike is the change of smash factor.';
const MODEL_NOTE =
  'Mean of the model’s flights of every measured launch, and what was measured; then the difference, model less measured, and its spread from shot to shot. Read the other figures with this in mind.';

function loftNote(maximise: MaximisedDistance): string {
  return `The loft that gives the greatest ${maximise}, for each speed and attack angle with this head. A change of loft is judged by no more than 2°, since a player goes on delivering the head as now; it is worth trying when it brings 3 yd and is clear of its interval. What would bring nothing has no row. Large figures are to aim for, small ones are now. Inside the windows no more than 1 % of the distance is lost.`;
}

function answers(ladder: Ladder, display: Display): string {
  const { rungs, setup } = ladder;
  const sentences = [
    payingSentence(ladder, display),
    fitSentence(rungs, setup.maximise),
    worthSentence(rungs, display),
    scatterSentence(ladder, display),
    widthSentence(ladder, display),
  ];
  return `<div class="card"><h3>In short</h3>${list(sentences.filter((each) => each !== ''))}</div>`;
}

function bandNote(keepOutliers: boolean): string {
  const outliers = keepOutliers
    ? 'All shots count in the means.'
    : 'Shots far apart are left out of the means and listed below.';
  return `Mean of each band and its 95 % interval. ${outliers}`;
}

function oddShots(ladder: Ladder, { shots }: ShotTable): string {
  const items = [...ladder.odd.map(oddLine), ...unassignedLines(ladder, shots)];
  return `${items.length === 0 ? '<p>None.</p>' : list(items)}<p class="note">${ODD_RULE}</p>`;
}
