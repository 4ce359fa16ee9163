import { type Declared, type QuantityField, quantity } from '../inputs/field.js';
import { frozen } from '../inputs/frozen.js';
import { RATIO } from '../units/unit.js';
import { described } from './described.js';
import type { AerodynamicModel, CoefficientLaw } from './model.js';
import { SPIN_DECAY } from './spin-decay.js';

/**
 * Constants of {@link fittedModern}. Lift comes in at once with the spin, rises on and is lost at low Re unless the
 * ball spins fast; drag rises with spin and steps up below the drag crisis, less so with spin.
 */
export interface FittedModernConstants {
  /** Lift coefficient that comes in with the first spin, 0 to 10. */
  readonly liftOnset: number;
  /** Spin ratio over which it comes in, 0.001 to 10. */
  readonly liftOnsetScale: number;
  /** Lift coefficient added at very high spin, 0 to 10. */
  readonly liftRise: number;
  /** Spin ratio over which that rises, 0.001 to 10. */
  readonly liftScale: number;
  /** Reynolds number at which a ball of little spin has lost half its lift, 1 to 1e7. */
  readonly lossCentre: number;
  /** Width of that loss in Reynolds number, 1 to 1e7. */
  readonly lossWidth: number;
  /** Spin ratio at which half of the loss is left, 0.001 to 10. */
  readonly lossSpinRatio: number;
  /** Drag coefficient without spin, well above the drag crisis, 0.01 to 10. */
  readonly dragFloor: number;
  /** Drag added at very high spin, 0 to 10. */
  readonly dragRise: number;
  /** Spin ratio at which half of that is reached, 0.001 to 10. */
  readonly dragScale: number;
  /** Drag added without spin far below the drag crisis, 0 to 10. */
  readonly crisisStep: number;
  /** Reynolds number in the middle of the drag crisis, 1 to 1e7. */
  readonly crisisCentre: number;
  /** Width of the drag crisis in Reynolds number, 1 to 1e7. */
  readonly crisisWidth: number;
  /** Spin ratio at which half of the step is left, 0.001 to 10. */
  readonly crisisSpinRatio: number;
}

/**
 * The constants {@link fittedModern} ships with, as `npm run refit` prints them. Six are fitted: `liftOnset` to
 * measured coefficients alone, `liftRise`, `liftScale`, `dragFloor`, `dragRise` and `dragScale` to coefficients and
 * flights. The others are set: the loss of lift lies between Re 50,000 and 75,000, where the boundary layer turns
 * (Lyu, Kensrud and Smith 2020), and half of it is gone at S 0.35 (gone by S 0.24 to 0.5 in the patents and there); the
 * drag crisis of a ball without spin as in Bearman and Harvey (1976), from memory, and none at Re 63,000, S 0.2 or at
 * Re 40,000, S 0.33, as in their table; `liftOnsetScale` lies below the smallest spin ratio measured, 0.02.
 */
export const fittedModernConstants: FittedModernConstants = /* @__PURE__ */ frozen(() => ({
  liftOnset: 0.0395,
  liftOnsetScale: 0.012,
  liftRise: 0.4493,
  liftScale: 0.2958,
  lossCentre: 62_500,
  lossWidth: 6250,
  lossSpinRatio: 0.35,
  dragFloor: 0.2059,
  dragRise: 0.2616,
  dragScale: 0.3024,
  crisisStep: 0.25,
  crisisCentre: 50_000,
  crisisWidth: 5000,
  crisisSpinRatio: 0.2,
}));

/** Declaration of {@link FittedModernConstants}: the coefficients stay finite and drag positive. @internal */
export const fittedConstantFields: Declared<FittedModernConstants> = /* @__PURE__ */ frozen(() => {
  const share = (name: keyof FittedModernConstants, min = 0): QuantityField<''> =>
    quantity(RATIO, min, 10, fittedModernConstants[name], name);
  const spinRatio = (name: keyof FittedModernConstants): QuantityField<''> => share(name, 0.001);
  const reynolds = (name: keyof FittedModernConstants): QuantityField<''> =>
    quantity(RATIO, 1, 1e7, fittedModernConstants[name], name);
  return {
    liftOnset: share('liftOnset'),
    liftOnsetScale: spinRatio('liftOnsetScale'),
    liftRise: share('liftRise'),
    liftScale: spinRatio('liftScale'),
    lossCentre: reynolds('lossCentre'),
    lossWidth: reynolds('lossWidth'),
    lossSpinRatio: spinRatio('lossSpinRatio'),
    dragFloor: share('dragFloor', 0.01),
    dragRise: share('dragRise'),
    dragScale: spinRatio('dragScale'),
    crisisStep: share('crisisStep'),
    crisisCentre: reynolds('crisisCentre'),
    crisisWidth: reynolds('crisisWidth'),
    crisisSpinRatio: spinRatio('crisisSpinRatio'),
  };
});

