import { frozen } from '../inputs/frozen.js';
import { described } from './described.js';
import type { AerodynamicModel, CoefficientLaw } from './model.js';
import { SPIN_DECAY } from './spin-decay.js';
import { monotoneSurface } from './surface.js';

/** Air of the tunnel, which the table does not state: 15 °C at sea level, assumed [s/m]. */
const REYNOLDS_PER_SPEED = (1.225 * 2 * 0.02134) / 1.789e-5;
/** S Re, which is proportional to the spin alone, at 1 rpm. */
const spinPerRpm = (): number => (Math.PI / 30) * 0.02134 * REYNOLDS_PER_SPEED;

/** Air speeds of the rows [m/s]. */
const AIR_SPEEDS = [13.7, 21.6, 29.9, 38.4, 46.9, 55.2, 63.1, 71.9, 80.2, 88.1];
/** Spins of the columns, in steps of 200 rpm. */
const FIRST_SPIN = 2000;
const SPINS = 21;
/** Coefficients × 10,000: a row to each air speed, its first value and what each 200 rpm more add. */
const DRAG = [
  [3624, 182, 148, 116, 83, 50, -83, -160, -84, 224, 188, 157, 130, 107, 90, 76, 66, 62, 63, 66, 75],
  [2885, 217, 186, 155, 123, 92, 61, 30, 17, 88, 149, 79, 71, 62, 54, 45, 36, 27, 18, 10, 1],
  [2765, 88, 84, 81, 77, 74, 71, 68, 64, 61, 57, 54, 51, 48, 44, 41, 37, 34, 31, 28, 24],
  [2529, 61, 59, 59, 57, 57, 54, 54, 53, 51, 50, 49, 47, 47, 45, 44, 42, 42, 40, 39, 38],
  [2472, 35, 36, 37, 37, 38, 38, 39, 40, 39, 41, 41, 41, 42, 43, 43, 43, 44, 45, 45, 46],
  [2481, 17, 18, 19, 21, 22, 24, 25, 26, 28, 29, 31, 31, 34, 34, 36, 37, 39, 40, 42, 42],
  [2467, 18, 19, 18, 19, 19, 19, 20, 20, 20, 20, 21, 21, 21, 21, 22, 22, 22, 22, 23, 23],
  [2470, 16, 16, 16, 16, 16, 16, 16, 16, 16, 16, 16, 16, 16, 16, 16, 16, 16, 16, 16, 16],
  [2470, 14, 13, 14, 13, 14, 13, 14, 13, 14, 13, 14, 13, 14, 13, 14, 13, 14, 13, 14, 13],
  [2470, 14, 13, 14, 13, 14, 13, 14, 13, 14, 13, 14, 13, 14, 13, 14, 13, 14, 13, 14, 13],
];
const LIFT = [
  [1040, 896, 672, 482, 328, 206, 119, 65, 46, 61, 90, 5, 16, 24, 34, 46, 62, 79, 100, 123, 150],
  [1846, 472, 376, 292, 219, 157, 108, 71, 43, 30, 26, 56, 52, 49, 48, 49, 53, 57, 65, 74, 84],
  [2460, 130, 125, 120, 112, 102, 91, 77, 63, 45, 22, 33, 32, 28, 28, 28, 31, 36, 44, 53, 64],
  [1984, 105, 102, 98, 95, 91, 87, 82, 78, 73, 67, 63, 57, 51, 45, 41, 30, 35, 49, 67, 93],
  [1762, 62, 62, 63, 62, 62, 62, 62, 62, 63, 62, 62, 62, 62, 62, 63, 62, 62, 62, 62, 62],
  [1538, 65, 65, 63, 63, 62, 60, 60, 59, 57, 57, 56, 54, 54, 53, 52, 51, 49, 49, 48, 47],
  [1418, 58, 57, 56, 57, 56, 55, 56, 55, 55, 54, 55, 54, 53, 54, 53, 52, 53, 52, 52, 52],
  [1360, 45, 45, 44, 45, 45, 45, 44, 45, 45, 44, 45, 45, 44, 45, 45, 45, 44, 45, 45, 44],
  [1280, 41, 41, 41, 41, 41, 41, 41, 41, 41, 41, 41, 41, 41, 41, 41, 41, 41, 41, 41, 41],
  [1276, 48, 43, 37, 32, 28, 24, 20, 16, 15, 43, 42, 42, 41, 42, 42, 42, 42, 41, 42, 42],
];

