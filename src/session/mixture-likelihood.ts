import { logSumExp } from '../numerics/index.js';

/** What one shot says about the parameters. @internal */
export interface ShotLikelihood {
  /** Logarithm of the probability density of the readings; errors widened by `widen`. */
  readonly logDensity: (widen: number) => number;
  /** Logarithm of the density of a gross misread, the same for all parameters. */
  readonly logMisread: number;
}

/** Share of gross misreads expected. */
const MISREADS = 0.1;

/** Logarithm of the density of a shot that is either good or a gross misread. @internal */
export function logLikelihood({ logDensity, logMisread }: ShotLikelihood, widen: number): number {
  return logSumExp([Math.log(1 - MISREADS) + logDensity(widen), Math.log(MISREADS) + logMisread]);
}

/** Probability that a shot is a gross misread. @internal */
export function misreadProbability({ logDensity, logMisread }: ShotLikelihood): number {
  const odds = Math.exp(Math.log((1 - MISREADS) / MISREADS) + logDensity(1) - logMisread);
  return 1 / (1 + odds);
}
