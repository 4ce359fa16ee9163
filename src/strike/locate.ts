import { type Ball, conformingBall } from '../ball/index.js';
import { checkClubhead } from '../clubhead/check.js';
import { type Clubhead, clubheads } from '../clubhead/index.js';
import { FairflightError, requireOneOf, requireRecord, requireWithin } from '../errors.js';
import {
  chiSquareCdf,
  type LeastSquaresSolution,
  levenbergMarquardt,
  type Matrix,
} from '../numerics/index.js';
import { si } from '../units/index.js';
import type { Hand, StrikeOffset } from './delivery.js';
import type {
  EstimateBasis,
  FaceRegion,
  InconsistentStrike,
  ReadingResidual,
  StrikeEstimate,
  StrikeSolution,
} from './estimate.js';
import { curveFinding, describeOffset, identifiability } from './locate-findings.js';
import { type LocateProblem, locateProblem, type Prior, readingError, UNKNOWNS } from './locate-model.js';
import { FACE, startsOf } from './locate-starts.js';
import {
  BALL_READINGS,
  CLUB_READINGS,
  checkMeasurement,
  type Reading,
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
/** Solutions this much worse in chi-square are not reported (95 % for two offsets). */
const ALTERNATIVE = 5.991;
/** Leaving out another reading must raise chi-square by this much before it is cleared (two standard deviations). */
const SUSPECT = 4;
/** Quantiles of chi-square for two degrees of freedom. */
const CHI_68 = 2.2957;
const CHI_95 = 5.9915;

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
    locateProblem(readings, clubhead, options.ball ?? conformingBall, mirror, errors, given);
  const problem = problemOf(measured);

  const found = search(problem);
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

  const near = found.filter((fit) => fit.chiSquare - best.chiSquare < ALTERNATIVE);
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
      ...(alternatives.length === 0
        ? [describeOffset(main)]
        : [
            `The readings leave ${alternatives.length + 1} places: ${solutions.map((s) => `${place(s.strikeOffset)} (${Math.round(100 * s.weight)} %)`).join(', ')}.`,
          ]),
      ...(curve === undefined ? [] : [curve]),
      ...[known.toe.message, known.high.message].filter((message) => message !== ''),
    ],
  };
}

interface Fit {
  readonly q: readonly number[];
  readonly chiSquare: number;
  readonly jacobian: Matrix;
  readonly covariance: Matrix;
  /** Square root of the determinant of the covariance of the offsets: the size of the mode. */
  readonly spread: number;
}

function fitFrom(problem: LocateProblem, start: readonly number[], tolerance: number): LeastSquaresSolution {
  const bound = (sign: number): number[] =>
    UNKNOWNS.map((name, i) => {
      const size = name === 'toe' ? FACE.toe : name === 'high' ? FACE.high : Number.POSITIVE_INFINITY;
      return problem.standardised(i, sign * size);
    });
  return levenbergMarquardt(problem.residualsAt, start, {
    jacobian: problem.jacobianAt,
    variance: 'known',
    lower: bound(-1),
    upper: bound(1),
    tolerance,
  });
}

/** Least chi-square of a problem, from the deepest valley alone and to no more digits than a comparison needs. */
function leastChiSquare(problem: LocateProblem): number {
  const [deepest] = startsOf(problem);
  return deepest === undefined ? Number.POSITIVE_INFINITY : fitFrom(problem, deepest, 1e-3).sumOfSquares;
}

/** All distinct minima, best first. */
function search(problem: LocateProblem): Fit[] {
  const fits: Fit[] = [];
  for (const start of startsOf(problem)) {
    const fit = fitFrom(problem, start, 1e-7);
    if (fit.covariance === undefined) continue;
    if (fits.some((other) => distance(problem, other.q, fit.x) < 0.001)) continue;
    const [[a = 0, b = 0] = [], [c = 0, d = 0] = []] = fit.covariance;
    fits.push({
      q: fit.x,
      chiSquare: fit.sumOfSquares,
      jacobian: problem.jacobianAt(fit.x),
      covariance: fit.covariance,
      spread: Math.sqrt(Math.max(0, a * d - b * c)),
    });
  }
  return fits.sort((a, b) => a.chiSquare - b.chiSquare);
}

function distance(problem: LocateProblem, a: readonly number[], b: readonly number[]): number {
  const [toeA = 0, highA = 0] = problem.valuesAt(a);
  const [toeB = 0, highB = 0] = problem.valuesAt(b);
  return Math.hypot(toeA - toeB, highA - highB);
}

