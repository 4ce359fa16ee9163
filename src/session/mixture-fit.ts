import { inverseOfSymmetric, type Matrix } from '../numerics/index.js';

/** One unknown of a {@link fitMixture}. @internal */
export interface FitParameter {
  readonly name: string;
  readonly start: number;
  /** Normal prior about the start. */
  readonly priorSd: number;
  readonly lower: number;
  readonly upper: number;
}

/** What one shot says about the parameters. @internal */
export interface ShotLikelihood {
  /** Logarithm of the probability density of the readings; errors widened by `widen`. */
  readonly logDensity: (widen: number) => number;
  /** Logarithm of the density of a gross misread, the same for all parameters. */
  readonly logMisread: number;
}

/** The likelihoods of all shots at parameters near a point, the models linear about that point. @internal */
export type LikelihoodsNear = (
  around: readonly number[],
) => (x: readonly number[]) => readonly ShotLikelihood[];

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

/** Share of gross misreads expected. */
const MISREADS = 0.1;
/** Errors are first taken three times too wide, so that a start far off is not taken for a session of misreads. */
const WIDENINGS = [3, 1];
const MAX_STEPS = 30;

/**
 * The parameters that make the readings of all shots most likely, each shot being either good or, with probability
 * 0.1, a gross misread (contaminated distribution: Tukey 1960, in Contributions to Probability and Statistics, 448),
 * with normal priors and bounds. Newton steps on central differences; standard errors from the sandwich H⁻¹ G H⁻¹
 * (White 1982, Econometrica 50, 1), so that they hold also when the reading errors were stated wrongly.
 * @internal
 */
