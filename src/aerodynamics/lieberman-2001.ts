import { frozen } from '../inputs/frozen.js';
import { described } from './described.js';
import type { AerodynamicModel, CoefficientLaw } from './model.js';
import { SPIN_DECAY } from './spin-decay.js';

/** Ends of the launches fitted. */
const REYNOLDS = { min: 81_000, max: 200_000 };
const SPIN_RATIO = { min: 0.04, max: 0.22 };

/** Re/100,000, held at the ends: 1/Re² runs away below, and no launch was faster. */
function held(reynolds: number): number {
  return Math.min(Math.max(reynolds, REYNOLDS.min), REYNOLDS.max) / 1e5;
}

function fittedLift(reynolds: number, s: number): number {
  const re = held(reynolds);
  return 0.086 + s * (0.6463 + 1.4789 * s) - 0.0122 / (re * re);
}

/** Its law. @internal */
export const liebermanLaw: CoefficientLaw = /* @__PURE__ */ frozen(() => ({
  id: 'lieberman-2001',
  validity: { reynolds: REYNOLDS, spinRatio: SPIN_RATIO },
  spinEntering: 'across',
  dragCoefficient: (reynolds, spinRatio) => {
    const s = Math.min(Math.max(spinRatio, SPIN_RATIO.min), SPIN_RATIO.max);
    return 0.2028 + s * (-0.2159 + 2.8466 * s) + 0.0165 * held(reynolds);
  },
  liftCoefficient: (reynolds, spinRatio) =>
    spinRatio < SPIN_RATIO.min
      ? (spinRatio / SPIN_RATIO.min) * fittedLift(reynolds, SPIN_RATIO.min)
      : fittedLift(reynolds, Math.min(spinRatio, SPIN_RATIO.max)),
  spinDecay: SPIN_DECAY,
}));

/**
 * Lieberman, Smits, Quintavalla, Thomas and Winfield (2001): an indoor test range, 42 launches of one ball. With Re in
 * units of 100,000: CL = 0.0860 + 0.6463 S + 1.4789 S² − 0.0122/Re²,
 * CD = 0.2028 − 0.2159 S + 2.8466 S² + 0.0165 Re.
 *
 * Good for a drive until the ball slows; irons spin beyond its range from the start.
 */
export const lieberman2001: AerodynamicModel = /* @__PURE__ */ frozen(() =>
  described(liebermanLaw, {
    label: 'Lieberman et al. 2001, indoor test range, 42 launches',
    source: {
      authors: 'Lieberman, Smits, Quintavalla, Thomas and Winfield',
      year: 2001,
      work: 'US patent 6,186,002 B1',
      locus: 'example of the regression',
      confidence: 'second-hand',
      note: 'Constants read in a summary that quotes them.',
    },
    extrapolation:
      'Re is held at 81,000 and 200,000, S at 0.22: the squares run away beyond. Below S 0.04 lift runs straight to 0 at S 0 and drag is held.',
  }),
);
