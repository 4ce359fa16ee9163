import { centralDifferences, type Derivatives, inverseOfSymmetric, type Matrix } from '../numerics/index.js';
import { logLikelihood, misreadProbability, type ShotLikelihood } from './mixture-likelihood.js';

/** One unknown of a {@link fitMixture}. @internal */
export interface FitParameter {
  readonly name: string;
  readonly start: number;
  /** Normal prior about the start. */
  readonly priorSd: number;
  readonly lower: number;
  readonly upper: number;
}

/** The likelihoods of all shots at parameters near a point, the models linear about that point. @internal */
export type LikelihoodsNear = (around: readonly number[]) => LikelihoodsAt;
type LikelihoodsAt = (x: readonly number[]) => readonly ShotLikelihood[];

/** Result of {@link fitMixture}. @internal */
export interface MixtureFit {
  readonly x: readonly number[];
  /** Covariance, data and prior. */
  readonly covariance: Matrix;
  readonly atBound: readonly boolean[];
  /** Probability of each shot being a gross misread. */
  readonly misread: readonly number[];
  /** Estimate without the shots of a fold, by one Newton step from the full estimate. */
  readonly without: (left: (shot: number) => boolean) => readonly number[];
  readonly converged: boolean;
}

/** Errors are first taken three times too wide, so that a start far off is not taken for a session of misreads. */
const WIDENINGS = [3, 1];
const MAX_STEPS = 30;
/** A step shorter than this share of the prior's standard deviation ends the climb. */
const STILL = 1e-4;
/** Steps of the differences, as a share of the prior's standard deviation. */
const DIFFERENCE = 0.1;

/**
 * The parameters that make the readings of all shots most likely, each shot being either good or, with probability
 * 0.1, a gross misread (contaminated distribution: Tukey 1960, in Contributions to Probability and Statistics, 448),
 * with normal priors and bounds. Newton steps on central differences; standard errors from the sandwich H⁻¹ G H⁻¹
 * (White 1982, Econometrica 50, 1), so that they hold also when the reading errors were stated wrongly.
 * @internal
 */
export function fitMixture(near: LikelihoodsNear, parameters: readonly FitParameter[]): MixtureFit {
  let top: Top = { x: parameters.map(({ start }) => start), converged: false };
  for (const widen of WIDENINGS) top = climb(near, parameters, top.x, widen);
  const { x, converged } = top;
  const likelihoods = near(x);
  const shots = derivativesOf(likelihoods, parameters, x, 1);
  return {
    x,
    covariance: sandwich(shots, parameters),
    atBound: parameters.map(({ lower, upper }, i) => at(x, i) <= lower || at(x, i) >= upper),
    misread: likelihoods(x).map(misreadProbability),
    without: (left) => {
      const kept = shots.filter((_, shot) => !left(shot));
      return moved(x, newtonMove(kept, parameters, x), 1, parameters);
    },
    converged,
  };
}

interface Top {
  readonly x: readonly number[];
  readonly converged: boolean;
}

/** Newton steps up the posterior until they stand still. */
function climb(
  near: LikelihoodsNear,
  parameters: readonly FitParameter[],
  start: readonly number[],
  widen: number,
): Top {
  let x = start;
  for (let step = 0; step < MAX_STEPS; step++) {
    const likelihoods = near(x);
    const move = newtonMove(derivativesOf(likelihoods, parameters, x, widen), parameters, x);
    const next = uphill((y) => logPosterior(likelihoods(y), parameters, y, widen), parameters, x, move);
    const still = parameters.every(({ priorSd }, i) => Math.abs(at(next, i) - at(x, i)) < STILL * priorSd);
    x = next;
    if (still) return { x, converged: true };
  }
  return { x, converged: false };
}

/** Where the move, half of it, a quarter … first does not lead downhill; the point itself where none does. */
function uphill(
  height: (x: readonly number[]) => number,
  parameters: readonly FitParameter[],
  x: readonly number[],
  move: readonly number[],
): readonly number[] {
  const least = height(x) - 1e-12;
  for (let scale = 1; scale > 1 / 64; scale /= 2) {
    const next = moved(x, move, scale, parameters);
    if (height(next) >= least) return next;
  }
  return x;
}

