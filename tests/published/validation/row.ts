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
  /** The figure; left out where the row cannot be compared. */
  readonly expected?: number;
  /** How far the computed figure may lie from it. */
  readonly tolerance?: number;
  /** Where the figure comes from; left out where the group says it. */
  readonly source?: string;
  /** How far the figure can be trusted. */
  readonly confidence?: string;
  /** Where the tolerance comes from. */
  readonly limits?: string;
  /** Set where the computed figure is known to lie outside the tolerance, with what is known of the reason. */
  readonly misfit?: string;
  /** Set where nothing can be computed, with the reason. */
  readonly notCompared?: string;
  /** True where the figure helped to set a constant of the model, so that it is no independent evidence. */
  readonly usedInFit?: boolean;
}

/** Rows of one subject with the figures that can be computed for them. */
export interface Group {
  readonly title: string;
  /** Where every row comes from and how it is compared. */
  readonly about: string;
  readonly rows: readonly OutsideRow[];
  /** For each comparable row by id, the library's figure in the row's unit. */
  readonly compute: Readonly<Record<string, () => number>>;
}

/** A row with the library's figure. */
export interface ComparedRow extends OutsideRow {
  readonly group: string;
  readonly expected: number;
  readonly tolerance: number;
  readonly computed: number;
  /** Computed less expected. */
  readonly error: number;
  readonly within: boolean;
}

export function isComparable(row: OutsideRow): boolean {
  return row.notCompared === undefined;
}

/** Computes the figure of every comparable row. Throws where a row has none, so that none is dropped in silence. */
export function compare(group: Group): ComparedRow[] {
  return group.rows.filter(isComparable).map((row) => {
    const { expected, tolerance } = row;
    const figure = group.compute[row.id];
    if (expected === undefined || tolerance === undefined || figure === undefined) {
      throw new Error(
        `${group.title}: row ${row.id} has no ${figure ? 'expected value or tolerance' : 'figure'}`,
      );
    }
    const computed = figure();
    const error = computed - expected;
    return {
      ...row,
      group: group.title,
      expected,
      tolerance,
      computed,
      error,
      within: Math.abs(error) <= tolerance,
    };
  });
}
