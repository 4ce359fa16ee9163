import type { SobolScramble } from '../numerics/sobol.js';
import type { FactorName, FactorValues } from './factors.js';

/** A factor that runs over a range, in one of the units of its name: `{ name: 'delivery.clubSpeed', from: mph(80), to: mph(120) }`. */
export type RangeFactor<Name extends FactorName = FactorName> = {
  readonly [N in Name]: {
    /** Dotted name. */
    readonly name: N;
    /** One end of the range, included. */
    readonly from: FactorValues[N];
    /** The other end, included; may lie below `from`. */
    readonly to: FactorValues[N];
  };
}[Name];

/** A factor of a grid: a range in even steps, both ends included, or the values themselves. */
export type GridFactor<Name extends FactorName = FactorName> =
  | (RangeFactor<Name> & {
      /** Values, ends included: 2 or more. */
      readonly steps: number;
    })
  | {
      readonly [N in Name]: {
        /** Dotted name. */
        readonly name: N;
        /** Values, 1 or more. */
        readonly values: readonly FactorValues[N][];
      };
    }[Name];

/**
 * Factors drawn together from a normal distribution, as the covariance of a fit gives it: `calibratedFactors` makes one of
 * a calibration. A draw outside the range of its factor is no error: the row says so in its status. Values lie within 6.4
 * standard deviations.
 */
export interface NormalFactors {
  /** Dotted names. */
  readonly names: readonly FactorName[];
  /** Mean of each, in SI units, within its range. */
  readonly mean: readonly number[];
  /** Covariance, row by row, in SI units: symmetric and positive definite. */
  readonly covariance: readonly (readonly number[])[];
}

/** A factor of a random design, uniform over a range, or several that are normal and perhaps correlated. */
export type RandomFactor = RangeFactor | NormalFactors;

/** Every combination of the factors' values. The last factor changes fastest. */
export interface GridDesign {
  /** Which design this is. */
  readonly kind: 'grid';
  /** Factors, each with its values. */
  readonly factors: readonly GridFactor[];
}

/** A Latin hypercube: each of the `count` equal slices of every factor holds exactly one row. */
export interface LatinHypercubeDesign {
  /** Which design this is. */
  readonly kind: 'latin-hypercube';
  /** Factors, independent of each other but for those of one normal distribution. */
  readonly factors: readonly RandomFactor[];
  /** Rows, 1 to 2³⁰. */
  readonly count: number;
  /** Whole number, 0 to 2⁵³ − 1; default 0. */
  readonly seed?: number;
}

/** Points of Sobol's sequence, up to 32 names; a power of two of rows fills the space most evenly. */
export interface SobolDesign {
  /** Which design this is. */
  readonly kind: 'sobol';
  /** Factors, independent of each other but for those of one normal distribution. */
  readonly factors: readonly RandomFactor[];
  /** Rows, 1 to 2³¹. */
  readonly count: number;
  /** How the sequence is randomised; default `owen`. `none` is the published sequence, whose first row is every `from`. */
  readonly scramble?: SobolScramble;
  /** Seed of the scramble, whole number, 0 to 2⁵³ − 1; default 0. */
  readonly seed?: number;
}

/**
 * Rows from which `sobolIndicesOf` computes how much of an output's variance each factor makes: for every base
 * row one row A, one row B, and one row a factor, A with that factor taken from B. Rows: base × (factors + 2). Factors of
 * one normal distribution are taken from B together: only as one do they have a share of their own. Base rows are a
 * scrambled Sobol sequence in twice as many dimensions, so up to 16 names.
 */
export interface IndexDesign {
  /** Which design this is. */
  readonly kind: 'sobol-indices';
  /** Factors, independent of each other but for those of one normal distribution, which count as one. */
  readonly factors: readonly RandomFactor[];
  /** Base rows, 2 to 2³¹; a power of two is best. */
  readonly base: number;
  /** Seed of the scramble, whole number, 0 to 2⁵³ − 1; default 0. */
  readonly seed?: number;
}

/** Values of the factors in one row of a list, all in their units. */
export type ListRow = { readonly [Name in FactorName]?: FactorValues[Name] };

/** Rows as given. A value outside its range is no error here: the row says so in its status. */
export interface ListDesign {
  /** Which design this is. */
  readonly kind: 'list';
  /** Rows; all have the same factors. */
  readonly rows: readonly ListRow[];
}

/** Which inputs a sweep visits. Row i depends on the design and i alone. */
export type Design = GridDesign | LatinHypercubeDesign | SobolDesign | IndexDesign | ListDesign;
