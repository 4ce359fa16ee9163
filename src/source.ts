/** How far a number can be trusted, and how it came into the library. */
export type SourceConfidence =
  /** Read in the cited work itself. */
  | 'published'
  /** Read in somebody else's summary of the cited work. */
  | 'second-hand'
  /** Recalled, not read; verify before quoting it. */
  | 'from memory'
  /** Worked out from figures marked otherwise. */
  | 'derived'
  /** Fitted by a script in this repository. */
  | 'fitted'
  /** An engineering choice without a published value. */
  | 'assumption'
  /** A fact of the trade without a source. */
  | 'common practice, no source';

/** Where a formula or a number comes from. */
export interface Source {
  /** Authors, or the body that published it. */
  readonly authors: string;
  /** Year of publication, 0 to 9,999. */
  readonly year: number;
  /** Title, journal, volume and pages. */
  readonly work: string;
  /** Equation, table or section. */
  readonly locus?: string;
  /** Digital object identifier. */
  readonly doi?: string;
  /** How far it can be trusted. */
  readonly confidence: SourceConfidence;
  /** What a reader should know before leaning on it. */
  readonly note?: string;
}

/** A closed interval. */
export interface ValidRange {
  /** Lower end, included. */
  readonly min: number;
  /** Upper end, included. */
  readonly max: number;
}
