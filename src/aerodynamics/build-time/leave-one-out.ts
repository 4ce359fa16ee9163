import { defaultAir } from '../../air/index.js';
import { balls } from '../../ball/index.js';
import type { Launch } from '../../inputs/launch.js';
import { degrees, metresPerSecond, si } from '../../units/index.js';
import { BAND_SPEEDS, BAND_SPIN_RATIOS } from '../carry-band.js';
import type { FittedModernConstants } from '../fitted-modern.js';
import { flyBy, refit, rms } from './fit.js';
import { type FitSource, SOURCES } from './fit-rows.js';

/** The constants fitted without each source in turn. */
export function leaveOneOut(): ReadonlyMap<FitSource, FittedModernConstants> {
  return new Map(SOURCES.map((source) => [source, refit(source).fit.constants]));
}

/**
 * Standard error of a mean estimate from its values without each source in turn: the jackknife of Efron and Tibshirani
 * 1993, An Introduction to the Bootstrap, eq. 11.5.
 */
export function jackknifeError(values: readonly number[]): number {
  const n = values.length;
  const mean = values.reduce((sum, value) => sum + value, 0) / n;
  const squares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  return Math.sqrt(((n - 1) / n) * squares);
}

/** Error of the carry of a launch, as a share of it, by the constants without each source. */
export function carryError(
  all: readonly FittedModernConstants[],
  ballSpeed: number,
  spinRatio: number,
  launchAngle: number,
): number {
  const launch: Launch = {
    ballSpeed: metresPerSecond(ballSpeed),
    launchAngle: degrees(launchAngle),
    spinRate: si((spinRatio * ballSpeed) / balls.conforming.radius),
  };
  const carries = all.map((constants) => flyBy(constants, launch, defaultAir).carry);
  return jackknifeError(carries) / (carries.reduce((sum, carry) => sum + carry, 0) / carries.length);
}

/** Launch angles a cell of the table stands for [degrees]. */
const LAUNCH_ANGLES = [8, 14, 22, 32];
/** Spin ratios it stands for: its own and some on the way to its neighbours, as shares of the way. */
const ON_THE_WAY = [-0.5, -0.25, 0, 0.25, 0.5];

/**
 * The shares of carry that `carryBand` holds: a row to each ball speed, a column to each spin ratio, to three decimals.
 * Each is the root mean square over the launch angles and spin ratios it stands for, so that a spin ratio at which the
 * sources happen to cross is not taken for one at which they agree.
 */
export function bandShares(all: readonly FittedModernConstants[]): readonly (readonly number[])[] {
  return BAND_SPEEDS.map((speed) =>
    BAND_SPIN_RATIOS.map((_, column) => {
      const errors = ON_THE_WAY.flatMap((share) =>
        LAUNCH_ANGLES.map((angle) => carryError(all, speed, spinRatioNear(column, share), angle)),
      );
      return Number(rms(errors).toFixed(3));
    }),
  );
}

function spinRatioNear(column: number, share: number): number {
  const at = BAND_SPIN_RATIOS[column] ?? Number.NaN;
  const neighbour = BAND_SPIN_RATIOS[column + Math.sign(share)] ?? at;
  return at + Math.abs(share) * (neighbour - at);
}
