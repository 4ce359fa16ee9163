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
/** Coefficients × 10,000, a row to each air speed: its first value, what 200 rpm more add, and by how much each further step adds more. */
const DRAG = [
  [3624, 182, -34, -32, -33, -33, -133, -77, 76, 308, -36, -31, -27, -23, -17, -14, -10, -4, 1, 3, 9],
  [2885, 217, -31, -31, -32, -31, -31, -31, -13, 71, 61, -70, -8, -9, -8, -9, -9, -9, -9, -8, -9],
  [2765, 88, -4, -3, -4, -3, -3, -3, -4, -3, -4, -3, -3, -3, -4, -3, -4, -3, -3, -3, -4],
  [2529, 61, -2, 0, -2, 0, -3, 0, -1, -2, -1, -1, -2, 0, -2, -1, -2, 0, -2, -1, -1],
  [2472, 35, 1, 1, 0, 1, 0, 1, 1, -1, 2, 0, 0, 1, 1, 0, 0, 1, 1, 0, 1],
  [2481, 17, 1, 1, 2, 1, 2, 1, 1, 2, 1, 2, 0, 3, 0, 2, 1, 2, 1, 2, 0],
  [2467, 18, 1, -1, 1, 0, 0, 1, 0, 0, 0, 1, 0, 0, 0, 1, 0, 0, 0, 1, 0],
  [2470, 16, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0],
  [2470, 14, -1, 1, -1, 1, -1, 1, -1, 1, -1, 1, -1, 1, -1, 1, -1, 1, -1, 1, -1],
  [2470, 14, -1, 1, -1, 1, -1, 1, -1, 1, -1, 1, -1, 1, -1, 1, -1, 1, -1, 1, -1],
];
const LIFT = [
  [1040, 896, -224, -190, -154, -122, -87, -54, -19, 15, 29, -85, 11, 8, 10, 12, 16, 17, 21, 23, 27],
  [1846, 472, -96, -84, -73, -62, -49, -37, -28, -13, -4, 30, -4, -3, -1, 1, 4, 4, 8, 9, 10],
  [2460, 130, -5, -5, -8, -10, -11, -14, -14, -18, -23, 11, -1, -4, 0, 0, 3, 5, 8, 9, 11],
  [1984, 105, -3, -4, -3, -4, -4, -5, -4, -5, -6, -4, -6, -6, -6, -4, -11, 5, 14, 18, 26],
  [1762, 62, 0, 1, -1, 0, 0, 0, 0, 1, -1, 0, 0, 0, 0, 1, -1, 0, 0, 0, 0],
  [1538, 65, 0, -2, 0, -1, -2, 0, -1, -2, 0, -1, -2, 0, -1, -1, -1, -2, 0, -1, -1],
  [1418, 58, -1, -1, 1, -1, -1, 1, -1, 0, -1, 1, -1, -1, 1, -1, -1, 1, -1, 0, 0],
  [1360, 45, 0, -1, 1, 0, 0, -1, 1, 0, -1, 1, 0, -1, 1, 0, 0, -1, 1, 0, -1],
  [1280, 41, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0],
  [1276, 48, -5, -6, -5, -4, -4, -4, -4, -1, 28, -1, 0, -1, 1, 0, 0, 0, -1, 1, 0],
];

/** Coefficients, a row to each air speed [m/s] and in it one to each spin [rpm]. @internal */
export function tunnelTable(): Readonly<Record<'airSpeeds' | 'spins', readonly number[]>> &
  Readonly<Record<'drag' | 'lift', readonly (readonly number[])[]>> {
  const whole = (table: typeof DRAG): number[][] =>
    table.map(([value = 0, ...steps]) => {
      let step = 0;
      return [value, ...steps.map((more) => (value += step += more))].map((x) => x / 1e4);
    });
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