function solutionOf(problem: LocateProblem, fit: Fit, weight: number, hand: Hand): StrikeSolution {
  const [toe = 0, high = 0, clubSpeed = 0, attack = 0, path = 0, face = 0, loft = 0] = problem.valuesAt(
    fit.q,
  );
  const sd = problem.priors.map((prior) => prior.standardDeviation);
  const entry = (i: number, j: number): number => (fit.covariance[i]?.[j] ?? 0) * (sd[i] ?? 0) * (sd[j] ?? 0);
  const covariance = [
    [entry(0, 0), entry(0, 1)],
    [entry(1, 0), entry(1, 1)],
  ] as const;
  const strikeOffset: StrikeOffset = { toe: si(toe), high: si(high) };
  return {
    strikeOffset,
    covariance,
    regions: { p68: region(covariance, 0.6827, CHI_68), p95: region(covariance, 0.95, CHI_95) },
    weight,
    delivery: {
      clubSpeed: si(clubSpeed),
      attackAngle: si(attack),
      clubPath: si(path),
      faceAngle: si(face),
      dynamicLoft: si(loft),
      strikeOffset,
      hand,
    },
    chiSquare: fit.chiSquare,
  };
}

function region(c: StrikeSolution['covariance'], probability: number, chi: number): FaceRegion {
  const middle = (c[0][0] + c[1][1]) / 2;
  const half = Math.hypot((c[0][0] - c[1][1]) / 2, c[0][1]);
  return {
    probability,
    semiMajor: si(Math.sqrt(chi * (middle + half))),
    semiMinor: si(Math.sqrt(chi * Math.max(0, middle - half))),
    orientation: si(0.5 * Math.atan2(2 * c[0][1], c[0][0] - c[1][1])),
  };
}

/** Residuals of all readings; the deletion residual is r/√(1 − leverage) (Cook and Weisberg 1982, sec. 2.2). */
function residualsOf(
  problem: LocateProblem,
  fit: Fit,
  measured: StrikeMeasurement,
  errors: ReadingErrors,
): ReadingResidual[] {
  const values = problem.residualsAt(fit.q);
  const unknowns = problem.valuesAt(fit.q);
  const deletion = (row: number): number => {
    const j = fit.jacobian[row] ?? [];
    let leverage = 0;
    j.forEach((ja, a) => {
      j.forEach((jb, b) => {
        leverage += ja * jb * (fit.covariance[a]?.[b] ?? 0);
      });
    });
    return (values[row] ?? 0) / Math.sqrt(Math.max(1e-9, 1 - leverage));
  };
  const ball = problem.readings.map(({ reading, value, sd }, k) => ({
    reading,
    measured: value,
    predicted: value - (values[k] ?? 0) * sd,
    standardDeviation: sd,
    standardised: values[k] ?? 0,
    deletion: deletion(k),
  }));
  const club = CLUB_READINGS.flatMap((reading) => {
    const value = measured[reading];
    if (value === undefined) return [];
    const i = UNKNOWNS.indexOf(reading);
    const sd = readingError(reading, value, errors);
    const predicted = unknowns[i] ?? value;
    return [
      {
        reading,
        measured: value,
        predicted,
        standardDeviation: sd,
        standardised: (value - predicted) / sd,
        deletion: -deletion(problem.readings.length + i),
      },
    ];
  });
  return [...ball, ...club];
}

/**
 * Names the misread by leaving out one reading at a time: the set that then agrees best lacked the wrong one. Residuals
 * at the solution would blame whichever reading bent most.
 */
function inconsistent(common: EstimateBasis, without: (reading: Reading) => number): InconsistentStrike {
  const ranked = common.residuals
    .map(({ reading }) => ({ reading, chiSquare: without(reading) }))
    .sort((a, b) => a.chiSquare - b.chiSquare);
  const best = ranked[0] as (typeof ranked)[number];
  const suspects = ranked.filter((r) => r.chiSquare - best.chiSquare < SUSPECT);
  const told = suspects.map((r) => `${r.reading} (without it ${r.chiSquare.toFixed(1)})`).join(' or ');
  return {
    outcome: 'inconsistent',
    ...common,
    suspects: [best.reading, ...suspects.slice(1).map((r) => r.reading)],
    message:
      `No strike on this head explains the readings: chi-square ${common.chiSquare.toFixed(1)} where ` +
      `${common.degreesOfFreedom} is usual. Most likely misread: ${told}.`,
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

function place({ toe, high }: StrikeOffset): string {
  const part = (value: number, plus: string, minus: string): string =>
    `${Math.abs(value * 1000).toFixed(0)} mm ${value >= 0 ? plus : minus}`;
  return `${part(toe, 'toward the toe', 'toward the heel')} and ${part(high, 'high', 'low')}`;
}
