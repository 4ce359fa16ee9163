import type { OddShot } from './odd-shots.js';
import type { QuantityName, ShotQuantities } from './quantities.js';

/** What a handful of readings say about one quantity; all in SI. */
export interface SampleEstimate<Q extends number = number> {
  /** Readings. */
  readonly count: number;
  /** Their mean. */
  readonly mean: Q;
  /**
   * Interval for the mean; absent with fewer than two readings. Student's t, but where every shot counts, the lower end
   * for ball speed, smash factor, carry and total leaves room for mishits that so few shots may not show.
   */
  readonly interval?: { readonly low: Q; readonly high: Q; readonly level: number };
  /** Standard deviation from shot to shot; absent with fewer than two readings. */
  readonly sd?: Q;
  /** Median. */
  readonly median: Q;
  /** 1.4826 × median absolute deviation, which a few wild readings leave alone. */
  readonly robustSd: Q;
}

/** Estimates of every quantity that was measured. */
export type SampleEstimates = { readonly [K in QuantityName]?: SampleEstimate<ShotQuantities[K]> };

/** One band of a session. */
export interface BandSummary {
  /** Name of the band. */
  readonly name: string;
  /** Places of its shots in the list given. */
  readonly shots: readonly number[];
  /** Every shot of the band counted. */
  readonly quantities: SampleEstimates;
  /** The same without the shots found to be outliers; absent when there are none. */
  readonly withoutOutliers?: SampleEstimates;
}

/** How a quantity changes with club speed. */
export interface SessionTrend {
  /** Change a metre per second of club speed, SI unit of the quantity over m/s. */
  readonly slope: number;
  /** Interval for the slope. */
  readonly interval: { readonly low: number; readonly high: number; readonly level: number };
  /** Value of the line at club speed 0, SI. */
  readonly intercept: number;
  /** Shots used. */
  readonly count: number;
  /** For lengths: the slope in yards per mph. */
  readonly yardsPerMph?: { readonly value: number; readonly low: number; readonly high: number };
  /** True when the interval holds 0, so that these shots show no trend. */
  readonly unclear: boolean;
}

/** How well one quantity repeats from shot to shot within bands; all in SI. */
export interface Repeatability {
  /** Typical error: standard deviation within bands, pooled over them. */
  readonly typicalError: number;
  /** Degrees of freedom the typical error is known with: readings less bands. */
  readonly dof: number;
  /** Smallest change between two single shots that is more than scatter: √2 t typical errors, 2.77 with many at 95 %. */
  readonly detectableSingle: number;
  /** Smallest change between the means of two bands of this session's usual size. */
  readonly detectableMean: number;
  /** The usual (median) number of readings a band, to which `detectableMean` belongs. */
  readonly shotsPerMean: number;
}

/** What a session of measured shots says. */
export interface SessionSummary {
  /** Shots given. */
  readonly count: number;
  /** What put shots into bands. */
  readonly bandedBy: 'labels' | 'given' | 'found' | 'one';
  /** The bands, slowest first; bands by label in the order of their first shot. */
  readonly bands: readonly BandSummary[];
  /** Shots that belong to no band, and why. */
  readonly unassigned: readonly { readonly shot: number; readonly reason: string }[];
  /** Shots that stand apart from their band. Flagged only: every figure outside `withoutOutliers` counts them. */
  readonly oddShots: readonly OddShot[];
  /**
   * Trend of each quantity with club speed, over all shots (Theil–Sen, which a few wild shots leave alone); absent where
   * too few shots have both readings, at 95 % fewer than five.
   */
  readonly trends: { readonly [K in QuantityName]?: SessionTrend };
  /** Repeatability of each quantity. */
  readonly repeatability: { readonly [K in QuantityName]?: Repeatability };
  /** What a reader should know before leaning on these figures, in words. */
  readonly remarks: readonly string[];
}
