import type { PlayerHand, StrikeOffset } from '../inputs/delivery.js';
import { CLUB_READINGS, type ReadingErrors, type StrikeMeasurement } from '../inputs/readings.js';
import { chiSquareQuantileOfTwo } from '../numerics/index.js';
import { si } from '../units/index.js';
import type { FaceRegion, ReadingResidual, StrikeSolution } from './estimate.js';
import type { Fit } from './locate-fit.js';
import { type LocateProblem, readingError, UNKNOWNS } from './locate-model.js';
import type { Placed } from './locate-region.js';

/** A minimum as a place on the face and the delivery that goes with it; variances `misfit` times as large. @internal */
export function solutionOf(
  problem: LocateProblem,
  fit: Placed,
  weight: number,
  misfit: number,
  hand: PlayerHand,
): StrikeSolution {
  const [toe = 0, high = 0, clubSpeed = 0, attack = 0, path = 0, face = 0, loft = 0] = problem.valuesAt(
    fit.q,
  );
  const sd = problem.priors.map((prior) => prior.standardDeviation);
  const entry = (i: number, j: number): number =>
    misfit * (fit.offsets[i]?.[j] ?? 0) * (sd[i] ?? 0) * (sd[j] ?? 0);
  const covariance = [
    [entry(0, 0), entry(0, 1)],
    [entry(1, 0), entry(1, 1)],
  ] as const;
  const strikeOffset: StrikeOffset = { toe: si(toe), high: si(high) };
  return {
    strikeOffset,
    covariance,
    regions: { p68: region(covariance, 0.6827), p95: region(covariance, 0.95) },
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

function region(c: StrikeSolution['covariance'], probability: number): FaceRegion {
  const chi = chiSquareQuantileOfTwo(probability);
  const middle = (c[0][0] + c[1][1]) / 2;
  const half = Math.hypot((c[0][0] - c[1][1]) / 2, c[0][1]);
  return {
    probability,
    semiMajor: si(Math.sqrt(chi * (middle + half))),
    semiMinor: si(Math.sqrt(chi * Math.max(0, middle - half))),
    orientation: si(0.5 * Math.atan2(2 * c[0][1], c[0][0] - c[1][1])),
  };
}

/**
 * Residuals of all readings; the deletion residual is r/√(1 − leverage) (Cook and Weisberg 1982, sec. 2.2).
 * @internal
 */
export function residualsOf(
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