/** Coefficients, a row to each air speed [m/s] and in it one to each spin [rpm]. @internal */
export function tunnelTable(): Readonly<Record<'airSpeeds' | 'spins', readonly number[]>> &
  Readonly<Record<'drag' | 'lift', readonly (readonly number[])[]>> {
  const whole = (table: typeof DRAG): number[][] =>
    table.map((row) => row.map((_, column) => row.slice(0, column + 1).reduce((sum, x) => sum + x) / 1e4));
  const spins = Array.from({ length: SPINS }, (_, i) => FIRST_SPIN + 200 * i);
  return { airSpeeds: AIR_SPEEDS, spins, drag: whole(DRAG), lift: whole(LIFT) };
}

function surfaces(): Record<'drag' | 'lift', (reynolds: number, spin: number) => number> {
  const { airSpeeds, spins, drag, lift } = tunnelTable();
  const reynolds = airSpeeds.map((speed) => speed * REYNOLDS_PER_SPEED);
  const spin = spins.map((rpm) => rpm * spinPerRpm());
  return { drag: monotoneSurface(reynolds, spin, drag), lift: monotoneSurface(reynolds, spin, lift) };
}

function coefficients(): Pick<AerodynamicModel, 'dragCoefficient' | 'liftCoefficient'> {
  const { drag, lift } = surfaces();
  const slowest = FIRST_SPIN * spinPerRpm();
  const first = (AIR_SPEEDS[0] as number) * REYNOLDS_PER_SPEED;
  const last = (AIR_SPEEDS.at(-1) as number) * REYNOLDS_PER_SPEED;
  return {
    dragCoefficient: (reynolds, spinRatio) => {
      const re = Math.min(Math.max(reynolds, first), last);
      return drag(re, spinRatio * re);
    },
    liftCoefficient: (reynolds, spinRatio) => {
      const re = Math.min(Math.max(reynolds, first), last);
      const spin = spinRatio * re;
      return spin < slowest ? (spin / slowest) * lift(re, slowest) : lift(re, spin);
    },
  };
}

/** Its law. @internal */
export const bearmanHarveyLaw: CoefficientLaw = /* @__PURE__ */ frozen(() => ({
  id: 'bearman-harvey-1976',
  validity: { reynolds: { min: 40_000, max: 257_000 }, spinRatio: { min: 0.05, max: 0.98 } },
  spinEntering: 'across',
  ...coefficients(),
  spinDecay: SPIN_DECAY,
}));

/**
 * Bearman and Harvey (1976): a model of a ball of their time in a wind tunnel, from the table of 10 air speeds and 21
 * spins. Monotone piecewise cubics (Fritsch and Carlson 1980) in S Re, which is proportional to the spin, along each air
 * speed, then in Re across the air speeds, so that the values of the table are met and none lies outside those around it.
 * An air speed U stands for Re = U × 1.225 × 2 × 0.02134/1.789e-5, a spin ω for S Re = ω × 0.02134 × 1.225 × 2 × 0.02134/1.789e-5.
 *
 * The table is second-hand and looks smoothed: the last two columns of drag are equal. At 14 and 22 m/s lift falls away
 * below 2,600 rpm.
 */
export const bearmanHarvey1976: AerodynamicModel = /* @__PURE__ */ frozen(() =>
  described(bearmanHarveyLaw, {
    label: 'Bearman and Harvey 1976, wind tunnel, table of speed and spin',
    source: {
      authors: 'P. W. Bearman and J. K. Harvey',
      year: 1976,
      work: 'Golf ball aerodynamics, Aeronautical Quarterly 27, 112–122',
      confidence: 'second-hand',
      note: 'As tabulated in a university course on numerical methods; probably smoothed from the figures. Re for air of 15 °C at sea level, assumed.',
    },
    extrapolation:
      'Beyond its slowest and fastest air speed and its highest spin the values at the edge are held. Below 2,000 rpm drag is held and lift runs straight to 0 at S 0. A given Re has only the spin ratios of 2,000 to 6,000 rpm: S 0.33 to 0.98 at 13.7 m/s, 0.05 to 0.15 at 88.1 m/s.',
  }),
);