export function fitMixture(near: LikelihoodsNear, parameters: readonly FitParameter[]): MixtureFit {
  const n = parameters.length;
  const steps = parameters.map((p) => 0.1 * p.priorSd);
  const held = (x: readonly number[]): number[] =>
    x.map((value, i) => {
      const { lower, upper } = parameters[i] as FitParameter;
      return Math.min(upper, Math.max(lower, value));
    });
  type Likelihoods = ReturnType<LikelihoodsNear>;
  const shots = (likelihoods: Likelihoods, x: readonly number[], widen: number): number[] =>
    likelihoods(x).map(({ logDensity, logMisread }) => {
      const good = Math.log(1 - MISREADS) + logDensity(widen);
      const bad = Math.log(MISREADS) + logMisread;
      const top = Math.max(good, bad);
      return top + Math.log(Math.exp(good - top) + Math.exp(bad - top));
    });
  const prior = (x: readonly number[]): number =>
    -0.5 *
    x.reduce(
      (sum, value, i) => sum + ((value - at(parameters, i).start) / at(parameters, i).priorSd) ** 2,
      0,
    );
  const total = (likelihoods: Likelihoods, x: readonly number[], widen: number): number =>
    shots(likelihoods, x, widen).reduce((sum, value) => sum + value, prior(x));

  let x = parameters.map((p) => p.start);
  let converged = false;
  for (const widen of WIDENINGS) {
    converged = false;
    for (let step = 0; step < MAX_STEPS && !converged; step++) {
      const local = near(x);
      const best = total(local, x, widen);
      const { gradient, hessian } = derivatives(local, x, widen);
      const move = newtonMove(
        sum(gradient).map((g, i) => g + priorSlope(x, i)),
        withPrior(sumMatrices(hessian)),
      );
      let scale = 1;
      let next = x;
      for (; scale > 1 / 64; scale /= 2) {
        next = held(x.map((value, i) => value + scale * at(move, i)));
        if (total(local, next, widen) >= best - 1e-12) break;
      }
      if (scale <= 1 / 64) next = x;
      converged = next.every((value, i) => Math.abs(value - at(x, i)) < 1e-4 * at(parameters, i).priorSd);
      x = next;
    }
  }

  const last = near(x);
  const { gradient, hessian } = derivatives(last, x, 1);
  const inverse = inverseOfSymmetric(negative(withPrior(sumMatrices(hessian)))) ?? diagonal();
  // Scores of the shots and of the prior; the prior's own information stands for its expected square.
  const meat = parameters.map((p, i) =>
    parameters.map(
      (_, j) => gradient.reduce((s, g) => s + at(g, i) * at(g, j), 0) + (i === j ? 1 / p.priorSd ** 2 : 0),
    ),
  );
  return {
    x,
    covariance: product(product(inverse, meat), inverse),
    atBound: x.map((value, i) => value <= at(parameters, i).lower || value >= at(parameters, i).upper),
    misread: last(x).map(({ logDensity, logMisread }) => {
      const odds = Math.exp(Math.log((1 - MISREADS) / MISREADS) + logDensity(1) - logMisread);
      return 1 / (1 + odds);
    }),
    without: (left) => {
      const kept = gradient.map((_, i) => i).filter((i) => !left(i));
      const g = sum(kept.map((i) => at(gradient, i))).map((value, i) => value + priorSlope(x, i));
      const h = withPrior(sumMatrices(kept.map((i) => at(hessian, i))));
      const move = newtonMove(g, h);
      return held(x.map((value, i) => value + at(move, i)));
    },
    converged,
  };

  /** Gradient and Hessian of each shot's log likelihood by central differences. */
  function derivatives(
    likelihoods: Likelihoods,
    around: readonly number[],
    widen: number,
  ): { gradient: number[][]; hessian: number[][][] } {
    const shifted = (...changes: readonly (readonly [number, number])[]): number[] => {
      const y = [...around];
      for (const [i, sign] of changes) y[i] = at(y, i) + sign * at(steps, i);
      return shots(likelihoods, y, widen);
    };
    const middle = shots(likelihoods, around, widen);
    const up = parameters.map((_, i) => shifted([i, 1]));
    const down = parameters.map((_, i) => shifted([i, -1]));
    const cross = new Map<string, number[]>();
    for (let i = 0; i < n; i++) {
      for (let j = 0; j < i; j++) {
        const [pp, mm, pm, mp] = [
          shifted([i, 1], [j, 1]),
          shifted([i, -1], [j, -1]),
          shifted([i, 1], [j, -1]),
          shifted([i, -1], [j, 1]),
        ];
        cross.set(
          `${j},${i}`,
          middle.map(
            (_, s) => (at(pp, s) + at(mm, s) - at(pm, s) - at(mp, s)) / (4 * at(steps, i) * at(steps, j)),
          ),
        );
      }
    }
    return {
      gradient: middle.map((_, s) =>
        parameters.map((__, i) => (at(at(up, i), s) - at(at(down, i), s)) / (2 * at(steps, i))),
      ),
      hessian: middle.map((centre, s) =>
        parameters.map((_, i) =>
          parameters.map((__, j) =>
            i === j
              ? (at(at(up, i), s) - 2 * centre + at(at(down, i), s)) / at(steps, i) ** 2
              : (cross.get(i < j ? `${i},${j}` : `${j},${i}`)?.[s] ?? 0),
          ),
        ),
      ),
    };
  }

  function priorSlope(around: readonly number[], i: number): number {
    const { start, priorSd } = at(parameters, i);
    return -(at(around, i) - start) / priorSd ** 2;
  }

  function withPrior(h: Matrix): number[][] {
    return h.map((row, i) =>
      row.map((value, j) => value - (i === j ? 1 / at(parameters, i).priorSd ** 2 : 0)),
    );
  }

  function diagonal(): number[][] {
    return parameters.map((p, i) => parameters.map((_, j) => (i === j ? p.priorSd ** 2 : 0)));
  }

  /** −H⁻¹ g, at most one prior standard deviation; where the surface bends the wrong way, along the gradient. */
  function newtonMove(g: readonly number[], h: Matrix): number[] {
    const inverseHessian = inverseOfSymmetric(negative(h));
    const move =
      inverseHessian === undefined
        ? g.map((value, i) => Math.sign(value) * 0.3 * at(parameters, i).priorSd)
        : inverseHessian.map((row) => row.reduce((s, value, j) => s + value * at(g, j), 0));
    return move.map((value, i) => {
      const most = at(parameters, i).priorSd;
      return Math.min(most, Math.max(-most, value));
    });
  }

  function sum(rows: readonly (readonly number[])[]): number[] {
    return parameters.map((_, i) => rows.reduce((s, row) => s + at(row, i), 0));
  }

  function sumMatrices(matrices: readonly Matrix[]): number[][] {
    return parameters.map((_, i) =>
      parameters.map((__, j) => matrices.reduce((s, matrix) => s + at(at(matrix, i), j), 0)),
    );
  }
}

function negative(matrix: Matrix): number[][] {
  return matrix.map((row) => row.map((value) => -value));
}

function product(a: Matrix, b: Matrix): number[][] {
  return a.map((row) => b.map((_, j) => row.reduce((s, value, k) => s + value * at(at(b, k), j), 0)));
}

function at<T>(list: readonly T[], index: number): T {
  return list[index] as T;
}