/** The point a move away, held within the bounds. */
function moved(
  x: readonly number[],
  move: readonly number[],
  scale: number,
  parameters: readonly FitParameter[],
): number[] {
  return parameters.map(({ lower, upper }, i) =>
    Math.min(upper, Math.max(lower, at(x, i) + scale * at(move, i))),
  );
}

/** Logarithm of likelihood and prior, but for a constant. */
function logPosterior(
  shots: readonly ShotLikelihood[],
  parameters: readonly FitParameter[],
  x: readonly number[],
  widen: number,
): number {
  const squares = parameters.reduce(
    (sum, { start, priorSd }, i) => sum + ((at(x, i) - start) / priorSd) ** 2,
    0,
  );
  return shots.reduce((sum, shot) => sum + logLikelihood(shot, widen), -0.5 * squares);
}

/** Derivatives of each shot's log likelihood. */
function derivativesOf(
  likelihoods: LikelihoodsAt,
  parameters: readonly FitParameter[],
  x: readonly number[],
  widen: number,
): readonly Derivatives[] {
  return centralDifferences(
    (y) => likelihoods(y).map((shot) => logLikelihood(shot, widen)),
    x,
    parameters.map(({ priorSd }) => DIFFERENCE * priorSd),
  );
}

/** −H⁻¹ g, at most one prior standard deviation; where the surface bends the wrong way, along the gradient. */
function newtonMove(
  shots: readonly Derivatives[],
  parameters: readonly FitParameter[],
  x: readonly number[],
): number[] {
  const slope = parameters.map(
    ({ start, priorSd }, i) =>
      shots.reduce((sum, { gradient }) => sum + at(gradient, i), 0) - (at(x, i) - start) / priorSd ** 2,
  );
  const inverse = inverseOfSymmetric(informationOf(shots, parameters));
  return parameters.map(({ priorSd }, i) => {
    const move =
      inverse === undefined
        ? Math.sign(at(slope, i)) * 0.3 * priorSd
        : at(inverse, i).reduce((sum, value, j) => sum + value * at(slope, j), 0);
    return Math.min(priorSd, Math.max(-priorSd, move));
  });
}

/**
 * H⁻¹ G H⁻¹; the prior's own information stands for the expected square of its score. Few shots scatter by n/(n − p) too
 * little about what was fitted to them (MacKinnon J G, White H 1985, J. Econometrics 29, 305–325, HC1).
 */
function sandwich(shots: readonly Derivatives[], parameters: readonly FitParameter[]): Matrix {
  const inverse =
    inverseOfSymmetric(informationOf(shots, parameters)) ??
    diagonal(parameters.map(({ priorSd }) => priorSd ** 2));
  const few = shots.length / Math.max(1, shots.length - parameters.length);
  const scores = diagonal(parameters.map(({ priorSd }) => 1 / priorSd ** 2)).map((row, i) =>
    row.map((prior, j) =>
      shots.reduce((sum, { gradient }) => sum + few * at(gradient, i) * at(gradient, j), prior),
    ),
  );
  return product(product(inverse, scores), inverse);
}

/** −H: the observed information of shots and prior. */
function informationOf(shots: readonly Derivatives[], parameters: readonly FitParameter[]): Matrix {
  return diagonal(parameters.map(({ priorSd }) => 1 / priorSd ** 2)).map((row, i) =>
    row.map((prior, j) => shots.reduce((sum, { hessian }) => sum - at(at(hessian, i), j), prior)),
  );
}

function diagonal(values: readonly number[]): number[][] {
  return values.map((value, i) => values.map((_, j) => (i === j ? value : 0)));
}

function product(a: Matrix, b: Matrix): number[][] {
  return a.map((row) => b.map((_, j) => row.reduce((sum, value, k) => sum + value * at(at(b, k), j), 0)));
}

function at<T>(list: readonly T[], index: number): T {
  return list[index] as T;
}
