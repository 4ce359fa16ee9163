import { yards } from 'fairflight/units';
import { carryChart } from '../../ladder/carry-chart.js';
import type { Ladder } from '../../ladder/ladder.js';
import { launchSpinMap } from '../../ladder/launch-spin-map.js';
import { oddLine } from '../../ladder/odd-shots.js';
import { planView } from '../../ladder/plan-view.js';
import type { Rung } from '../../ladder/rungs.js';
import { sideView } from '../../ladder/side-view.js';
import { bandTable, changeTable, loftTable, modelTable, stepTable } from '../../ladder/tables.js';
import {
  adviceSentences,
  CAUTIONS,
  fitSentence,
  leaveSentences,
  limitsOf,
  modelledSentences,
  payingSentence,
  scatterSentence,
  widthSentence,
  worthSentence,
} from '../../ladder/words.js';
import type { Display } from '../../lib/display.js';
import { gainSentences } from '../../lib/gains.js';
import { orderedColoursOfScheme } from '../../lib/palette.js';
import type { Sheet } from '../../lib/sheet.js';
import { COLUMNS, shownBy } from '../../lib/shot-quantities.js';
import { fixed, grouped } from '../../lib/text.js';
import type { Answer, Part } from '../protocol.js';
import { MOST_DRAWN, spreadOver } from '../sample.js';
import { chart, type Drawing, notes, table } from './parts.js';

/** Lines of shots that stand apart; more are only counted. */
const MOST_ODD = 30;

/** How far at which speed, what the steps brought and what would help, all from one ladder. */
export function ladderAnswers(
  ladder: Ladder,
  display: Display,
  isDriver: boolean,
  drawing: Drawing,
): readonly Answer[] {
  return [
    speedsAnswer(ladder, display, drawing),
    ...(ladder.steps.length === 0 ? [] : [stepsAnswer(ladder, display, drawing)]),
    ...(isDriver ? [changesAnswer(ladder, display, drawing)] : []),
  ];
}

function speedsAnswer(ladder: Ladder, display: Display, drawing: Drawing): Answer {
  const { words, width } = drawing;
  const { answers } = words;
  const drawn = thinned(ladder.rungs);
  const colours = orderedColoursOfScheme(ladder.rungs.length);
  const all = shotsIn(ladder.rungs);
  const shown = shotsIn(drawn);
  const thin = shown < all ? answers.drawn(grouped(shown), grouped(all)) : '';
  const hasSpeed = ladder.rungs.some(({ clubSpeed }) => clubSpeed !== undefined);
  const odd = ladder.odd.map(oddLine);
  const parts: Part[] = [
    ...(hasSpeed
      ? [
          chart(
            'carry',
            carryChart(drawn, ladder.attainable, colours, display, width),
            attainableFigures(ladder, display, drawing),
            drawing,
            thin,
          ),
        ]
      : []),
    table('bands', bandTable(ladder.rungs, display), drawing),
    chart(
      'flights',
      sideView(ladder.rungs, colours, display, width),
      flightFigures(ladder, display, drawing),
      drawing,
    ),
    chart(
      'landing',
      planView(drawn, colours, display, width),
      landingFigures(ladder, display, drawing),
      drawing,
      thin,
    ),
    table('model', modelTable(ladder.rungs, display), drawing),
    ...notes(answers.oddTitle, [
      ...odd.slice(0, MOST_ODD),
      ...(odd.length > MOST_ODD ? [words.page.more(odd.length - MOST_ODD)] : []),
    ]),
    ...notes(answers.limits, [
      ...gainSentences(ladder.toShow, display),
      ...limitsOf(ladder, display),
      ...modelledSentences(ladder.rungs),
      answers.modelMethod,
    ]),
  ];
  const says = [scatterSentence(ladder, display), widthSentence(ladder, display)];
  return { id: 'speeds', says: said([rangeSentence(ladder, display, drawing), ...says]), parts };
}

function stepsAnswer(ladder: Ladder, display: Display, drawing: Drawing): Answer {
  const { answers } = drawing.words;
  return {
    id: 'steps',
    says: [payingSentence(ladder, display)],
    parts: [
      table('steps', stepTable(ladder, display), drawing),
      ...notes(answers.method, [answers.stepMethod]),
    ],
  };
}

function changesAnswer(ladder: Ladder, display: Display, drawing: Drawing): Answer {
  const { answers } = drawing.words;
  const { rungs, setup } = ladder;
  const lofts = loftTable(rungs, display);
  return {
    id: 'changes',
    says: said([worthSentence(rungs, display), fitSentence(rungs, setup.maximise)]),
    parts: [
      table('changes', changeTable(rungs, display), drawing),
      ...(lofts.rows.length === 0 ? [] : [table('loft', lofts, drawing)]),
      chart(
        'map',
        launchSpinMap(ladderDrawn(ladder), display, drawing.width),
        mapFigures(ladder, display, drawing),
        drawing,
      ),
      ...notes(answers.limits, [
        ...leaveSentences(rungs),
        ...rungs.flatMap((rung) => adviceSentences(rung, display)),
      ]),
      ...notes(answers.method, [
        answers.changeMethod(
          `${fixed(display.distance.of(rungs[0]?.advice?.worth ?? yards(3)), 1)} ${display.distance.unit}`,
        ),
      ]),
      ...notes(answers.cautions, CAUTIONS),
    ],
  };
}

