import { frozen } from '../inputs/frozen.js';
import { described } from './described.js';
import type { AerodynamicModel, CoefficientLaw } from './model.js';
import { SPIN_DECAY } from './spin-decay.js';

/** Where the sine of the drag law has fallen back to its mean; beyond, the law would only repeat itself. */
const LAST_REYNOLDS = 290_000;
/** Beyond this the linear drag law has lost all meaning. */
const LAST_SPIN_RATIO = 1;
/**
 * Below this, under 1 rpm for a drive, lift runs straight to 0. The power law has an infinite slope at 0: a ball spinning
 * about its own path would wind round it without limit, and no step would be short enough.
 */
const FIRST_SPIN_RATIO = 1e-4;
const LIFT_SLOPE = (0.54 * FIRST_SPIN_RATIO ** 0.4) / FIRST_SPIN_RATIO;

/** Its law. @internal */
export const smitsSmithLaw: CoefficientLaw = /* @__PURE__ */ frozen(() => ({
  id: 'smits-smith-1994',
  validity: { reynolds: { min: 70_000, max: 210_000 }, spinRatio: { min: 0.08, max: 0.2 } },
  spinEntering: 'across',
  dragCoefficient: (reynolds, spinRatio) =>
    0.24 +
    0.18 * Math.min(spinRatio, LAST_SPIN_RATIO) +
    0.06 * Math.sin((Math.PI * (Math.min(reynolds, LAST_REYNOLDS) - 90_000)) / 200_000),
  liftCoefficient: (_reynolds, spinRatio) =>
    spinRatio < FIRST_SPIN_RATIO
      ? LIFT_SLOPE * spinRatio
      : 0.54 * Math.min(spinRatio, LAST_SPIN_RATIO) ** 0.4,
  spinDecay: SPIN_DECAY,
}));

/**
 * Smits and Smith (1994): CD = 0.24 + 0.18 S + 0.06 sin(π (Re − 90,000)/200,000), CL = 0.54 S^0.4.
 *
 * Constants from memory. Gives CD 0.30–0.32 at driver speed, which is too much for present balls: the tour-average
 * driver falls 23 yd short; high-spin irons carry 7–17 yd too far.
 */
export const smitsSmith1994: AerodynamicModel = /* @__PURE__ */ frozen(() =>
  described(smitsSmithLaw, {
    label: 'Smits and Smith 1994, driver conditions',
    source: {
      authors: 'A. J. Smits and D. R. Smith',
      year: 1994,
      work: 'A new aerodynamic model of a golf ball in flight, in Science and Golf II',
      confidence: 'from memory',
      note: 'Constants recalled, not read. The spin decay is corroborated by Dewhurst (2015).',
    },
    extrapolation:
      'The formulas continue down to Re 0 and S 0.0001, without a drag crisis, and up to Re 290,000 and S 1; beyond those the values there are held, but below S 0.0001 lift runs straight to 0.',
  }),
);
