import { ballField } from '../ball/ball.js';
import { type Ball, type BallName, balls } from '../ball/index.js';
import { type Clubhead, type ClubheadName, clubheads } from '../clubhead/index.js';
import { clubheadField } from '../clubhead/presets.js';
import { handField, type PlayerHand } from '../inputs/delivery.js';
import { type Declared, optional, partial, record } from '../inputs/field.js';
import { frozen } from '../inputs/frozen.js';
import { measuredShotFields } from '../inputs/measured-shot.js';
import { readOptions, readRecord } from '../inputs/read.js';
import {
  BALL_READINGS,
  type ReadingErrors,
  readingErrorFields,
  type StrikeMeasurement,
} from '../inputs/readings.js';
import { refusal } from '../inputs/refuse.js';
import { chiSquareCdf, chiSquareQuantileOfTwo } from '../numerics/index.js';
import type { StrikeEstimate, StrikeSolution } from './estimate.js';
import {
  curveFinding,
  describeOffset,
  describePlaces,
  identifiability,
  misfitFinding,
} from './locate-findings.js';
import { leastChiSquare, minimaOf } from './locate-fit.js';
import { type LocateProblem, locateProblem } from './locate-model.js';
import { type Placed, placed } from './locate-region.js';
import { residualsOf, solutionOf } from './locate-solution.js';
import { inconsistent } from './locate-suspects.js';
import { defaultReadingErrors } from './measurement.js';
import { type StrikePriors, strikePriorFields } from './strike-priors.js';

/** Options of {@link locateStrike}. */
export interface LocateOptions {
  /** Clubhead, or the name of a preset; default the generic driver. */
  readonly clubhead?: Clubhead | ClubheadName;
  /** Ball, or the name of a preset; default the conforming ball. */
  readonly ball?: Ball | BallName;
  /** Which way round the player stands; default what the measurement says, else right. */
  readonly hand?: PlayerHand;
  /** Standard deviations of the readings; default {@link defaultReadingErrors}. */
  readonly readingErrors?: Partial<ReadingErrors>;
  /** Priors; each has a default. */
  readonly priors?: StrikePriors;
}

/** Declaration of {@link LocateOptions}. @internal */
export const locateOptionFields: Declared<LocateOptions> = /* @__PURE__ */ frozen(() => ({
  clubhead: optional(clubheadField),
  ball: optional(ballField),
  hand: optional(handField),
  readingErrors: optional(record(partial(readingErrorFields), 'reading errors')),
  priors: optional(record(strikePriorFields, 'priors')),
}));

/** {@link LocateOptions} with their defaults filled in. @internal */
export interface LocateSettings {
  readonly clubhead: Clubhead;
  readonly ball: Ball;
  readonly hand: PlayerHand;
  readonly readingErrors: ReadingErrors;
  readonly priors: StrikePriors;
}

/** A set of readings less likely than this is called inconsistent. */
const LEAST_PROBABILITY = 0.001;
/** Readings less likely than this make the regions wider, and the answer says so. */
const MISFIT = 0.05;
/** Fewer readings of the ball than these say next to nothing about their own errors. */
const FEWEST_FOR_MISFIT = 4;
/** Solutions worse in chi-square than this probability leaves room for, of two offsets, are not reported. */
const ALTERNATIVE = 0.95;

/**
 * Where on the face the ball was struck, from what was measured: weighted least squares on the strike model. Toe and
 * high offset are the unknowns that matter; the delivery and the grip are unknown too, each within its reading error
 * or, where not measured, its prior. Bulge, roll and gear effect act in the model, so a toe strike that starts right
 * and curves left is told from an open face.
 *
 * The regions are as good as the standard deviations and the head: use your device's figures and your head's numbers.
 * Where few readings let the strike lie far round the face, the probability is summed over the face, not taken from the
 * curvature at the best place. Readings that fit worse than one set in twenty widen the regions, and `findings` says so.
 *
 * Source of the method: weighted least squares with priors, Gelman et al. 2013, Bayesian Data Analysis, 3rd ed.,
 * sec. 4.1 (normal approximation at the mode).
 *
 * @param measured - Readings; at least one of the ball's. Other fields of a measured shot play no part.
 * @param options - clubhead, ball, hand, reading errors and priors; each has a default
 * @returns `located`, or `inconsistent` when no strike explains the readings (probability below 0.001).
 * @throws `FairflightError` `invalid-input` or `outside-range` naming the field.
 */
