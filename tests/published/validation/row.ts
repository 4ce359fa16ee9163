import { aerodynamicModels } from '../../../src/index.js';
import { type Conditions, requireKnown } from './conditions.js';
import { figureOf } from './figure.js';

/** A standards body or peer-reviewed, B named expert or patent, C other, D recalled or without a source. */
export type Grade = 'A' | 'B' | 'C' | 'D';

/** One figure from outside the project. */
export interface OutsideRow {
  /** Unique within its group. */
  readonly id: string;
  /** What is compared, for the means: rows of one quantity share it and its unit. */
  readonly quantity: string;
  /** The case in words. */
  readonly what: string;
  /** Unit of expected, tolerance and computed. */
  readonly unit: string;
  readonly grade: Grade;
  /** The figure; left out where the row cannot be compared. */
  readonly expected?: number;
  /** How far the computed figure may lie from it. */
  readonly tolerance?: number;
  /** Set where the source gives a bound: the error is how far the computed figure lies on the wrong side of it. */
  readonly bound?: 'at least' | 'at most';
  /** Where the figure comes from; left out where the group says it. */
  readonly source?: string;
  /** How far the figure can be trusted. */
  readonly confidence?: string;
  /** Where the tolerance comes from. */
  readonly limits?: string;
  /** What the library is asked for; left out where the row cannot be compared. */
  readonly measure?: string;
  /** Conditions that the source gives. */
  readonly given?: Conditions;
  /** Conditions that the source leaves open and this comparison takes. */
  readonly assumed?: Conditions;
  /** Set for a difference: what is subtracted has these conditions, and otherwise the same. */
  readonly less?: Conditions;
  /** The difference is a percentage of what is subtracted. */
  readonly relative?: boolean;
  /** Set where the computed figure is known to lie outside the tolerance, with what is known of the reason. */
  readonly misfit?: string;
  /** Set where the error is larger than before by more than a tenth of the tolerance, with the cause. */
  readonly worsened?: string;
  /** Set where a graded source contradicts the figure, with the reason. Counted on a line of its own. */
  readonly doubtful?: string;
  /** Set where the figure is about something that the model does not claim, with what. Counted on a line of its own. */
  readonly setAside?: string;
  /** Set where nothing can be computed, with the reason. */
  readonly notCompared?: string;
  /** True where the figure helped to set a constant of the model, so that it is no independent evidence. */
  readonly usedInFit?: boolean;
}

/** Rows of one subject. */
export interface Group {
  readonly title: string;
  /** Where every row comes from and how it is compared. */
  readonly about: string;
  /** What every row takes unless it says otherwise. */
  readonly assumed?: Conditions;
  readonly rows: readonly OutsideRow[];
  /** Set for a table of many figures: the conditions along and down the page. */
  readonly matrix?: { readonly along: keyof Conditions; readonly down: keyof Conditions };
}

/** A row with the library's figure. */
export interface ComparedRow extends OutsideRow {
  readonly group: string;
  readonly expected: number;
  readonly tolerance: number;
  readonly computed: number;
  /** Computed less expected; 0 on the right side of a bound. */
  readonly error: number;
  readonly within: boolean;
  /** The error with the figure computed before the change that the page reports. */
  readonly errorBefore?: number;
}

/** Figures computed before a change, by title of the group and id of the row. */
export type FiguresBefore = Readonly<Record<string, Readonly<Record<string, number>>>>;

/** Why nothing is computed for a row; undefined where something is. */
export function reasonNotCompared(group: Group, row: OutsideRow): string | undefined {
  const { model } = conditionsOf(group, row);
  if (model !== undefined && !Object.hasOwn(aerodynamicModels, model)) {
    return `Needs the coefficient model ${model}, which is not built in.`;
  }
  return row.notCompared;
}

/** What a row takes: of its group, assumed and given. */
export function conditionsOf(group: Group, row: OutsideRow): Conditions {
  return { ...group.assumed, ...row.assumed, ...row.given };
}

function errorOf({ bound }: OutsideRow, expected: number, computed: number): number {
  const error = computed - expected;
  if (bound === 'at least') return Math.min(0, error);
  return bound === 'at most' ? Math.max(0, error) : error;
}

/**
 * Computes the figure of every comparable row. Throws where a row lacks something, so that none is dropped in silence.
 * @param but - conditions that take the place of the row's own
 */
export function compare(group: Group, before: FiguresBefore = {}, but: Conditions = {}): ComparedRow[] {
  const rows = group.rows.filter((row) => reasonNotCompared(group, row) === undefined);
  return rows.map((row) => {
    const { expected, tolerance, measure } = row;
    if (expected === undefined || tolerance === undefined || measure === undefined) {
      throw new Error(`${group.title}: row ${row.id} has no expected value, tolerance or measure`);
    }
    const conditions = { ...conditionsOf(group, row), ...but };
    requireKnown({ ...conditions, ...row.less });
    const figure = figureOf(measure, conditions);
    const base = row.less === undefined ? 0 : figureOf(measure, { ...conditions, ...row.less });
    const computed = row.relative ? 100 * (figure / base - 1) : figure - base;
    const error = errorOf(row, expected, computed);
    const figureBefore = before[group.title]?.[row.id];
    return {
      ...row,
      group: group.title,
      expected,
      tolerance,
      computed,
      error,
      within: Math.abs(error) <= tolerance,
      ...(figureBefore !== undefined && { errorBefore: errorOf(row, expected, figureBefore) }),
    };
  });
}
