import { frozen } from '../inputs/frozen.js';
import type { AerodynamicModel } from './model.js';
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
/** Coefficients × 10,000. */
const DRAG = [
  [
    3624, 3806, 3954, 4070, 4153, 4203, 4120, 3960, 3876, 4100, 4288, 4445, 4575, 4682, 4772, 4848, 4914,
    4976, 5039, 5105, 5180,
  ],
  [
    2885, 3102, 3288, 3443, 3566, 3658, 3719, 3749, 3766, 3854, 4003, 4082, 4153, 4215, 4269, 4314, 4350,
    4377, 4395, 4405, 4406,
  ],
  [
    2765, 2853, 2937, 3018, 3095, 3169, 3240, 3308, 3372, 3433, 3490, 3544, 3595, 3643, 3687, 3728, 3765,
    3799, 3830, 3858, 3882,
  ],
  [
    2529, 2590, 2649, 2708, 2765, 2822, 2876, 2930, 2983, 3034, 3084, 3133, 3180, 3227, 3272, 3316, 3358,
    3400, 3440, 3479, 3517,
  ],
  [
    2472, 2507, 2543, 2580, 2617, 2655, 2693, 2732, 2772, 2811, 2852, 2893, 2934, 2976, 3019, 3062, 3105,
    3149, 3194, 3239, 3285,
  ],
  [
    2481, 2498, 2516, 2535, 2556, 2578, 2602, 2627, 2653, 2681, 2710, 2741, 2772, 2806, 2840, 2876, 2913,
    2952, 2992, 3034, 3076,
  ],
  [
    2467, 2485, 2504, 2522, 2541, 2560, 2579, 2599, 2619, 2639, 2659, 2680, 2701, 2722, 2743, 2765, 2787,
    2809, 2831, 2854, 2877,
  ],
  [
    2470, 2486, 2502, 2518, 2534, 2550, 2566, 2582, 2598, 2614, 2630, 2646, 2662, 2678, 2694, 2710, 2726,
    2742, 2758, 2774, 2790,
  ],
  [
    2470, 2484, 2497, 2511, 2524, 2538, 2551, 2565, 2578, 2592, 2605, 2619, 2632, 2646, 2659, 2673, 2686,
    2700, 2713, 2727, 2740,
  ],
  [
    2470, 2484, 2497, 2511, 2524, 2538, 2551, 2565, 2578, 2592, 2605, 2619, 2632, 2646, 2659, 2673, 2686,
    2700, 2713, 2727, 2740,
  ],
];
const LIFT = [
  [
    1040, 1936, 2608, 3090, 3418, 3624, 3743, 3808, 3854, 3915, 4005, 4010, 4026, 4050, 4084, 4130, 4192,
    4271, 4371, 4494, 4644,
  ],
  [
    1846, 2318, 2694, 2986, 3205, 3362, 3470, 3541, 3584, 3614, 3640, 3696, 3748, 3797, 3845, 3894, 3947,
    4004, 4069, 4143, 4227,
  ],
  [
    2460, 2590, 2715, 2835, 2947, 3049, 3140, 3217, 3280, 3325, 3347, 3380, 3412, 3440, 3468, 3496, 3527,
    3563, 3607, 3660, 3724,
  ],
  [
    1984, 2089, 2191, 2289, 2384, 2475, 2562, 2644, 2722, 2795, 2862, 2925, 2982, 3033, 3078, 3119, 3149,
    3184, 3233, 3300, 3393,
  ],
  [
    1762, 1824, 1886, 1949, 2011, 2073, 2135, 2197, 2259, 2322, 2384, 2446, 2508, 2570, 2632, 2695, 2757,
    2819, 2881, 2943, 3005,
  ],
  [
    1538, 1603, 1668, 1731, 1794, 1856, 1916, 1976, 2035, 2092, 2149, 2205, 2259, 2313, 2366, 2418, 2469,
    2518, 2567, 2615, 2662,
  ],
  [
    1418, 1476, 1533, 1589, 1646, 1702, 1757, 1813, 1868, 1923, 1977, 2032, 2086, 2139, 2193, 2246, 2298,
    2351, 2403, 2455, 2507,
  ],
  [
    1360, 1405, 1450, 1494, 1539, 1584, 1629, 1673, 1718, 1763, 1807, 1852, 1897, 1941, 1986, 2031, 2076,
    2120, 2165, 2210, 2254,
  ],
  [
    1280, 1321, 1362, 1403, 1444, 1485, 1526, 1567, 1608, 1649, 1690, 1731, 1772, 1813, 1854, 1895, 1936,
    1977, 2018, 2059, 2100,
  ],
  [
    1276, 1324, 1367, 1404, 1436, 1464, 1488, 1508, 1524, 1539, 1582, 1624, 1666, 1707, 1749, 1791, 1833,
    1875, 1916, 1958, 2000,
  ],
];

function surfaceOf(table: readonly (readonly number[])[]): (reynolds: number, spin: number) => number {
  return monotoneSurface(
    AIR_SPEEDS.map((speed) => speed * REYNOLDS_PER_SPEED),
    Array.from({ length: SPINS }, (_, i) => (FIRST_SPIN + 200 * i) * spinPerRpm()),
    table.map((row) => row.map((value) => value / 1e4)),
  );
}

function coefficients(): Pick<AerodynamicModel, 'dragCoefficient' | 'liftCoefficient'> {
  const [drag, lift] = [surfaceOf(DRAG), surfaceOf(LIFT)];
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

/**
 * Bearman and Harvey (1976): a model of a ball of their time in a wind tunnel, from the table of 10 air speeds and 21
 * spins. Monotone piecewise cubics in Re and in S Re, which is proportional to the spin (Fritsch and Carlson 1980),
 * so that the values of the table are met and none lies outside those around it.
 *
 * The table is second-hand and looks smoothed: the last two columns of drag are equal. At 14 and 22 m/s lift falls away
 * below 2,600 rpm.
 */
export const bearmanHarvey1976: AerodynamicModel = /* @__PURE__ */ frozen(() => ({
  id: 'bearman-harvey-1976',
  label: 'Bearman and Harvey 1976, wind tunnel, table of speed and spin',
  source: {
    authors: 'P. W. Bearman and J. K. Harvey',
    year: 1976,
    work: 'Golf ball aerodynamics, Aeronautical Quarterly 27, 112–122',
    confidence: 'second-hand',
    note: 'As tabulated in a university course on numerical methods; probably smoothed from the figures. Re for air of 15 °C at sea level, assumed.',
  },
  validity: { reynolds: { min: 40_000, max: 257_000 }, spinRatio: { min: 0.05, max: 0.98 } },
  extrapolation:
    'Beyond its slowest and fastest air speed and its highest spin the values at the edge are held. Below 2,000 rpm drag is held and lift runs straight to 0 at S 0. A given Re has only the spin ratios of 2,000 to 6,000 rpm: S 0.33 to 0.98 at 13.7 m/s, 0.05 to 0.15 at 88.1 m/s.',
  spinEntering: 'across',
  ...coefficients(),
  spinDecay: SPIN_DECAY,
}));
