/** A column of a table. Text columns stand left, numbers right. */
export interface TableColumn {
  readonly head: string;
  readonly unit?: string;
  readonly text?: boolean;
}

/** A cell: a figure or a word, and what stands under it in small print, line by line. */
export interface Cell {
  readonly value: string;
  readonly small?: readonly string[];
}

/** A table in plain text; terminal and page each show it in their own way. */
export interface Sheet {
  readonly columns: readonly TableColumn[];
  readonly rows: readonly (readonly Cell[])[];
}
