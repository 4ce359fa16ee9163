import { figureOf } from './figure.js';
import { fixed, show, table } from './markdown.js';
import { type ComparedRow, compare, conditionsOf, type Group, type OutsideRow } from './row.js';
import { counted } from './score.js';

/** The bounce models compared, the default first. */
const MODELS = ['biber-2023', 'penner-2002'] as const;

/** A row by one bounce model. */
export interface BounceRow extends ComparedRow {
  readonly model: (typeof MODELS)[number];
  /** The run in a figure of run or total [yd]; left out for others. */
  readonly run?: number;
}

const BY_MEASURE =
  /^(total|side|run|speed after the bounce|height of the first hop|best .*|descent at the best loft)$/;

/** True for a row whose figure leans on the bounce of a fairway. */
function leansOnBounce(group: Group, row: OutsideRow): boolean {
  if (!BY_MEASURE.test(row.measure ?? '')) return false;
  return !/best/.test(row.measure ?? '') || conditionsOf(group, row).objective === 'total';
}

/** Every row that leans on the bounce, also those not used for either model, by both. */
export function byBounceModel(groups: readonly Group[]): BounceRow[] {
  return groups.flatMap((group) => {
    const some = { ...group, rows: group.rows.filter((row) => leansOnBounce(group, row)) };
    return MODELS.flatMap((model) =>
      compare(some, {}, { bounce: model }).map((row) => ({ ...row, model, ...runIn(group, row, model) })),
    );
  });
}

function runIn(group: Group, row: ComparedRow, bounce: string): { readonly run?: number } {
  const whole = row.less === undefined && (row.measure === 'run' || row.measure === 'total');
  return whole ? { run: figureOf('run', { ...conditionsOf(group, row), bounce }) } : {};
}

interface Tally {
  readonly rows: number;
  readonly within: number;
  /** Root mean square of error over tolerance. */
  readonly rms: number;
}

/** What a model leaves over: of every row that counts, and of the run in those of run and total. */
export interface LeftOver {
  readonly all: Tally;
  /** Of rows that set a constant of neither model. */
  readonly unused: Tally;
  /** Rows of run and total, and the rms of their error over the run. */
  readonly runs: number;
  readonly rmsOfRun: number;
}

function rmsOf(values: readonly number[]): number {
  return Math.sqrt(values.reduce((sum, x) => sum + x * x, 0) / values.length);
}

function tally(rows: readonly BounceRow[]): Tally {
  return {
    rows: rows.length,
    within: rows.filter(({ within }) => within).length,
    rms: rmsOf(rows.map(({ error, tolerance }) => error / tolerance)),
  };
}

/** What a model leaves over. */
export function leftOver(all: readonly BounceRow[], model: BounceRow['model']): LeftOver {
  const kept = new Set<ComparedRow>(counted(all));
  const rows = all.filter((row) => kept.has(row) && row.model === model);
  const runs = rows.filter(({ run }) => run !== undefined);
  return {
    all: tally(rows),
    unused: tally(rows.filter(({ usedInFit }) => !usedInFit)),
    runs: runs.length,
    rmsOfRun: rmsOf(runs.map(({ error, run = Number.NaN }) => error / run)),
  };
}

/** The comparison as a section of the page. */
export function bounceSection(groups: readonly Group[]): string[] {
  const all = byBounceModel(groups);
  const lines = all
    .filter(({ model }) => model === MODELS[0])
    .map((row) => {
      const other = all.find(
        (each) => each.model !== row.model && each.id === row.id && each.group === row.group,
      );
      const cell = (error = Number.NaN): string => show(error, row.tolerance);
      const mark =
        row.doubtful !== undefined ? ', doubtful' : row.setAside !== undefined ? ', set aside' : '';
      return [
        `${row.group}: ${row.what}`,
        `${row.quantity}${mark}`,
        `${show(row.expected, row.tolerance)} ± ${show(row.tolerance, row.tolerance)} ${row.unit}`.trim(),
        cell(row.error),
        cell(other?.error),
      ];
    });
  const summary = MODELS.map((model) => {
    const left = leftOver(all, model);
    const words = ({ rows, within, rms }: Tally): string[] => [fixed(rms, 2), `${within} of ${rows}`];
    return [
      `\`${model}\``,
      ...words(left.all),
      ...words(left.unused),
      `${fixed(100 * left.rmsOfRun, 0)} % of ${left.runs} runs`,
    ];
  });
  return [
    '## Two bounce models',
    'Every row that leans on the bounce of a fairway, also those that neither model was made from, by the presets of either ' +
      'model: the measured bounce of Biber et al. 2023, which is the default, and that of Penner 2002. On the rows used for ' +
      'neither the two are level: the measured bounce gains in totals, runs and their changes, and loses where a best loft for ' +
      'total is asked, since it lets low flights run. It is the default for its totals and runs, and because it was measured. ' +
      'Twice the rms of error over run, of the rows of run and total, is the band of a run (`run.band`).',
    table(
      [
        'model',
        'rms of error over tolerance',
        'within',
        'rows used for neither',
        'within',
        'rms of error over run',
      ],
      'lrrrrr',
      summary,
    ),
    table(
      ['case', 'quantity', 'from outside', 'error, `biber-2023`', 'error, `penner-2002`'],
      'llrrr',
      lines,
    ),
  ];
}