export function locateStrike(measured: StrikeMeasurement, options: LocateOptions = {}): StrikeEstimate {
  const { clubhead, ball, hand, readingErrors, priors = {} } = readOptions(locateOptionFields, options);
  const readings = readRecord(measuredShotFields, measured, 'measured');
  if (!BALL_READINGS.some((reading) => readings[reading] !== undefined)) {
    throw refusal(
      'measured',
      `measured needs at least one reading of the ball: ${BALL_READINGS.join(', ')}`,
      {
        value: measured,
        hint: 'ball speed, launch direction and spin-axis tilt say most',
      },
    );
  }
  return locate(readings, {
    // Reading has put the record in the place of a preset's name.
    clubhead: (clubhead as Clubhead | undefined) ?? clubheads.driver,
    ball: (ball as Ball | undefined) ?? balls.conforming,
    hand: hand ?? readings.hand ?? 'right',
    readingErrors: { ...defaultReadingErrors, ...readingErrors },
    priors,
  });
}

/** {@link locateStrike} with inputs already read. @throws FairflightError `not-converged` @internal */
export function locate(measured: StrikeMeasurement, settings: LocateSettings): StrikeEstimate {
  const { clubhead, ball, hand, readingErrors: errors, priors } = settings;
  const mirror = hand === 'left' ? -1 : 1;
  const problemOf = (readings: StrikeMeasurement): LocateProblem =>
    locateProblem(readings, clubhead, ball, mirror, errors, priors);
  const problem = problemOf(measured);

  const found = minimaOf(problem);
  const best = found[0];
  if (best === undefined) {
    throw refusal(
      'measured',
      'no strike could be computed near these readings; check units and signs of loft, attack, face and path',
      { value: measured },
      'not-converged',
    );
  }
  const residuals = residualsOf(problem, best, measured, errors);
  const degreesOfFreedom = problem.readings.length;
  const probability = 1 - chiSquareCdf(best.chiSquare, degreesOfFreedom);
  const common = { residuals, chiSquare: best.chiSquare, degreesOfFreedom, probability };
  if (probability < LEAST_PROBABILITY) {
    return inconsistent(common, (reading) => {
      const { [reading]: _, ...rest } = measured;
      return leastChiSquare(problemOf(rest));
    });
  }

  const room = chiSquareQuantileOfTwo(ALTERNATIVE);
  const near = found.filter((fit) => fit.chiSquare - best.chiSquare < room);
  const places = placed(problem, near);
  const total = places.reduce((sum, { evidence }) => sum + evidence, 0);
  // Readings that fit worse than their errors allow have larger errors: Birge R T (1932) Phys. Rev. 40, 207–227.
  const misfit =
    probability < MISFIT && degreesOfFreedom >= FEWEST_FOR_MISFIT ? best.chiSquare / degreesOfFreedom : 1;
  const solutions = places.map((place) => solutionOf(problem, place, place.evidence / total, misfit, hand));
  solutions.sort((a, b) => b.weight - a.weight);
  const [main, ...alternatives] = solutions as [StrikeSolution, ...StrikeSolution[]];
  const chosen = places.find((place) => place.chiSquare === main.chiSquare) ?? (places[0] as Placed);
  const known = identifiability(
    problem,
    chosen,
    measured.faceAngle !== undefined && measured.clubPath !== undefined,
  );
  const curve = curveFinding(problem, measured, mirror);
  return {
    outcome: 'located',
    ...main,
    ...common,
    residuals:
      chosen.chiSquare === best.chiSquare ? residuals : residualsOf(problem, chosen, measured, errors),
    alternatives,
    identifiability: known,
    findings: [
      ...(alternatives.length === 0 ? [describeOffset(main)] : [describePlaces(solutions)]),
      ...(curve === undefined ? [] : [curve]),
      ...(misfit > 1 ? [misfitFinding(common)] : []),
      ...[known.toe.message, known.high.message].filter((message) => message !== ''),
    ],
  };
}
