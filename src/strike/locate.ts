import { type Ball, balls } from '../ball/index.js';
import { checkClubhead } from '../clubhead/check.js';
import { type Clubhead, clubheads } from '../clubhead/index.js';
import { FairflightError, requireOneOf, requireRecord, requireWithin } from '../errors.js';
import { chiSquareCdf, chiSquareQuantile } from '../numerics/index.js';
import type { Hand } from './delivery.js';
import type { StrikeEstimate, StrikeSolution } from './estimate.js';
import { curveFinding, describeOffset, describePlaces, identifiability } from './locate-findings.js';
import { leastChiSquare, minimaOf } from './locate-fit.js';
import { type LocateProblem, locateProblem, type Prior, UNKNOWNS } from './locate-model.js';
import { residualsOf, solutionOf } from './locate-solution.js';
import { inconsistent } from './locate-suspects.js';
import {
  BALL_READINGS,
  checkMeasurement,
  type ReadingErrors,
  resolveReadingErrors,
  type StrikeMeasurement,
} from './measurement.js';

/** Priors of {@link locateStrike}; lengths in metres, angles in radians, speed in m/s. All defaults are assumptions. */
export interface StrikePriors {
  /** Toward the toe [m]; default 0 ± 15 mm. */
  readonly toe?: Prior;
  /** Up the face [m]; default 0 ± 10 mm. */
  readonly high?: Prior;
  /** Club speed [m/s] where not measured; default from ball speed, ±10 %. */
  readonly clubSpeed?: Prior;
  /** Attack angle [rad] where not measured; default typical of the class ± 3.5°. */
  readonly attackAngle?: Prior;
  /** Club path [rad] where not measured; default 0 ± 4°. */
  readonly clubPath?: Prior;
  /** Face angle [rad] where not measured; default 0 ± 4°. */
  readonly faceAngle?: Prior;
  /** Dynamic loft [rad] where not measured; default static loft +2° (woods) or −6° (irons), ± 4°. */
  readonly dynamicLoft?: Prior;
  /** Tangential restitution (its limit, for an oblique law); default the head's ± 0.1. */
  readonly grip?: Prior;
}

/** Options of {@link locateStrike}. */
export interface LocateOptions {
  /** Which way round the player stands; default right. */
  readonly hand?: Hand;
  /** Ball; default the conforming ball. */
  readonly ball?: Ball;
  /** Standard deviations of the readings; default {@link defaultReadingErrors}. */
  readonly readingErrors?: Partial<ReadingErrors>;
  /** Priors; each has a default. */
  readonly priors?: StrikePriors;
}

/** A set of readings less likely than this is called inconsistent. */
const LEAST_PROBABILITY = 0.001;
/** Solutions worse in chi-square than this probability leaves room for, of two offsets, are not reported. */
const ALTERNATIVE = 0.95;
/**
 * Where on the face the ball was struck, from what was measured: weighted least squares on the strike model. Toe and
 * high offset are the unknowns that matter; the delivery and the grip are unknown too, each within its reading error
 * or, where not measured, its prior. Bulge, roll and gear effect act in the model, so a toe strike that starts right
 * and curves left is told from an open face.
 *
 * The regions are as good as the standard deviations and the head: use your device's figures and your head's numbers.
 *
 * Source of the method: weighted least squares with priors, Gelman et al. 2013, Bayesian Data Analysis, 3rd ed.,
 * sec. 4.1 (normal approximation at the mode).
 *
 * @param measured - Readings; at least one of the ball's.
 * @param clubhead - The head; default the generic driver.
 * @returns `located`, or `inconsistent` when no strike explains the readings (probability below 0.001).
 * @throws {@link FairflightError} `invalid-input` or `outside-range` naming the field.
 */
export function locateStrike(
  measured: StrikeMeasurement,
  clubhead: Clubhead = clubheads.driver,
  options: LocateOptions = {},
): StrikeEstimate {
  checkMeasurement(measured);
  checkClubhead(clubhead);
  requireRecord('options', options, ['hand', 'ball', 'readingErrors', 'priors']);
  const hand = requireOneOf('options.hand', options.hand ?? 'right', ['right', 'left'] as const);
  if (!BALL_READINGS.some((reading) => measured[reading] !== undefined)) {
    throw new FairflightError(
      'invalid-input',
      `measured needs at least one reading of the ball: ${BALL_READINGS.join(', ')}`,
      {
        field: 'measured',
        value: measured,
        hint: 'ball speed, launch direction and spin-axis tilt say most',
      },
    );
  }
  const errors = resolveReadingErrors(options.readingErrors ?? {}, 'options.readingErrors');
  const given = checkPriors(options.priors ?? {});
  const mirror = hand === 'left' ? -1 : 1;
  const problemOf = (readings: StrikeMeasurement): LocateProblem =>
    locateProblem(readings, clubhead, options.ball ?? balls.conforming, mirror, errors, given);
  const problem = problemOf(measured);

  const found = minimaOf(problem);
  const best = found[0];
  if (best === undefined) {
    throw new FairflightError(
      'not-converged',
      'no strike could be computed near these readings; check units and signs of loft, attack, face and path',
      { field: 'measured', value: measured },
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

  const room = chiSquareQuantile(ALTERNATIVE, 2);
  const near = found.filter((fit) => fit.chiSquare - best.chiSquare < room);
  const evidence = near.map((fit) => Math.exp((best.chiSquare - fit.chiSquare) / 2) * fit.spread);
  const total = evidence.reduce((sum, value) => sum + value, 0);
  const solutions = near.map((fit, i) => solutionOf(problem, fit, (evidence[i] ?? 0) / total, hand));
  solutions.sort((a, b) => b.weight - a.weight);
  const [main, ...alternatives] = solutions as [StrikeSolution, ...StrikeSolution[]];
  const chosen = near.find((fit) => fit.chiSquare === main.chiSquare) ?? best;
  const known = identifiability(
    problem,
    chosen.jacobian,
    chosen.covariance,
    measured.faceAngle !== undefined && measured.clubPath !== undefined,
  );
  const curve = curveFinding(problem, measured, mirror);
  return {
    outcome: 'located',
    ...main,
    ...common,
    residuals: chosen === best ? residuals : residualsOf(problem, chosen, measured, errors),
    alternatives,
    identifiability: known,
    findings: [
      ...(alternatives.length === 0 ? [describeOffset(main)] : [describePlaces(solutions)]),
      ...(curve === undefined ? [] : [curve]),
      ...[known.toe.message, known.high.message].filter((message) => message !== ''),
    ],
  };
}

function checkPriors(priors: StrikePriors): StrikePriors {
  requireRecord('options.priors', priors, UNKNOWNS);
  for (const [name, prior] of Object.entries(priors) as [string, Prior][]) {
    const field = `options.priors.${name}`;
    requireRecord(field, prior, ['mean', 'standardDeviation']);
    requireWithin(`${field}.mean`, prior.mean, -100, 100, 'SI');
    requireWithin(`${field}.standardDeviation`, prior.standardDeviation, 1e-6, 100, 'SI');
  }
  return priors;
}
