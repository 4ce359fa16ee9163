import { conformingBall } from '../ball/index.js';
import type { Clubhead } from '../clubhead/index.js';
import { inverseOfSymmetric, type Matrix, median } from '../numerics/index.js';
import type { Scene } from '../scene/index.js';
import { type BallReading, locateStrike, type Prior, type ReadingErrors } from '../strike/index.js';
import {
  type ImpactConstants,
  impactConstants,
  OUT,
  OUT_LENGTH,
  STATUS,
  strikeKernel,
} from '../strike/kernel.js';
import { type LocateProblem, locateProblem, UNKNOWNS } from '../strike/locate-model.js';
import type { MeasuredShot } from './measured-shot.js';
import type { ShotLikelihood } from './mixture-fit.js';

/** Errors of a misread are this many times the usual ones. */
const GROSS = 20;
/** Quadrature points each way about a located strike, a standard deviation apart, and over the whole face. */
const NEAR = 7;
const WIDE = { toe: 15, high: 11 } as const;
/** Half widths of the two in standard deviations. */
const NEAR_REACH = 3;
const WIDE_REACH = 3.5;
/** Steps of the linearisation. */
const STEP = { restitution: 0.002, grip: 0.02 } as const;

const OUTPUT: Readonly<Record<BallReading, number>> = {
  ballSpeed: OUT.ballSpeed,
  launchAngle: OUT.launchAngle,
  launchDirection: OUT.launchDirection,
  spinRate: OUT.spinRate,
  spinAxisTilt: OUT.spinAxisTilt,
};

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

/** What all shots of a calibration have in common. @internal */
export interface Setting {
  readonly head: Clubhead;
  readonly scene: Scene;
  readonly hand: 'right' | 'left';
  readonly errors: ReadingErrors;
  readonly offsets: { readonly toe: Prior; readonly high: Prior };
}

/**
 * The likelihood of one shot's launch given its measured delivery. Where the ball met the face is integrated out over
 * the face; the errors of the delivery are integrated out in linear approximation, so they widen and correlate the
 * errors of the launch.
 * @internal
 */
