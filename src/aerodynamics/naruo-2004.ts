import { frozen } from '../inputs/frozen.js';
import { described } from './described.js';
import type { AerodynamicModel, CoefficientLaw } from './model.js';
import { SPIN_DECAY } from './spin-decay.js';

/** Below this the fit must not be used: its lift would not vanish with the spin. */
const FIRST_SPIN_RATIO = 0.03;
/** Last spin ratio measured; the quartics turn down soon after. */
const LAST_SPIN_RATIO = 1.13;

function fittedLift(s: number): number {
  return 0.0616 + s * (1.25 + s * (-1.644 + s * (1.006 - 0.2158 * s)));
}

/** Its law. @internal */
export const naruoLaw: CoefficientLaw = /* @__PURE__ */ frozen(() => ({
  id: 'naruo-2004',
  validity: {
    reynolds: { min: 71_000, max: 125_000 },
    spinRatio: { min: FIRST_SPIN_RATIO, max: LAST_SPIN_RATIO },
  },
  spinEntering: 'across',
  dragCoefficient: (_reynolds, spinRatio) => {
    const s = Math.min(spinRatio, LAST_SPIN_RATIO);
    return 0.2049 + s * (0.2148 + s * (1.098 + s * (-1.76 + 0.751 * s)));
  },
  liftCoefficient: (_reynolds, spinRatio) =>
    spinRatio < FIRST_SPIN_RATIO
      ? (spinRatio / FIRST_SPIN_RATIO) * fittedLift(FIRST_SPIN_RATIO)
      : fittedLift(Math.min(spinRatio, LAST_SPIN_RATIO)),
  spinDecay: SPIN_DECAY,
}));

/**
 * Naruo, Mizota and Shimozono (2004): a present-day ball in a wind tunnel. Two quartics in S:
 * CL = −0.2158 S⁴ + 1.006 S³ − 1.644 S² + 1.250 S + 0.0616,
 * CD = 0.7510 S⁴ − 1.760 S³ + 1.098 S² + 0.2148 S + 0.2049.
 *
 * Measured to S 1.13, far beyond other sources, but at Re 71,000 to 125,000 only: the slower half of an iron's flight.
 */
export const naruo2004: AerodynamicModel = /* @__PURE__ */ frozen(() =>
  described(naruoLaw, {
    label: 'Naruo, Mizota and Shimozono 2004, present-day ball in a wind tunnel',
    source: {
      authors: 'T. Naruo, T. Mizota and H. Shimozono',
      year: 2004,
      work: 'Transactions of the JSME, series B, 70, 2371',
      confidence: 'second-hand',
      note: 'Polynomials read in a summary that quotes them.',
    },
    extrapolation:
      'Below S 0.03 lift runs straight to 0 at S 0 and the drag quartic continues. Above S 1.13 the values there are held. No dependence on Re, so no drag crisis.',
  }),
);
