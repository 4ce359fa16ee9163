import { LOWEST_HEIGHT, windFoot, windRatio } from '../../air/wind-ratio.js';
import type { WindProfile } from '../../inputs/wind.js';
import type { FlightProblem } from '../problem.js';
import type { KernelFrame } from './frame.js';

/** Cells of the table of a wind that changes with height, even in the fourth root of the height over its singularity. @internal */
export const WIND_CELLS = 512;
/** Cells for each m^(1/4): the table reaches 680 m, and its last cell is there to say so. @internal */
export const CELLS_PER_ROOT = 100;

/** Share of the law's length within which a height counts as that of the kink. */
const NEAR = 0.003;

/** A law of wind and height as the kernel takes it. @internal */
export interface CompiledWind {
  /** Height below which the ratio is a straight line [m]. */
  readonly kink: number;
  /** Height of the law's singularity [m]. */
  readonly displaced: number;
  /** Slope of the ratio below the kink [1/m]. */
  readonly lowSlope: number;
  /** Four numbers of a cubic for each cell, by Hermite's data: within 1e-8 of the law above 1 cm. */
  readonly table: Float64Array;
}

/** A profile that changes with height. */
type Changing = Exclude<WindProfile, { readonly kind: 'uniform' }>;

/** Compiles profiles, and remembers the last: it costs about three flights. @internal */
export function windCompiler(): (profile: Changing) => CompiledWind {
  let last: Changing | undefined;
  let wind: CompiledWind | undefined;
  return (profile) => {
    if (wind === undefined || last === undefined || !sameNumbers(profile, last)) {
      wind = compileWind(profile);
      last = profile;
    }
    return wind;
  };
}

function sameNumbers(a: Changing, b: Changing): boolean {
  if (a === b) return true;
  if (a.referenceHeight !== b.referenceHeight) return false;
  if (a.kind === 'power') return b.kind === 'power' && a.exponent === b.exponent;
  return b.kind === 'log' && a.roughness === b.roughness && a.displacement === b.displacement;
}

/** Compiles a profile. @internal */
export function compileWind(profile: Changing): CompiledWind {
  const log = profile.kind === 'log';
  const displaced = log ? (profile.displacement ?? 0) : 0;
  const kink = log ? windFoot(profile) : LOWEST_HEIGHT;
  // ln(height/z0) counted in the law's own units, and the power law at one metre.
  const unit = windRatio(profile, log ? displaced + Math.E * profile.roughness : 1);
  const table = new Float64Array(4 * WIND_CELLS).fill(Number.NaN);
  let [low, lowSlope] = [Number.NaN, Number.NaN];
  for (let cell = 0; cell < WIND_CELLS; cell++) {
    // The law goes on below its kink, since the end of a step may lie a little beyond.
    const above = (cell / CELLS_PER_ROOT) ** 4;
    const value = log ? unit * Math.log(above / profile.roughness) : unit * above ** profile.exponent;
    const slope = (4 * (log ? unit : profile.exponent * value)) / cell;
    if (cell > 1) {
      const d = value - low;
      table.set([low, lowSlope, 3 * d - 2 * lowSlope - slope, lowSlope + slope - 2 * d], 4 * (cell - 1));
    }
    [low, lowSlope] = [value, slope];
  }
  return { kink, displaced, lowSlope: log ? 0 : windRatio(profile, kink) / kink, table };
}

/** A wind that does not change with height, for which a kernel reads no table. @internal */
export const NO_TABLE: Float64Array = new Float64Array(4 * WIND_CELLS);

/** Packs a wind (order in build-time/kernel-layout.ts) from `at` on; undefined is uniform. @internal */
export function packShear(
  wind: CompiledWind | undefined,
  { windAlong, windAcross }: FlightProblem,
  { axis1x, axis1z, axis2x, axis2z, axis3x, axis3z }: KernelFrame,
  p: Float64Array,
  at: number,
): void {
  p[at] = wind === undefined ? 0 : 1;
  if (wind === undefined) return;
  p[at + 1] = wind.kink;
  p[at + 2] = NEAR * (wind.kink - wind.displaced);
  p[at + 3] = wind.displaced;
  p[at + 4] = wind.lowSlope;
  p[at + 5] = axis1x * windAlong + axis1z * windAcross;
  p[at + 6] = axis2x * windAlong + axis2z * windAcross;
  p[at + 7] = axis3x * windAlong + axis3z * windAcross;
}
