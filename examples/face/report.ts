import { adviceLines, strikeLossLines } from '../lib/advice.js';
import type { Display } from '../lib/display.js';
import { comments, figure, htmlPage, htmlTable, kept, list, section } from '../lib/page.js';
import { sceneWords } from '../lib/scene-options.js';
import { SPEED_CAUTION, said, screenText } from '../lib/screen.js';
import type { TableColumn } from '../lib/sheet.js';
import { terminalTable } from '../lib/table.js';
import { capital, escaped, fixed, grouped, signed, wrapped } from '../lib/text.js';
import { faceChart } from './chart.js';
import type { FaceStudy } from './study.js';
import {
  answers,
  CAUTIONS,
  hasPattern,
  LIMITS,
  movesOf,
  moveWords,
  sideWords,
  VERDICT_WORDS,
} from './words.js';

/** What was read, for the head of the report. */
export interface About {
  readonly source: string;
  readonly comments: readonly string[];
  readonly notes: readonly string[];
}

interface Table {
  readonly columns: readonly TableColumn[];
  readonly rows: readonly (readonly string[])[];
}

function deliveryWords({ delivery, clubhead, hand, scene }: FaceStudy, display: Display): string {
  const angle = (value: number | undefined): string => `${signed(display.angle.of(value ?? 0), 1)}°`;
  const { clubSpeed, attackAngle, clubPath, faceAngle, dynamicLoft } = delivery;
  return `${fixed(display.speed.of(clubSpeed), 1)} ${display.speed.unit}, attack ${angle(attackAngle)}, path ${angle(clubPath)}, face ${angle(faceAngle)}, dynamic loft ${fixed(display.angle.of(dynamicLoft), 1)}°; ${clubhead.name}, ${hand}-handed; ${sceneWords(scene, display)}`;
}

function offCentreTable({ offCentre, map }: FaceStudy, display: Display): Table {
  return {
    columns: [
      { head: 'struck', text: true },
      { head: 'ball speed', unit: display.speed.unit },
      { head: 'launch', unit: '°' },
      { head: 'start', unit: '°, + right' },
      { head: 'backspin', unit: 'rpm' },
      { head: 'sidespin', unit: 'rpm, + right' },
      { head: 'carry', unit: display.distance.unit },
      { head: 'lost', unit: display.distance.unit },
      { head: 'finishes', unit: `${display.distance.unit} off line` },
    ],
    rows: offCentre.map(({ name, shot }) => [
      name,
      fixed(display.speed.of(shot.launch.ballSpeed), 1),
      fixed(display.angle.of(shot.launch.launchAngle), 1),
      signed(display.angle.of(shot.launch.launchDirection ?? 0), 1),
      grouped(display.spin.of(shot.strike?.backspin ?? 0)),
      signed(display.spin.of(shot.strike?.sidespin ?? 0)),
      fixed(display.distance.of(shot.carry)),
      fixed(display.distance.of(map.longest.carry - shot.carry), 1),
      sideWords(shot.side, display),
    ]),
  };
}

function strikeTable({ strikes }: FaceStudy, display: Display): Table {
  const offset = (value: number, variance: number | undefined): string =>
    variance === undefined
      ? signed(1000 * value)
      : `${signed(1000 * value)} ± ${fixed(1000 * Math.sqrt(variance))}`;
  return {
    columns: [
      { head: 'shot', text: true },
      { head: 'toe', unit: 'mm, + toe' },
      { head: 'high', unit: 'mm, + high' },
      { head: 'smash factor' },
      { head: 'share of best', unit: '%' },
      { head: 'lost', unit: display.distance.unit },
      { head: 'of the ball speed the head can give', text: true },
    ],
    rows: strikes.map(({ shot, offset: at, located, quality, carryLost }) => [
      String(shot),
      offset(at.toe, located?.covariance[0][0]),
      offset(at.high, located?.covariance[1][1]),
      fixed(quality?.smashFactor, 2),
      fixed(quality === undefined ? undefined : 100 * quality.share),
      fixed(display.distance.of(carryLost), 1),
      quality?.verdict === undefined ? '–' : VERDICT_WORDS[quality.verdict],
    ]),
  };
}

const OFF_CENTRE_NOTE =
  'The usual delivery, struck elsewhere; lost against the place where it carries furthest. Bulge starts a toe strike outward and gear effect brings it back, so it costs carry more than line.';
const STRIKE_NOTE =
  'Where each shot met the face, with one standard deviation where it was worked out from the readings; smash factor against what a centred strike with this head gives at the same spin loft, so that little loft does not pass for a good strike. Lost is what the usual delivery loses there against the place where it carries furthest. The share is good to about 2 %.';
