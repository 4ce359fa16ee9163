import type { MeasuredShot } from '../inputs/measured-shot.js';
import { inverseOfSymmetric, logSumExp, type Matrix } from '../numerics/index.js';
import { squareStrike } from '../strike/impact.js';
import type { BallReading, LocatedStrike } from '../strike/index.js';
import { type LocateProblem, locateProblem, UNKNOWNS } from '../strike/locate-model.js';
import { createStriker } from '../strike/striker.js';
import {
  type Node,
  nodesOf,
  type Place,
  type Setting,
  type StrikePrior,
  wholeFace,
} from './calibrate-face.js';
import type { ShotLikelihood } from './mixture-likelihood.js';

/** Errors of a misread are this many times the usual ones. */
const GROSS = 20;
/** Steps of the linearisation. */
const STEP = { restitution: 0.002, grip: 0.02 } as const;

/** A shot's strike as a function of restitution and tangential restitution. @internal */
export interface StrikeShot {
  /** The likelihood near a point, with the launch from each point of the face linear in both restitutions. */
  readonly near: (restitution: number, grip: number) => (restitution: number, grip: number) => ShotLikelihood;
  /** Readings, each as predicted from all others of the same shot; undefined where one was not measured. */
  readonly predicted: (
    restitution: number,
    grip: number,
    asked: readonly BallReading[],
  ) => readonly (number | undefined)[];
}

/**
 * The likelihood of one shot's launch given its measured delivery. Where the ball met the face is integrated out over
 * the face; the errors of the delivery are integrated out in linear approximation, so they widen and correlate the
 * errors of the launch.
 * @internal
 */
export function strikeShot(
  shot: MeasuredShot,
  located: LocatedStrike | undefined,
  prior: StrikePrior,
  { head, scene, hand, errors, anyone, usual }: Setting,
): StrikeShot {
  const { ball } = scene;
  const mirror: 1 | -1 = hand === 'left' ? -1 : 1;
  const problem = locateProblem(shot, head, ball, mirror, errors, { ...anyone, ...usual });
  const { readings } = problem;
  const m = readings.length;
  const [, , clubSpeed = 0, attack = 0, path = 0, face = 0, loft = 0] = problem.priors.map(
    (prior) => prior.mean,
  );
  const tilt = readings.findIndex(({ reading }) => reading === 'spinAxisTilt');
  const striker = createStriker({ clubhead: head, ball });
  const usualGrip = striker.laws.grip;
  const input = {
    ...squareStrike(clubSpeed, attack, loft),
    clubPath: path,
    faceAngle: face,
    mirror,
  };
  /** Residuals of the readings in units of their errors. */
  const residuals = (restitution: number, grip: number, { toe, high }: Node): Float64Array | undefined => {
    striker.laws.restitution = restitution;
    striker.laws.grip = grip;
    input.toe = toe;
    input.high = high;
    const struck = striker.strike(input);
    if (typeof struck === 'string') return undefined;
    const r = new Float64Array(m);
    readings.forEach(({ reading, value, sd }, k) => {
      const difference = value - struck.launch[reading];
      r[k] = (k === tilt ? Math.atan2(Math.sin(difference), Math.cos(difference)) : difference) / sd;
    });
    return r;
  };
  const nodes = nodesOf(located, prior);
  const mode: Place = located?.strikeOffset ?? { toe: prior.pattern.toe.mean, high: prior.pattern.high.mean };
  const spread = covarianceAt(problem, mode, usualGrip);
  const inverse = inverseOfSymmetric(spread) ?? spread;
  const expected = residuals(head.restitution.atReference, usualGrip, { ...mode, logWeight: 0 });
  const logMisread =
    (-0.5 * (expected === undefined ? 0 : square(expected, inverse))) / GROSS ** 2 - m * Math.log(GROSS);

  return {
    near: (e0, t0) => {
      const lines = nodes.flatMap((node) => {
        const at = residuals(e0, t0, node);
        const more = residuals(e0 + STEP.restitution, t0, node);
        const grips = residuals(e0, t0 + STEP.grip, node);
        if (at === undefined || more === undefined || grips === undefined) return [];
        const byRestitution = more.map((value, k) => (value - (at[k] as number)) / STEP.restitution);
        const byGrip = grips.map((value, k) => (value - (at[k] as number)) / STEP.grip);
        return [{ at, byRestitution, byGrip, logWeight: node.logWeight }];
      });
      const r = new Float64Array(m);
      return (e, t) => {
        // The delivery's errors enter the spin times 1 + e_t, so the covariance follows e_t; held fixed it would pull
        // e_t down, as errors of x flatten a regression line. No determinant: the true deliveries are unknowns, not
        // draws (functional errors in variables, Fuller 1987, Measurement Error Models, sec. 1.3).
        const spreadHere = covarianceAt(problem, mode, t);
        const inverse = inverseOfSymmetric(spreadHere) ?? spreadHere;
        const squares = lines.map(({ at, byRestitution, byGrip }) => {
          for (let k = 0; k < m; k++) {
            r[k] =
              (at[k] as number) + (e - e0) * (byRestitution[k] as number) + (t - t0) * (byGrip[k] as number);
          }
          return square(r, inverse);
        });
        return {
          logMisread,
          logDensity: (widen) =>
            logSumExp(
              lines.map(({ logWeight }, k) => logWeight - 0.5 * ((squares[k] as number) / widen ** 2)),
            ) -
            m * Math.log(widen),
        };
      };
    },
    predicted: (e, t, asked) => {
      const face = wholeFace(prior).flatMap((node) => {
        const r = residuals(e, t, node);
        return r === undefined ? [] : [{ r, logWeight: node.logWeight }];
      });
      return asked.map((reading) => {
        const k = readings.findIndex((entry) => entry.reading === reading);
        return k < 0 ? undefined : predictedBy(k, spread, face, readings[k] as Reading);
      });
    },
  };
}

