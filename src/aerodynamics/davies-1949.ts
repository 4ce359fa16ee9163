import { frozen } from '../inputs/frozen.js';
import { described } from './described.js';
import type { AerodynamicModel, CoefficientLaw } from './model.js';
import { SPIN_DECAY } from './spin-decay.js';

// Davies's tunnel: 105 ft/s, which the sources round to 32 m/s. Air density and the period's small ball are assumed.
const WIND_SPEED = 32;
const AIR_DENSITY = 1.2;
const BALL_RADIUS = 0.0411 / 2;
const NEWTONS_PER_POUND_FORCE = 4.4482216152605;

const FORCE_AT_UNIT_COEFFICIENT = 0.5 * AIR_DENSITY * Math.PI * BALL_RADIUS ** 2 * WIND_SPEED ** 2;
/** Spin in rpm at spin ratio 1 in that tunnel. */
const RPM_AT_UNIT_RATIO = ((WIND_SPEED / BALL_RADIUS) * 30) / Math.PI;
const FASTEST_SPIN_RPM = 8000;

function coefficient(poundsForce: number): number {
  return (poundsForce * NEWTONS_PER_POUND_FORCE) / FORCE_AT_UNIT_COEFFICIENT;
}

/** Its law. @internal */
export const daviesLaw: CoefficientLaw = /* @__PURE__ */ frozen(() => ({
  id: 'davies-1949',
  // One wind speed: Re 87,000 give or take a tenth.
  validity: {
    reynolds: { min: 78_000, max: 96_000 },
    spinRatio: { min: 0, max: FASTEST_SPIN_RPM / RPM_AT_UNIT_RATIO },
  },
  spinEntering: 'across',
  dragCoefficient: (_reynolds, spinRatio) =>
    coefficient(0.06 + 0.04 * Math.min((spinRatio * RPM_AT_UNIT_RATIO) / FASTEST_SPIN_RPM, 1)),
  liftCoefficient: (_reynolds, spinRatio) =>
    coefficient(0.064 * (1 - Math.exp(-0.00026 * spinRatio * RPM_AT_UNIT_RATIO))),
  spinDecay: SPIN_DECAY,
}));

/**
 * Davies (1949): balls dropped, spinning, through a 32 m/s wind tunnel. Lift 0.064 (1 − exp(−0.00026 N)) lbf, drag rising
 * in a straight line from 0.06 lbf without spin by 0.04 lbf to 8,000 rpm, N in rpm; all from memory. Turned into
 * coefficients of S by ½ ρ π r² U² and N = (30/π) S U/r with U = 32 m/s, air of 1.2 kg/m³ and the small ball of the time,
 * r = 0.0411/2 m, both assumed, and 4.4482216152605 N to the lbf.
 *
 * CL is about 0.349 (1 − exp(−3.87 S)), CD 0.327 + 0.406 S up to S 0.538.
 * The drag is Davies's own, from the same drops, rather than borrowed from another ball. It is a ball of 1949: more
 * drag and, at S 0.1, a third less lift than present ones. For history and for comparison.
 */
export const davies1949: AerodynamicModel = /* @__PURE__ */ frozen(() =>
  described(daviesLaw, {
    label: 'Davies 1949, wind-tunnel drops at one wind speed',
    source: {
      authors: 'J. M. Davies',
      year: 1949,
      work: 'The aerodynamics of golf balls, Journal of Applied Physics 20, 821–828',
      confidence: 'from memory',
      note: 'Lift and drag laws recalled from the summary, not read. Air density 1.2 kg/m³ and ball diameter 41.1 mm are assumed.',
    },
    extrapolation:
      'No dependence on Re: one wind speed was used. Above S 0.538 (8,000 rpm in the tunnel) the lift law continues to its limit 0.349 and drag is held.',
  }),
);
