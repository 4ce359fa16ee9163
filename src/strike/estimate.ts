import type { Delivery, StrikeOffset } from '../inputs/delivery.js';
import type { BallReading, StrikeReading } from '../inputs/readings.js';
import type { Angle, Length } from '../units/index.js';

/** How firmly one offset is determined. */
export interface Identifiability {
  /** Standard deviation of the offset [m]. */
  readonly standardDeviation: number;
  /** That of its prior [m]. */
  readonly prior: number;
  /** True when the readings shrink the prior by less than a quarter. */
  readonly weak: boolean;
  /** Readings of the ball without which the uncertainty would grow by a quarter or more. */
  readonly restsOn: readonly BallReading[];
  /** A warning in words; empty when there is nothing to warn of. */
  readonly message: string;
}

/** A region of the face, an ellipse about the estimate. */
export interface FaceRegion {
  /** Probability that the region holds the strike. */
  readonly probability: number;
  /** Half of the long axis [m]. */
  readonly semiMajor: Length;
  /** Half of the short axis [m]. */
  readonly semiMinor: Length;
  /** Direction of the long axis [rad], from the toe direction toward high. */
  readonly orientation: Angle;
}

/** One place on the face that explains the readings. */
export interface StrikeSolution {
  /** Where. */
  readonly strikeOffset: StrikeOffset;
  /** Covariance of toe and high [m²]. */
  readonly covariance: readonly [readonly [number, number], readonly [number, number]];
  /** Regions that hold the strike with 68 and 95 % probability. */
  readonly regions: { readonly p68: FaceRegion; readonly p95: FaceRegion };
  /** Probability of this solution against the others found, 0 to 1 (Laplace's approximation). */
  readonly weight: number;
  /** The delivery that goes with it. */
  readonly delivery: Delivery;
  /** Chi-square of readings and priors. */
  readonly chiSquare: number;
}

/** One reading against what the solution predicts. */
export interface ReadingResidual {
  /** Which reading. */
  readonly reading: StrikeReading;
  /** As measured, SI. */
  readonly measured: number;
  /** As the solution has it, SI. */
  readonly predicted: number;
  /** Standard deviation used, SI. */
  readonly standardDeviation: number;
  /** (measured − predicted)/standard deviation. */
  readonly standardised: number;
  /** The same, scaled so that it is standard normal when all is well. */
  readonly deletion: number;
}

/** What every answer of `locateStrike` reports. */
export interface EstimateBasis {
  /** Every reading against the best solution. */
  readonly residuals: readonly ReadingResidual[];
  /** Chi-square of readings and priors at the best solution. */
  readonly chiSquare: number;
  /** Number of ball readings: what chi-square is on average. */
  readonly degreesOfFreedom: number;
  /** Probability of a chi-square this large when readings and priors are right. */
  readonly probability: number;
}

/** The strike was found. */
export interface LocatedStrike extends StrikeSolution, EstimateBasis {
  /** Tells this answer from the other. */
  readonly outcome: 'located';
  /** Other places that explain the readings nearly as well, most likely first. */
  readonly alternatives: readonly StrikeSolution[];
  /** How firmly toe and high are determined, and by what. */
  readonly identifiability: { readonly toe: Identifiability; readonly high: Identifiability };
  /** What the numbers say, in sentences. */
  readonly findings: readonly string[];
}

/** The readings contradict each other: no strike explains them. */
export interface InconsistentStrike extends EstimateBasis {
  /** Tells this answer from the other. */
  readonly outcome: 'inconsistent';
  /** The readings most likely wrong, the first one most: more than one when the set cannot tell them apart. */
  readonly suspects: readonly [StrikeReading, ...StrikeReading[]];
  /** What contradicts what. */
  readonly message: string;
}

/** What `locateStrike` returns. */
export type StrikeEstimate = LocatedStrike | InconsistentStrike;
