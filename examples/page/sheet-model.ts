import { median } from 'd3-array';
import { VERSION } from 'fairflight';
import type { RankedChange } from 'fairflight/session';
import { carryChart } from '../ladder/carry-chart.js';
import type { Ladder } from '../ladder/ladder.js';
import { planView } from '../ladder/plan-view.js';
import type { Rung } from '../ladder/rungs.js';
import { sideView } from '../ladder/side-view.js';
import { bandTable } from '../ladder/tables.js';
import type { Display } from '../lib/display.js';
import { orderedColoursOfScheme } from '../lib/palette.js';
import { sceneWords } from '../lib/scene-options.js';
import type { Sheet } from '../lib/sheet.js';
import { capital, fixed, signed } from '../lib/text.js';
import { speedChart } from '../log/charts.js';
import type { TrainingLog } from '../log/log.js';
import { type Comparison, comparisonTable } from './answers/compare.js';
import { thinned } from './answers/speeds.js';
import { drawnLog } from './answers/weeks.js';
import type { Messages } from './catalogue/messages.js';
import type { NamedGain } from './catalogue/sheet.js';
import type { ChartPart, SheetModel } from './protocol.js';
import type { Setup } from './setup.js';

/** Width in which pictures of the sheet are drawn; on paper they stand a fifth larger, to be read at arm's length [px]. */
const PICTURE = 300;
/** Rows and columns that fit the sheet. */
const MOST_ROWS = 7;
const SHEET_COLUMNS = ['clubSpeed', 'ballSpeed', 'launchAngle', 'spinRate', 'carry', 'side'];

/** What the sheet is made of. */
export interface SheetFacts {
  readonly setup: Setup;
  readonly ladder: Ladder;
  readonly comparison: Comparison | undefined;
  /** The log of a file of several days. */
  readonly log: TrainingLog | undefined;
  /** What was read, in one sentence. */
  readonly read: string;
}

/** The sheet: three sentences, two pictures, one table and a caution. */
export function sheetModel(facts: SheetFacts, words: Messages): SheetModel {
  const { setup, ladder, comparison, read } = facts;
  const { display } = setup;
  const home = homeRung(ladder.rungs);
  const [most, next] = adviceSentences(home, display, words, setup.isDriver);
  const target = facts.log?.report.next;
  const speedWords = (si: number): string => `${fixed(display.speed.of(si))} ${display.speed.unit}`;
  return {
    sentences: [
      whereSentence(facts, home, words),
      most,
      target === undefined
        ? next
        : words.sheet.nextTarget(speedWords(target.clubSpeed), speedWords(target.step)),
    ],
    pictures: picturesOf(facts, display, words),
    table:
      comparison === undefined
        ? shortTable(ladder, display, words)
        : trimmed(comparisonTable(comparison, display, words)),
    tableTitle: comparison === undefined ? words.sheet.tableBands : words.sheet.tableCompare,
    caution: words.sheet.caution,
    small: words.sheet.small({
      read,
      place: `${capital(sceneWords(setup.ladder.scene, display))}.`,
      version: VERSION,
    }),
  };
}

/** The speed with most shots; of several that nearest the middle speed. */
function homeRung(rungs: readonly Rung[]): Rung {
  const most = Math.max(...rungs.map(({ used }) => used));
  const middle = median(rungs, ({ clubSpeed }) => clubSpeed) ?? 0;
  const away = ({ clubSpeed }: Rung): number => Math.abs((clubSpeed ?? 0) - middle);
  // Bands found from the shots differ by a few: that makes none of them the usual one.
  const usual = rungs.filter(({ used }) => used >= 0.8 * most);
  return usual.reduce((kept, rung) => (away(rung) < away(kept) ? rung : kept));
}

function whereSentence({ setup, comparison }: SheetFacts, home: Rung, words: Messages): string {
  const { speed, distance } = setup.display;
  const { carry, side } = home.estimates;
  const length = (si: number): string => `${fixed(distance.of(si))} ${distance.unit}`;
  const change = comparison?.carry;
  return words.sheet.where({
    club: setup.club === '' ? words.sheet.club : setup.club,
    shots: words.sheet.shots(home.used),
    carry: carry && length(carry.mean),
    carryHalf: carry?.interval && length((carry.interval.high - carry.interval.low) / 2),
    speed: home.clubSpeed === undefined ? undefined : `${fixed(speed.of(home.clubSpeed))} ${speed.unit}`,
    side: side?.sd === undefined ? undefined : length(side.sd),
    change: change && {
      by: length(Math.abs(change.value)),
      more: change.value > 0,
      clear: change.low > 0 || change.high < 0,
    },
  });
}