const MAP_NOTE =
  'Seen from behind the club, looking at the target. Shades: carry lost against the best place. Small curves: the flight from above, target up, sideways much stretched; the words say how far off the line the ball ends.';

/** The map as one self-contained page. */
export function facePage(study: FaceStudy, about: About, display: Display): string {
  const { report, unplaced, strikes } = study;
  const table = ({ columns, rows }: Table): string =>
    htmlTable(
      columns,
      rows.map((row) => row.map(escaped)),
    );
  return htmlPage({
    title: 'Face map: where it was struck, and what that costs',
    lead: `<p class="lead">${escaped(`${about.source} Usual delivery: ${deliveryWords(study, display)}.`)}</p>${comments(about)}`,
    sections: [
      `<div class="card"><h3>In short</h3>${list(answers(study, display))}</div>`,
      kept('The face', MAP_NOTE, figure(faceChart(study, display))),
      ...(report === undefined
        ? []
        : [
            kept(
              'What a change would bring',
              'Each move alone, on these strikes, with everything else as it is; the most gain first.',
              list(changeLines(study, display)),
            ),
          ]),
      kept('What a strike off centre does', OFF_CENTRE_NOTE, table(offCentreTable(study, display))),
      ...(strikes.length === 0
        ? []
        : [section('The strikes', STRIKE_NOTE, table(strikeTable(study, display)))]),
      ...(unplaced.length === 0
        ? []
        : [
            section(
              'Shots without a place on the map',
              '',
              list(unplaced.map(({ shot, why }) => `Shot ${shot}: ${why}`)),
            ),
          ]),
      ...(about.notes.length === 0 ? [] : [section('Notes on the file', '', list(about.notes))]),
      kept('Limits and cautions', '', `${list(LIMITS)}<div class="card">${list(CAUTIONS)}</div>`),
    ],
  });
}

/** What the readings say could be changed, and moves of the pattern. */
function changeLines(study: FaceStudy, display: Display): readonly string[] {
  const moves = (hasPattern(study) ? movesOf(study) : []).map(
    (move) => `${capital(moveWords(move, display))}; ${straighter(move.straighter, display)}.`,
  );
  const { advice } = study;
  if (advice === undefined) return moves;
  return [...adviceLines(advice, display), ...strikeLossLines(advice, display), ...moves];
}

function straighter(value: number, { distance }: Display): string {
  const text = fixed(Math.abs(distance.of(value)), 1);
  if (Number(text) === 0) return 'as straight as now';
  return `${text} ${distance.unit} ${value > 0 ? 'nearer to' : 'farther from'} the line`;
}

function printed({ columns, rows }: Table): string {
  return terminalTable(
    columns.map(({ head, unit }) => (unit === undefined ? head : `${head}\n${unit}`)),
    rows,
  );
}

/** What matters most, for one screen. */
export function screenReport(study: FaceStudy, about: About, display: Display): string {
  return screenText([
    ...about.comments.slice(0, 1),
    about.source,
    '',
    ...said(answers(study, display)),
    '',
    'WHAT A STRIKE OFF CENTRE DOES',
    printed(offCentreTable(study, display)),
    '',
    SPEED_CAUTION,
  ]);
}

/** The map as text for the terminal. */
export function terminalReport(study: FaceStudy, about: About, display: Display): string {
  const blocks = [
    ...about.comments,
    about.source,
    ...about.notes.map((note) => `  note: ${note}`),
    `Usual delivery: ${deliveryWords(study, display)}.`,
    '',
    'IN SHORT',
    ...answers(study, display).map((each) => `  ${each}`),
    ...(study.report === undefined
      ? []
      : ['', 'WHAT A CHANGE WOULD BRING', ...changeLines(study, display).map((line) => `  ${line}`)]),
    '',
    'WHAT A STRIKE OFF CENTRE DOES',
    printed(offCentreTable(study, display)),
    ...(study.strikes.length === 0 ? [] : ['', 'THE STRIKES', printed(strikeTable(study, display))]),
    ...(study.unplaced.length === 0
      ? []
      : [
          '',
          'WITHOUT A PLACE ON THE MAP',
          ...study.unplaced.map(({ shot, why }) => `  Shot ${shot}: ${why}`),
        ]),
    '',
    ...LIMITS.map((each) => `  ${each}`),
    ...CAUTIONS.map((each) => `  ${each}`),
  ];
  return `${blocks.flatMap((block) => (block.includes('─') ? [block] : [wrapped(block)])).join('\n')}\n`;
}