/** How far the slowest and the fastest go. */
function rangeSentence({ rungs }: Ladder, { speed, distance }: Display, { words }: Drawing): string {
  const known = rungs.flatMap(({ clubSpeed, estimates: { carry } }) =>
    carry === undefined
      ? []
      : [
          {
            speed: clubSpeed && `${fixed(speed.of(clubSpeed))} ${speed.unit}`,
            carry: `${fixed(distance.of(carry.mean))} ${distance.unit}`,
          },
        ],
  );
  const [first, last] = [known[0], known.at(-1)];
  if (first === undefined || last === undefined) return '';
  if (first === last || first.speed === undefined || last.speed === undefined)
    return words.answers.oneSpeed(first);
  return words.answers.fromTo({ slow: first.speed, fast: last.speed, near: first.carry, far: last.carry });
}

const said = (texts: readonly string[]): readonly string[] => texts.filter((each) => each !== '');

function shotsIn(rungs: readonly Rung[]): number {
  return rungs.reduce((sum, { shots }) => sum + shots.length, 0);
}

/** The rungs with only as many shots as a picture can show. */
export function thinned(rungs: readonly Rung[]): readonly Rung[] {
  const share = Math.min(1, MOST_DRAWN / Math.max(1, shotsIn(rungs)));
  return rungs.map((rung) => ({
    ...rung,
    shots: spreadOver(rung.shots, Math.max(12, share * rung.shots.length)),
  }));
}

function ladderDrawn(ladder: Ladder): Ladder {
  const [rung = ladder.map.rung] = thinned([ladder.map.rung]);
  return { ...ladder, map: { ...ladder.map, rung } };
}

function attainableFigures({ attainable, rungs }: Ladder, display: Display, { words }: Drawing): Sheet {
  const { speed, distance, angle } = display;
  const { heads } = words.answers;
  return {
    columns: [
      { head: heads.speed, unit: speed.unit },
      { head: heads.carry, unit: distance.unit },
      { head: heads.attack, unit: angle.unit },
      { head: heads.attainable, unit: distance.unit },
    ],
    rows: [
      ...rungs.flatMap(({ clubSpeed, estimates, attackAngle, loft }) =>
        clubSpeed === undefined
          ? []
          : [
              [
                { value: fixed(speed.of(clubSpeed), 1) },
                { value: fixed(estimates.carry && distance.of(estimates.carry.mean), 1) },
                { value: fixed(attackAngle && angle.of(attackAngle), 1) },
                { value: fixed(loft && distance.of(loft.optimum.shot.carry), 1) },
              ],
            ],
      ),
      ...attainable.map(({ clubSpeed, carry, attackAngle }) => [
        { value: fixed(speed.of(clubSpeed), 1) },
        { value: '–' },
        { value: fixed(angle.of(attackAngle), 1) },
        { value: fixed(distance.of(carry), 1) },
      ]),
    ],
  };
}

function flightFigures({ rungs }: Ladder, { distance, height, angle }: Display, { words }: Drawing): Sheet {
  const { heads } = words.answers;
  const { quantities } = words.page;
  return {
    columns: [
      { head: heads.band, text: true },
      { head: quantities.carry, unit: distance.unit },
      { head: quantities.total, unit: distance.unit },
      { head: quantities.apex, unit: height.unit },
      { head: quantities.descentAngle, unit: angle.unit },
      { head: heads.best, unit: distance.unit },
    ],
    rows: rungs.map(({ name, model, loft }) => [
      { value: name },
      { value: fixed(distance.of(model.carry)) },
      { value: fixed(distance.of(model.total)) },
      { value: fixed(height.of(model.flight.apex)) },
      { value: fixed(angle.of(model.flight.descentAngle), 1) },
      { value: fixed(loft && distance.of(loft.optimum.shot.carry)) },
    ]),
  };
}

function landingFigures({ rungs }: Ladder, { distance }: Display, { words }: Drawing): Sheet {
  const { heads } = words.answers;
  return {
    columns: [
      { head: heads.band, text: true },
      { head: heads.landed },
      { head: heads.carry, unit: distance.unit },
      { head: heads.scatterAlong, unit: distance.unit },
      { head: heads.scatterSide, unit: distance.unit },
    ],
    rows: rungs.map(({ name, shots, estimates: { carry, side } }) => [
      { value: name },
      { value: String(shots.length) },
      { value: fixed(carry && distance.of(carry.mean)) },
      { value: fixed(carry?.sd === undefined ? undefined : distance.of(carry.sd), 1) },
      { value: fixed(side?.sd === undefined ? undefined : distance.of(side.sd), 1) },
    ]),
  };
}

function mapFigures({ map: { rung }, deliverable }: Ladder, display: Display, { words }: Drawing): Sheet {
  const { heads } = words.answers;
  const launch = COLUMNS.find(({ name }) => name === 'launchAngle');
  const unit = launch === undefined ? '' : shownBy(launch, display).unit;
  return {
    columns: [
      { head: heads.shot, text: true },
      { head: heads.launch, unit },
      { head: heads.spin, unit: display.spin.unit },
    ],
    rows: [
      ...spreadOver(rung.shots, 20).map((shot) => ({ name: String(shot.index + 1), launch: shot.launch })),
      ...(rung.loft ? [{ name: heads.best, launch: rung.loft.optimum.shot.launch }] : []),
      ...spreadOver(deliverable, 6).map((each) => ({ name: heads.within, launch: each })),
    ].map(({ name, launch: at }) => [
      { value: name },
      { value: fixed(display.angle.of(at.launchAngle), 1) },
      { value: grouped(display.spin.of(at.spinRate)) },
    ]),
  };
}
