import type { BySpin, Clubhead, Delivery, Launch, Scene, Sensitivities, ShotOutcome } from 'fairflight';
import { axes, box, frame, type KeyEntry, key, line, mark, svg, text } from '../lib/chart.js';
import type { Display, Shown } from '../lib/display.js';
import { figure, htmlPage, htmlTable, kept, list, section } from '../lib/page.js';
import { BLUE, INK, MUTED, VERMILION } from '../lib/palette.js';
import { sceneWords } from '../lib/scene-options.js';
import { SPEED_CAUTION, screenText } from '../lib/screen.js';
import type { TableColumn } from '../lib/sheet.js';
import { terminalTable } from '../lib/table.js';
import { escaped, fixed, grouped, signed, wrapped } from '../lib/text.js';

/** Everything the report shows. */
export interface Worth {
  readonly from: Delivery | Launch;
  readonly clubhead: Clubhead;
  readonly scene: Scene;
  readonly found: Sensitivities;
}

interface Column {
  readonly head: string;
  readonly quantity: keyof ShotOutcome;
  readonly shown: (display: Display) => Shown;
  readonly decimals: number;
}
const COLUMNS: readonly Column[] = [
  { head: 'ball speed', quantity: 'ballSpeed', shown: (d) => d.speed, decimals: 1 },
  { head: 'launch', quantity: 'launchAngle', shown: (d) => d.angle, decimals: 1 },
  { head: 'spin', quantity: 'spinRate', shown: (d) => d.spin, decimals: 0 },
  { head: 'carry', quantity: 'carry', shown: (d) => d.distance, decimals: 1 },
  { head: 'total', quantity: 'total', shown: (d) => d.distance, decimals: 1 },
  { head: 'side', quantity: 'side', shown: (d) => d.distance, decimals: 1 },
  { head: 'apex', quantity: 'apex', shown: (d) => d.height, decimals: 1 },
  { head: 'descent', quantity: 'descentAngle', shown: (d) => d.angle, decimals: 1 },
];

const LIMITS: readonly string[] = [
  'Each row changes one thing and holds all else; a real swing changes several at once. A row and its opposite differ where the effect bends, as off-centre strikes do.',
  'A warmer ball is not modelled: the temperature row is the air alone. Published effects of altitude differ by a factor of two; the model lies at their lower end.',
  'Carry by the model is good to about ±3 yd, differences between like shots to much less. Spin from a delivery is known to ±13 % with a driver, to ±20 % with other clubs: the last two columns give what each step does to carry then. Total holds a run of ±25 %, and jumps where a bounce more or less is made.',
];
const CAUTIONS: readonly string[] = [
  'Speed work: warm up first, build up over weeks, rest between hard sessions, and stop at pain. With an injury, a heart condition, in youth or in doubt, ask a doctor, physiotherapist or qualified trainer before swinging at full effort.',
  'Before loft or club is changed, let a qualified fitter watch it hit; equipment rules and local rules apply.',
];

function startWords({ from, clubhead, scene }: Worth, display: Display): string {
  const angle = (value: number | undefined, decimals = 1): string =>
    `${signed(display.angle.of(value ?? 0), decimals)}°`;
  const shot =
    'clubSpeed' in from
      ? `${fixed(display.speed.of(from.clubSpeed), 1)} ${display.speed.unit} club speed, attack ${angle(from.attackAngle)}, path ${angle(from.clubPath)}, face ${angle(from.faceAngle)}, dynamic loft ${angle(from.dynamicLoft)}; ${clubhead.name}, ${from.hand ?? 'right'}-handed`
      : `${fixed(display.speed.of(from.ballSpeed), 1)} ${display.speed.unit} ball speed, launch ${angle(from.launchAngle)}, ${grouped(display.spin.of(from.spinRate))} rpm`;
  return `${shot}; ${sceneWords(scene, display)}.`;
}

