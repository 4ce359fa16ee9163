import { LOWEST_HEIGHT, windFoot, windRatio } from '../../air/wind-ratio.js';
import type { WindProfile } from '../../inputs/wind.js';

/**
 * A wind that changes with height as the kernel takes it: a straight line up to the kink of its law, above that cubics in
 * the height over the law's singularity, sixteen to each doubling of it. @internal
 */
export interface WindTable {
  /** What the law is, from {@link WIND_HEAD} on; then the cells: where each begins, and a cubic in the height over that. */
  readonly cells: Float64Array;
  /** A height in 32 bits, and the same bits as a whole number: the upper ones say which cell it is in. */
  readonly above: Float32Array;
  readonly bits: Int32Array;
}

/** Height of the kink, of the singularity [m], and slope below the kink [1/m]: what a table begins with. @internal */
export const WIND_HEAD: readonly string[] = ['kink', 'displaced', 'lowSlope'];
/** Numbers before the cells: those, and what else tells laws apart. @internal */
export const WIND_HEAD_NUMBERS = 5;
/** Numbers of a cell; bits of a height that do not say which one it is in; and cells, a power of 2. @internal */
export const WIND_NUMBERS = 5;
export const WIND_SHIFT = 19;
export const WIND_CELLS = 512;
/** Heights over the singularity at which the cells begin and end [m], powers of 2; and the lowest that is asked for. @internal */
const LOWEST_ABOVE: number = 2 ** -18;
export const HIGHEST_ABOVE = 1024;
export const LEAST_ABOVE = 4e-6;
/** Finest tolerance [m] the table is exact enough for: it errs by less than 1e-7 of the wind. @internal */
export const FINEST_BY_TABLE = 2e-6;
/** Share of the kink's height over the singularity within which a height counts as the kink's. @internal */
export const NEAR_KINK = 0.003;

/** A table to be set; before that, of no wind. @internal */
export function windTable(): WindTable {
  const above = new Float32Array(1);
  const cells = new Float64Array(WIND_HEAD_NUMBERS + WIND_NUMBERS * WIND_CELLS);
  return { cells, above, bits: new Int32Array(above.buffer) };
}

/** A profile that changes with height. @internal */
export type ChangingProfile = Exclude<WindProfile, { readonly kind: 'uniform' }>;

/** Sets a table to a profile, within 1e-7 of its law. That costs as much as three flights for a logarithm and ten for a power, unless it is set to it already. @internal */
export function setWind({ cells, above, bits }: WindTable, profile: ChangingProfile): void {
  const log = profile.kind === 'log';
  const displaced = log ? (profile.displacement ?? 0) : 0;
  const kink = log ? windFoot(profile) : LOWEST_HEIGHT;
  const exponent = log ? 0 : profile.exponent;
  // The law in units of its own: ln(height/z0) times this, or the power of the height in metres.
  const unit = windRatio(profile, log ? displaced + Math.E * profile.roughness : 1);
  const head = [kink, displaced, windRatio(profile, kink) / kink, unit, exponent];
  if (head.every((value, i) => value === cells[i])) return;
  cells.set(head);
  // The law goes on below its kink, since a step may end a little beyond.
  const ratioAt = (y: number): number => unit * (log ? Math.log(y / (kink - displaced)) : y ** exponent);
  const slopeAt = (y: number, ratio: number): number => (log ? unit : exponent * ratio) / y;
  let width = LOWEST_ABOVE / 16;
  let low = ratioAt(LOWEST_ABOVE);
  for (let foot = LOWEST_ABOVE; foot < HIGHEST_ABOVE; foot += width) {
    if (foot === 32 * width) width *= 2;
    above[0] = foot;
    const high = ratioAt(foot + width);
    const slope = slopeAt(foot, low);
    const secant = (high - low) / width;
    const bend = (slope + slopeAt(foot + width, high) - 2 * secant) / width;
    const at = WIND_HEAD_NUMBERS + ((bits[0]! >> WIND_SHIFT) & (WIND_CELLS - 1)) * WIND_NUMBERS;
    cells.set([foot, low, slope, (secant - slope) / width - bend, bend / width], at);
    low = high;
  }
}
