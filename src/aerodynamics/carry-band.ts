import { at, intervalOf } from './monotone.js';

/** Ball speeds of the rows [m/s]. @internal */
export const BAND_SPEEDS: readonly number[] = [25, 45, 65, 85];
/** Spin ratios at launch of the columns. @internal */
export const BAND_SPIN_RATIOS: readonly number[] = [0.02, 0.05, 0.1, 0.2, 0.35, 0.5, 0.8];
/** Standard error of carry, as a share of it. @internal */
export const BAND_SHARES: readonly (readonly number[])[] = [
  [0.006, 0.005, 0.003, 0.003, 0.011, 0.033, 0.055],
  [0.024, 0.018, 0.01, 0.01, 0.031, 0.06, 0.081],
  [0.034, 0.022, 0.015, 0.013, 0.037, 0.061, 0.078],
  [0.035, 0.02, 0.016, 0.014, 0.04, 0.071, 0.102],
];

/**
 * Standard error of the carry of the default ball, as a share of it: the jackknife over the sources its coefficients
 * were fitted to, each left out in turn, from launches of 8 to 32° in still air (`npm run refit` prints the table).
 * Straight between the nodes, undefined beyond them. It says how far the measurements leave the ball open, not how far one ball
 * differs from another: over 13 balls of 2018 carry spread by 18 m (Lyu, Kensrud, Smith and Tosaya 2018).
 * @param ballSpeed - at launch [m/s]
 * @param spinRatio - at launch
 * @internal
 */
export function carryShare(ballSpeed: number, spinRatio: number): number | undefined {
  if (!spans(BAND_SPEEDS, ballSpeed) || !spans(BAND_SPIN_RATIOS, spinRatio)) return undefined;
  const row = intervalOf(BAND_SPEEDS, ballSpeed);
  const column = intervalOf(BAND_SPIN_RATIOS, spinRatio);
  const along = shareOf(BAND_SPIN_RATIOS, column, spinRatio);
  const upper = between(BAND_SHARES[row] as readonly number[], column, along);
  const lower = between(BAND_SHARES[row + 1] as readonly number[], column, along);
  return upper + shareOf(BAND_SPEEDS, row, ballSpeed) * (lower - upper);
}

function spans(nodes: readonly number[], value: number): boolean {
  return value >= at(nodes, 0) && value <= at(nodes, nodes.length - 1);
}

/** How far along an interval of the nodes a value lies, 0 to 1. */
function shareOf(nodes: readonly number[], interval: number, value: number): number {
  const from = at(nodes, interval);
  return (value - from) / (at(nodes, interval + 1) - from);
}

function between(values: readonly number[], interval: number, share: number): number {
  return at(values, interval) + share * (at(values, interval + 1) - at(values, interval));
}
