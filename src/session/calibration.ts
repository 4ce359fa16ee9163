import type { ModelChoice } from '../aerodynamics/index.js';
import type { Clubhead } from '../clubhead/index.js';
import type { NormalFactors } from '../sweep/index.js';

/** What `calibrate` can fit. */
export type CalibrationTarget = 'restitution' | 'tangentialRestitution' | 'dragScale' | 'liftScale';

/** One fitted number. */
export interface CalibratedValue {
  /** What it is. */
  readonly target: CalibrationTarget;
  /** Its value before: the head's, or 1. */
  readonly before: number;
  /** Estimate. */
  readonly value: number;
  /**
   * Standard error, robust against wrongly stated reading errors. 95 % is Student's t of them, with as many degrees of
   * freedom as shots used less values fitted: 2.8 with six shots, 2.1 with twenty.
   */
  readonly standardError: number;
  /** True when it ended on its bound. */
  readonly atBound: boolean;
  /** True when the shots shrank the prior by less than a quarter: the value is mostly what was assumed. */
  readonly mostlyPrior: boolean;
}

/** How well one quantity is predicted on shots the fit did not see. */
export interface CalibrationResidual {
  /** Which. */
  readonly quantity: 'ballSpeed' | 'launchAngle' | 'spinRate' | 'carry' | 'apex' | 'descentAngle';
  /** Number of shots. */
  readonly count: number;
  /** Median of measured less predicted before, SI. */
  readonly biasBefore: number;
  /** The same after, each shot predicted by a fit without its fold. */
  readonly biasAfter: number;
  /** Median size of measured less predicted before, SI. */
  readonly typicalBefore: number;
  /** The same after. */
  readonly typicalAfter: number;
}

/** A shot taken for a gross misread, which does not count in the fit. */
export interface CalibrationMisread {
  /** Index into the shots. */
  readonly shot: number;
  /** Whether its strike or its flight does not fit. */
  readonly stage: 'strike' | 'flight';
  /** Probability of a misread. */
  readonly probability: number;
}

/** A target that cannot be fitted to these shots. */
export interface NotFitted {
  /** What. */
  readonly target: CalibrationTarget;
  /** Number of shots with the readings it needs. */
  readonly usable: number;
  /** What is needed, and what there is, in words. */
  readonly reason: string;
}

/** What `calibrate` returns. */
export interface Calibration {
  /** The fitted numbers, in the order asked for. */
  readonly values: readonly CalibratedValue[];
  /** Targets that stay as they were, since too few shots have the readings they need. */
  readonly notFitted: readonly NotFitted[];
  /** Correlation of the estimates, in the order of `values`. */
  readonly correlation: readonly (readonly number[])[];
  /**
   * The same estimates as factors of a sweep, those of the strike together and those of the flight together, with their
   * covariance: `design.factors` can draw from them. The scales multiply the scene's model, so sweep the scene that was
   * calibrated; {@link aerodynamics} has them in it already.
   */
  readonly factors: readonly NormalFactors[];
  /** The head, with its fitted values. */
  readonly clubhead: Clubhead;
  /** The coefficient model with its fitted values: an id or data, unless the scene's model is made of functions. */
  readonly aerodynamics: ModelChoice;
  /** Residuals before and after on unseen shots. */
  readonly residuals: readonly CalibrationResidual[];
  /** Shots taken for misreads. */
  readonly misreads: readonly CalibrationMisread[];
  /** Shots that could not be used, and why. */
  readonly leftOut: readonly {
    readonly shot: number;
    readonly stage: 'strike' | 'flight';
    readonly reason: string;
  }[];
  /** What these data cannot tell apart, in sentences. */
  readonly limits: readonly string[];
}