/** Share of a low-Re effect: 1 far below the centre and without spin, half at the centre, half at the spin ratio. */
function laminarShare(
  reynolds: number,
  centre: number,
  width: number,
  spinRatio: number,
  halfAt: number,
): number {
  const spin = spinRatio / halfAt;
  const sixth = spin * spin * spin * spin * spin * spin;
  return 1 / (1 + Math.exp((reynolds - centre) / width)) / (1 + sixth);
}

/**
 * CL = [liftOnset (1 − exp(−S/liftOnsetScale)) + liftRise (1 − exp(−S/liftScale))]
 * × [1 − 1/(1 + exp((Re − lossCentre)/lossWidth))/(1 + (S/lossSpinRatio)⁶)].
 * @internal
 */
export function fittedLift(constants: FittedModernConstants, reynolds: number, spinRatio: number): number {
  const { liftOnset, liftOnsetScale, liftRise, liftScale, lossCentre, lossWidth, lossSpinRatio } = constants;
  const whole =
    liftOnset * (1 - Math.exp(-spinRatio / liftOnsetScale)) +
    liftRise * (1 - Math.exp(-spinRatio / liftScale));
  return whole * (1 - laminarShare(reynolds, lossCentre, lossWidth, spinRatio, lossSpinRatio));
}

/**
 * CD = dragFloor + dragRise S²/(S² + dragScale²)
 * + crisisStep/(1 + exp((Re − crisisCentre)/crisisWidth))/(1 + (S/crisisSpinRatio)⁶).
 * @internal
 */
export function fittedDrag(constants: FittedModernConstants, reynolds: number, spinRatio: number): number {
  const { dragFloor, dragRise, dragScale, crisisStep, crisisCentre, crisisWidth, crisisSpinRatio } =
    constants;
  const half = dragScale * dragScale;
  // Written as 1 − a/(S² + a), so that it stays finite however large S is.
  const spinShare = 1 - half / (spinRatio * spinRatio + half);
  const crisis = laminarShare(reynolds, crisisCentre, crisisWidth, spinRatio, crisisSpinRatio);
  return dragFloor + dragRise * spinShare + crisisStep * crisis;
}

/** Its law. @internal */
export const fittedLaw: CoefficientLaw = /* @__PURE__ */ frozen(() => ({
  id: 'fitted-modern',
  validity: { reynolds: { min: 70_000, max: 230_000 }, spinRatio: { min: 0.02, max: 0.6 } },
  spinEntering: 'across',
  ...coefficientsOf(fittedModernConstants),
  spinDecay: SPIN_DECAY,
}));

/**
 * The default: a modern ball, fitted, not published. Its law stands at `fittedLift` and `fittedDrag`, its
 * constants in {@link fittedModernConstants}.
 *
 * Least squares over 52 coefficients measured on test ranges and in wind tunnels by six sources, then over those and
 * sixteen tour averages (from memory) and two flights of US patent 6,729,976 (2004). Left over: chi-square 0.65 per
 * coefficient; carry 3.3 yd, apex 2.4 yd and landing 3.7° rms on the tour averages (long irons land 3–5° too shallow).
 * `npm run refit` repeats the fit, prints every residual, and says what each source would have been told by the others.
 */
export const fittedModern: AerodynamicModel = /* @__PURE__ */ frozen(() =>
  described(fittedLaw, {
    label: 'Modern ball, fitted to measured coefficients and to flights',
    source: {
      authors: 'fairflight contributors',
      year: 2026,
      work: 'Least squares over measured coefficients of six sources (2001–2020), sixteen tour averages and two flights of a patent: npm run refit in this repository',
      confidence: 'fitted',
      note: 'Empirical. Left over: chi-square 0.65 per coefficient; on the tour averages, from memory, rms of carry 3.3 yd, apex 2.4 yd, landing 3.7°.',
    },
    extrapolation:
      'The formulas continue. Lift falls to 0 with the spin and rises to at most 0.489; below Re 75,000 it is lost at small spin ratios. Drag stays between 0.206 and 0.468 above the drag crisis and rises by up to 0.25 below it, the more the less the ball spins. Under S 0.02 and under Re 70,000 that is a choice of shape with little data.',
  }),
);

function coefficientsOf(
  constants: FittedModernConstants,
): Pick<AerodynamicModel, 'dragCoefficient' | 'liftCoefficient'> {
  return {
    dragCoefficient: (reynolds, spinRatio) => fittedDrag(constants, reynolds, spinRatio),
    liftCoefficient: (reynolds, spinRatio) => fittedLift(constants, reynolds, spinRatio),
  };
}

/** The law of {@link fittedModern} with other constants, already checked. @internal */
export function lawOfConstants({
  id,
  constants,
}: {
  readonly id: string;
  readonly constants: FittedModernConstants;
}): CoefficientLaw {
  return frozen(() => ({ ...fittedLaw, id, ...coefficientsOf(constants) }));
}
