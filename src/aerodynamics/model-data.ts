import type { Source } from '../source.js';
import type { FittedModernConstants } from './fitted-modern.js';
import type { AerodynamicModel } from './model.js';

/** A grid of measured coefficients. Rows belong to Reynolds numbers, columns to spin ratios. */
export interface CoefficientGrid {
  /** Short id; must differ from the built-in ones. */
  readonly id: string;
  /** One line for people; default the id. */
  readonly label?: string;
  /** Reynolds numbers of the rows, strictly increasing, 1 to 1e7; one row is allowed. */
  readonly reynolds: readonly number[];
  /** Spin ratios of the columns, strictly increasing, 0 to 10; at least two. */
  readonly spinRatio: readonly number[];
  /** `drag[row][column]`, 0.01 to 10. */
  readonly drag: readonly (readonly number[])[];
  /** `lift[row][column]`, −5 to 5; must be 0 in a column of spin ratio 0. */
  readonly lift: readonly (readonly number[])[];
  /** Where the numbers come from. */
  readonly source: Source;
  /** Which spin the table's S was made with; default `across`. */
  readonly spinEntering?: 'across' | 'total';
  /** Spin decay constant, 0 to 0.001; default 2e-5 (Smits and Smith 1994). */
  readonly spinDecay?: number;
}

/** A model as a grid of its coefficients; see `tabulatedModel`. */
export interface TableModel extends CoefficientGrid {
  /** Tells it from the other kinds. */
  readonly kind: 'table';
}

/** A model with its drag and lift multiplied by constant factors; see `scaledModel`. */
export interface ScaledModel {
  /** Tells it from the other kinds. */
  readonly kind: 'scaled';
  /** The model that is scaled. */
  readonly of: ModelChoice;
  /** Factor on the drag coefficient, 0.2 to 5; default 1. */
  readonly drag?: number;
  /** Factor on the lift coefficient, 0.2 to 5; default 1. */
  readonly lift?: number;
}

/** A model without lift in the drag crisis at low spin; see `withReverseMagnus`. */
export interface ReverseMagnusModel {
  /** Tells it from the other kinds. */
  readonly kind: 'reverse-magnus';
  /** The model whose lift is taken away there. */
  readonly of: ModelChoice;
}

/** The law of the default model with constants of one's own. */
export interface FittedModel {
  /** Tells it from the other kinds. */
  readonly kind: 'fitted';
  /** Short id; must differ from the built-in ones. */
  readonly id: string;
  /** One line for people; default the id. */
  readonly label?: string;
  /** The constants of the law. */
  readonly constants: FittedModernConstants;
  /** What they were fitted to. */
  readonly source: Source;
}

/** A coefficient model as plain data: it survives JSON and `structuredClone` and flies the same afterwards. */
export type ModelData = TableModel | ScaledModel | ReverseMagnusModel | FittedModel;

/**
 * What names a coefficient model: the id of a built-in one, plain data, or a record of functions. A record of functions
 * works in process only.
 */
export type ModelChoice = string | ModelData | AerodynamicModel;