export function strikeShot(shot: MeasuredShot, setting: Setting): StrikeShot {
  const { head, scene, hand, errors, offsets } = setting;
  const ball = scene.ball ?? conformingBall;
  const mirror = hand === 'left' ? -1 : 1;
  const problem = locateProblem(shot, head, ball, mirror, errors, offsets);
  const { readings } = problem;
  const m = readings.length;
  const [, , clubSpeed = 0, attack = 0, path = 0, face = 0, loft = 0] = problem.priors.map(
    (prior) => prior.mean,
  );
  const indices = readings.map(({ reading }) => OUTPUT[reading]);
  const tilt = readings.findIndex(({ reading }) => reading === 'spinAxisTilt');
  const constants: { -readonly [K in keyof ImpactConstants]: ImpactConstants[K] } = {
    ...impactConstants(head, ball),
  };
  const out = new Float64Array(OUT_LENGTH);
  /** Residuals of the readings in units of their errors. */
  const residuals = (restitution: number, grip: number, { toe, high }: Node): Float64Array | undefined => {
    constants.restitution = restitution;
    constants.grip = grip;
    const status = strikeKernel(constants, clubSpeed, attack, path, face, loft, toe, high, 0, mirror, out);
    if (status !== STATUS.ok) return undefined;
    const r = new Float64Array(m);
    readings.forEach(({ value, sd }, k) => {
      const difference = value - (out[indices[k] as number] as number);
      r[k] = (k === tilt ? Math.atan2(Math.sin(difference), Math.cos(difference)) : difference) / sd;
    });
    return r;
  };
  const { nodes, mode } = nodesOf(shot, setting);
  const spread = covarianceAt(problem, mode, constants.grip);
  const inverse = inverseOfSymmetric(spread) ?? spread;
  const usual = residuals(head.restitution.atReference, constants.grip, { ...mode, logWeight: 0 });
  const logMisread =
    (-0.5 * (usual === undefined ? 0 : square(usual, inverse))) / GROSS ** 2 - m * Math.log(GROSS);

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
      const face = wholeFace(offsets).flatMap((node) => {
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
const GRIP = UNKNOWNS.indexOf('grip');

/** Fewest located strikes from which a player's pattern is learnt. */
const PATTERN = 10;

/**
 * The spread of this player's strikes over the face, learnt from the strikes that can be located: median and median
 * absolute deviation, with the uncertainty of each location added. The mean height stays as assumed: it cannot be told
 * from the tangential restitution.
 * @internal
 */
export function learntOffsets(shots: readonly MeasuredShot[], setting: Setting): Setting['offsets'] {
  const { head, hand, errors, offsets, scene } = setting;
  const located = shots.flatMap((shot) => {
    const estimate = locateStrike(shot, head, {
      hand,
      readingErrors: errors,
      priors: offsets,
      ...(scene.ball && { ball: scene.ball }),
    });
    return estimate.outcome === 'located' && estimate.alternatives.length === 0 ? [estimate] : [];
  });
  if (located.length < PATTERN) return offsets;
  const spread = (values: readonly number[], centre: number, variances: readonly number[]): number => {
    const deviation = 1.4826 * median(values.map((value) => Math.abs(value - centre)));
    return Math.max(0.002, Math.sqrt(deviation ** 2 + median(variances)));
  };
  const toes = located.map(({ strikeOffset }) => strikeOffset.toe as number);
  const highs = located.map(({ strikeOffset }) => strikeOffset.high as number);
  const toe = median(toes);
  return {
    toe: {
      mean: toe,
      standardDeviation: spread(
        toes,
        toe,
        located.map(({ covariance }) => covariance[0][0]),
      ),
    },
    high: {
      mean: offsets.high.mean,
      standardDeviation: spread(
        highs,
        median(highs),
        located.map(({ covariance }) => covariance[1][1]),
      ),
    },
  };
}

/** Covariance of the readings in units of their errors, given where the ball met the face: 1 + J Jᵀ over the delivery. */
function covarianceAt(problem: LocateProblem, { toe, high }: Place, grip: number): number[][] {
  const at: Readonly<Record<number, number>> = { 0: toe, 1: high, [GRIP]: grip };
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
  const top = Math.max(...parts.map(({ log }) => log));
  let weight = 0;
  let mean = 0;
  for (const { log, residual } of parts) {
    weight += Math.exp(log - top);
    mean += Math.exp(log - top) * residual;
  }
  return weight > 0 ? value - (sd * mean) / weight : undefined;
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

function logSumExp(values: readonly number[]): number {
  let top = -1e6;
  for (const value of values) if (value > top) top = value;
  let sum = 0;
  for (const value of values) sum += Math.exp(value - top);
  return sum > 0 ? top + Math.log(sum) : top;
}

interface Place {
  readonly toe: number;
  readonly high: number;
}

/** A point of a quadrature over the face. */
interface Node extends Place {
  /** Logarithm of prior density and area. */
  readonly logWeight: number;
}

function logPrior({ toe, high }: Setting['offsets'], at: Place): number {
  const u = (at.toe - toe.mean) / toe.standardDeviation;
  const v = (at.high - high.mean) / high.standardDeviation;
  return -0.5 * (u * u + v * v) - Math.log(2 * Math.PI * toe.standardDeviation * high.standardDeviation);
}

function wholeFace(offsets: Setting['offsets']): readonly Node[] {
  const across = (2 * WIDE_REACH * offsets.toe.standardDeviation) / (WIDE.toe - 1);
  const up = (2 * WIDE_REACH * offsets.high.standardDeviation) / (WIDE.high - 1);
  return Array.from({ length: WIDE.toe * WIDE.high }, (_, k): Node => {
    const toe = offsets.toe.mean + across * ((k % WIDE.toe) - (WIDE.toe - 1) / 2);
    const high = offsets.high.mean + up * (Math.floor(k / WIDE.toe) - (WIDE.high - 1) / 2);
    return { toe, high, logWeight: logPrior(offsets, { toe, high }) + Math.log(across * up) };
  });
}

/** Quadrature about the located strike where there is just one, else over the whole face. */
function nodesOf(
  shot: MeasuredShot,
  { head, scene, hand, errors, offsets }: Setting,
): { readonly nodes: readonly Node[]; readonly mode: Place } {
  const estimate = locateStrike(shot, head, {
    hand,
    readingErrors: errors,
    priors: offsets,
    ...(scene.ball && { ball: scene.ball }),
  });
  if (estimate.outcome !== 'located' || estimate.alternatives.length > 0) {
    return { nodes: wholeFace(offsets), mode: { toe: offsets.toe.mean, high: offsets.high.mean } };
  }
  const mode = estimate.strikeOffset;
  const [[a, b], [, d]] = estimate.covariance;
  const along = Math.sqrt(a);
  const cross = b / along;
  const rest = Math.sqrt(Math.max(1e-12, d - cross * cross));
  const pitch = (2 * NEAR_REACH) / (NEAR - 1);
  const logArea = Math.log(along * rest * pitch * pitch);
  const nodes = Array.from({ length: NEAR * NEAR }, (_, k): Node => {
    const u = pitch * ((k % NEAR) - (NEAR - 1) / 2);
    const v = pitch * (Math.floor(k / NEAR) - (NEAR - 1) / 2);
    const place = { toe: mode.toe + along * u, high: mode.high + cross * u + rest * v };
    return { ...place, logWeight: logPrior(offsets, place) + logArea };
  });
  return { nodes, mode };
}
