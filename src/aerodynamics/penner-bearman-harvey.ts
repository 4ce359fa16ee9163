import { frozen } from '../inputs/frozen.js';
import { described } from './described.js';
import type { AerodynamicModel, CoefficientLaw } from './model.js';
import { SPIN_DECAY } from './spin-decay.js';

/** Below this spin ratio the fit must not be used: its lift would not vanish with the spin. */
const FIRST_SPIN_RATIO = 0.05;
/** Beyond this the linear laws have lost all meaning. */
const LAST_SPIN_RATIO = 1;

function fittedLift(spinRatio: number): number {
  return 0.083 + 0.885 * spinRatio;
}

/** Its law. @internal */
export const pennerLaw: CoefficientLaw = /* @__PURE__ */ frozen(() => ({
  id: 'penner-bearman-harvey',
  validity: { reynolds: { min: 60_000, max: 240_000 }, spinRatio: { min: FIRST_SPIN_RATIO, max: 0.3 } },
  spinEntering: 'across',
  dragCoefficient: (_reynolds, spinRatio) => 0.171 + 0.62 * Math.min(spinRatio, LAST_SPIN_RATIO),
  liftCoefficient: (_reynolds, spinRatio) =>
    spinRatio < FIRST_SPIN_RATIO
      ? (spinRatio / FIRST_SPIN_RATIO) * fittedLift(FIRST_SPIN_RATIO)
      : fittedLift(Math.min(spinRatio, LAST_SPIN_RATIO)),
  spinDecay: SPIN_DECAY,
}));

/**
 * Penner's straight lines through the wind-tunnel data of Bearman and Harvey (1976):
 * CD = 0.171 + 0.62 S, CL = 0.083 + 0.885 S, no dependence on Re.
 *
 * Constants from memory. Good from a driver to about a 5-iron; above S 0.3 drag runs away and short irons fall up to
 * 32 yd short. The fitted lift does not vanish at S = 0, so below S 0.05 lift runs straight to 0 instead.
 */
export const pennerBearmanHarvey: AerodynamicModel = /* @__PURE__ */ frozen(() =>
  described(pennerLaw, {
    label: 'Penner 2001, linear fit of Bearman and Harvey 1976',
    source: {
      authors:
        'A. R. Penner, after P. W. Bearman and J. K. Harvey (1976), Aeronautical Quarterly 27, 112–122',
      year: 2001,
      work: 'The physics of golf: the optimum loft of a driver, American Journal of Physics 69, 563–568; also Reports on Progress in Physics 66 (2003), 131–171',
      confidence: 'from memory',
      note: 'Constants recalled, not read; moderate confidence.',
    },
    extrapolation:
      'Below S 0.05 lift runs straight to 0 at S 0 and the drag line continues. Above S 0.3 the lines continue to S 1 and the values there are held. No dependence on Re, so no drag crisis.',
  }),
);