/** Row by row: the shot itself, then every step either way. */
function table({ found }: Worth, display: Display): { columns: TableColumn[]; rows: string[][] } {
  const cells = (outcome: ShotOutcome, as: (value: number, decimals: number) => string): string[] =>
    COLUMNS.map(({ quantity, shown, decimals }) => as(shown(display).of(outcome[quantity]), decimals));
  const carries = (bySpin: BySpin | undefined, as: (value: number, decimals: number) => string): string[] =>
    bySpin === undefined
      ? []
      : [bySpin.less, bySpin.more].map(({ carry }) => as(display.distance.of(carry), 1));
  const unit = display.distance.unit;
  return {
    columns: [
      { head: 'change', text: true },
      ...COLUMNS.map(({ head, shown }) => ({ head, unit: shown(display).unit })),
      ...(found.bySpin ? ['less spin', 'more spin'].map((head) => ({ head, unit })) : []),
    ],
    rows: [
      [
        'the shot as it is',
        ...cells(found.base, (value, d) => (d === 0 ? grouped(value) : fixed(value, d))),
        ...carries(found.bySpin, fixed),
      ],
      ...found.rows.map(({ label, difference, bySpin }) => [
        label,
        ...cells(difference, signed),
        ...carries(bySpin, signed),
      ]),
    ],
  };
}

/** Carry gained or lost by each step and by its opposite. */
function carryChart({ found }: Worth, display: Display): string {
  const { distance } = display;
  const rows = found.rows.map(({ label, difference, opposite }) => ({
    label,
    up: distance.of(difference.carry),
    down: distance.of(opposite.carry),
  }));
  const widest = Math.max(1, ...rows.flatMap(({ up, down }) => [Math.abs(up), Math.abs(down)])) * 1.12;
  const f = frame({
    width: 860,
    height: 60 + 30 * rows.length,
    margin: { left: 235 },
    x: {
      label: `change of carry (${distance.unit})`,
      domain: [-widest, widest],
      ticks: 9,
      format: (v) => signed(v),
    },
    y: { label: '', domain: [rows.length - 0.5, -0.5], ticks: 0 },
  });
  const bars = rows.flatMap(({ label, up, down }, i) => [
    text(f, [-widest, i], label, { anchor: 'end', dx: -8, dy: 4 }),
    box(f, [0, i - 0.26], [up, i + 0.26], up >= 0 ? BLUE : VERMILION, 0.85),
    mark(f, [down, i], 'ring', MUTED, 3.6, `the opposite step: ${signed(down, 1)}`),
    text(f, [Math.max(up, 0), i], signed(up, 1), {
      dx: down > up && down > 0 && down - up < 0.1 * widest ? 14 : 6,
      dy: 4,
      size: 11,
    }),
  ]);
  const zero = line(
    f,
    [
      [0, -0.5],
      [0, rows.length - 0.5],
    ],
    { colour: INK, width: 1.2 },
  );
  const entries: KeyEntry[] = [
    { name: 'carry gained', colour: BLUE, mark: 'patch' },
    { name: 'carry lost', colour: VERMILION, mark: 'patch' },
    { name: 'the opposite step', colour: MUTED, mark: 'ring' },
  ];
  return key(entries) + svg(f, 'What each step does to carry', axes(f), ...bars, zero);
}

/** The table as one self-contained page. */
export function worthPage(worth: Worth, display: Display): string {
  const { columns, rows } = table(worth, display);
  return htmlPage({
    title: 'What is it worth?',
    lead: `<p class="lead">${escaped(startWords(worth, display))}</p>`,
    sections: [
      kept(
        'Carry',
        'What each step does to carry, and (ring) what the opposite step does.',
        figure(carryChart(worth, display)),
      ),
      section(
        'Everything',
        'First the shot, then how it changes. Side: + is right of the target.',
        htmlTable(
          columns,
          rows.map((row) => row.map(escaped)),
        ),
      ),
      kept('Limits and cautions', '', `${list(LIMITS)}<div class="card">${list(CAUTIONS)}</div>`),
    ],
  });
}

/** The start and the table, for one screen. */
export function screenReport(worth: Worth, display: Display): string {
  const { columns, rows } = table(worth, display);
  const printed = terminalTable(
    columns.map(({ head, unit }) => (unit === undefined ? head : `${head}\n${unit}`)),
    rows,
  );
  return screenText([startWords(worth, display), '', printed, '', SPEED_CAUTION]);
}

/** The same with limits and cautions. */
export function terminalReport(worth: Worth, display: Display): string {
  return `${screenReport(worth, display)}\n${[...LIMITS, ...CAUTIONS].map((each) => `${wrapped(each)}\n`).join('')}`;
}