function adviceSentences(
  { advice, clubSpeed, used }: Rung,
  display: Display,
  { sheet, answers }: Messages,
  isDriver: boolean,
): readonly [most: string, next: string] {
  if (advice === undefined || !isDriver) return [sheet.mostUnknown, sheet.nextMore];
  const { of, unit } = display.distance;
  const gainOf = (each: RankedChange): number => each[advice.maximise].value;
  const sorted = [...advice.changes].sort((a, b) => gainOf(b) - gainOf(a));
  const named = (each: RankedChange | undefined): NamedGain | undefined =>
    each && { change: changeWords(each, display, sheet), gain: `${signed(of(gainOf(each)))} ${unit}` };
  const [best, second] = sorted.filter(({ verdict }) => verdict === 'advised');
  const training = named(sorted.find(({ verdict }) => verdict === 'by-training'));
  if (best !== undefined) {
    const { low, high } = best[advice.maximise];
    const change = changeWords(best, display, sheet);
    return [
      sheet.most({
        change,
        gain: `${signed(of(gainOf(best)))} ${unit}`,
        low: signed(of(low)),
        high: signed(of(high)),
        speed:
          clubSpeed === undefined ? undefined : `${fixed(display.speed.of(clubSpeed))} ${display.speed.unit}`,
        second: named(second),
        training,
      }),
      sheet.nextTry(change),
    ];
  }
  if (sorted.some(({ verdict }) => verdict === 'too-few-shots')) return [sheet.mostTooFew, sheet.nextMore];
  const missing = [...new Set(advice.changes.flatMap(({ measure }) => measure))];
  if (missing.length > 0) {
    const readings = answers.join(missing.map((name) => sheet.readings[name]));
    return [sheet.mostMeasure(readings), sheet.nextMeasure(readings)];
  }
  const next = training === undefined ? sheet.nextMore : sheet.nextSpeed(training.change);
  return [sheet.mostUnclear(sheet.shots(used), training), next];
}

function changeWords(
  { change, step }: RankedChange,
  { angle, speed }: Display,
  { changes }: Messages['sheet'],
): string {
  const size = Math.abs(step);
  const shown = {
    loft: `${fixed(angle.of(size), 1)}°`,
    'attack-angle': `${fixed(angle.of(size), 1)}°`,
    strike: '',
    speed: `${fixed(speed.of(size))} ${speed.unit}`,
    scatter: `${fixed(100 * size)} %`,
  }[change];
  return changes[change](shown, step > 0);
}

function picturesOf(
  { ladder, log }: SheetFacts,
  display: Display,
  { answers }: Messages,
): readonly ChartPart[] {
  const rungs = thinned(ladder.rungs);
  const colours = orderedColoursOfScheme(ladder.rungs.length);
  const none: Sheet = { columns: [], rows: [] };
  const speeds = ladder.rungs.filter(({ clubSpeed }) => clubSpeed !== undefined).length;
  const first =
    log !== undefined
      ? { ...answers.charts.weeks, markup: speedChart(drawnLog(log), display, PICTURE) }
      : speeds > 1
        ? { ...answers.charts.carry, markup: carryChart(rungs, ladder.attainable, colours, display, PICTURE) }
        : { ...answers.charts.flights, markup: sideView(ladder.rungs, colours, display, PICTURE) };
  const second = { ...answers.charts.landing, markup: planView(rungs, colours, display, PICTURE) };
  return [first, second].map((picture): ChartPart => ({ kind: 'chart', ...picture, figures: none }));
}

/** Means of the bands, cut to what can be read at arm's length. */
function shortTable(ladder: Ladder, display: Display, words: Messages): Sheet {
  const { columns, rows } = bandTable(ladder.rungs, display);
  // Bands found from the shots are called by their club speed; it need not stand there twice.
  const bySpeed = ladder.rungs.every(({ name }) => name.endsWith(display.speed.unit));
  const wanted = new Set(
    SHEET_COLUMNS.filter((name) => !bySpeed || name !== 'clubSpeed').map((name) => SHORT_HEADS[name]),
  );
  const kept = columns.flatMap(({ head }, i) => (i === 0 || wanted.has(head) ? [i] : []));
  const heads = words.page.quantities;
  const named: Readonly<Record<string, string>> = Object.fromEntries(
    Object.entries(SHORT_HEADS).map(([name, head]) => [head, heads[name as 'carry']]),
  );
  return trimmed({
    columns: kept.map((i) => {
      const column = columns[i] ?? { head: '' };
      return { ...column, head: i === 0 ? words.answers.heads.band : (named[column.head] ?? column.head) };
    }),
    rows: rows.map((row) =>
      kept.map((i) => ({
        value: row[i]?.value ?? '',
        small: (row[i]?.small ?? []).filter((s) => s.startsWith('±')),
      })),
    ),
  });
}

const SHORT_HEADS: Readonly<Record<string, string>> = {
  clubSpeed: 'club',
  ballSpeed: 'ball',
  launchAngle: 'launch',
  spinRate: 'spin',
  carry: 'carry',
  side: 'side',
};

function trimmed({ columns, rows }: Sheet): Sheet {
  return { columns, rows: rows.slice(0, MOST_ROWS) };
}