type Reading = LocateProblem['readings'][number];

/** Covariance of the readings in units of their errors, given where the ball met the face: 1 + J Jᵀ over the delivery. */
function covarianceAt(problem: LocateProblem, { toe, high }: Place, grip: number): number[][] {
  const at: Readonly<Record<number, number>> = { 0: toe, 1: high, [UNKNOWNS.indexOf('grip')]: grip };
  const q = problem.priors.map((_, i) => {
    const value = at[i];
    return value === undefined ? 0 : problem.standardised(i, value);
  });
  const jacobian = problem
    .jacobianAt(q)
    .slice(0, problem.readings.length)
    .map((row) => row.slice(2, 7));
  return jacobian.map((a, i) =>
    jacobian.map((b, j) => a.reduce((sum, x, k) => sum + x * (b[k] as number), i === j ? 1 : 0)),
  );
}

/** Mean of reading k given the other readings: over the face, and over the delivery by the normal conditional mean. */
function predictedBy(
  k: number,
  spread: Matrix,
  face: readonly { readonly r: Float64Array; readonly logWeight: number }[],
  { value, sd }: Reading,
): number | undefined {
  const others = spread.map((_, i) => i).filter((i) => i !== k);
  const inverse = inverseOfSymmetric(others.map((i) => others.map((j) => spread[i]?.[j] ?? 0))) ?? [];
  const slopes = others.map((_, i) =>
    others.reduce((sum, j, c) => sum + (inverse[i]?.[c] ?? 0) * (spread[k]?.[j] ?? 0), 0),
  );
  const parts = face.map(({ r, logWeight }) => {
    const rest = Float64Array.from(others, (i) => r[i] as number);
    const residual =
      (r[k] as number) - slopes.reduce((sum, slope, i) => sum + slope * (rest[i] as number), 0);
    return { log: logWeight - 0.5 * square(rest, inverse), residual };
  });
  const whole = logSumExp(parts.map(({ log }) => log));
  if (whole === Number.NEGATIVE_INFINITY) return undefined;
  const mean = parts.reduce((sum, { log, residual }) => sum + Math.exp(log - whole) * residual, 0);
  return value - sd * mean;
}

function square(r: Float64Array, inverse: Matrix): number {
  let sum = 0;
  for (let i = 0; i < r.length; i++) {
    const row = inverse[i] as readonly number[];
    let part = 0;
    for (let j = 0; j < r.length; j++) part += (row[j] as number) * (r[j] as number);
    sum += part * (r[i] as number);
  }
  return sum;
}
