import { type Declared, type QuantityField, quantity } from '../inputs/field.js';
import { frozen } from '../inputs/frozen.js';
import type { Source } from '../source.js';
import { RATIO } from '../units/unit.js';
import type { AerodynamicModel } from './model.js';
import { SPIN_DECAY } from './spin-decay.js';

/** Constants of {@link fittedModern}: CL saturates, CD rises with spin and steps up below the drag crisis. */
export interface FittedModernConstants {
  /** Lift coefficient at very high spin. */
  readonly liftLimit: number;
  /** Spin ratio over which lift rises. */
  readonly liftScale: number;
  /** Drag coefficient without spin, well above the drag crisis. */
  readonly dragFloor: number;
  /** Drag added at very high spin. */
  readonly dragRise: number;
  /** Spin ratio at which half of that is reached. */
  readonly dragScale: number;
  /** Drag added far below the drag crisis. */
  readonly crisisStep: number;
  /** Reynolds number in the middle of the drag crisis. */
  readonly crisisCentre: number;
  /** Width of the drag crisis in Reynolds number. */
  readonly crisisWidth: number;
}

/**
 * The constants {@link fittedModern} ships with, rounded. `npm run refit` fits all but centre and step of the drag crisis
 * anew, and finds them again to within a tenth of a standard error.
 */
export const fittedModernConstants: FittedModernConstants = /* @__PURE__ */ frozen(() => ({
  liftLimit: 0.375,
  liftScale: 0.171,
  dragFloor: 0.195,
  dragRise: 0.18,
  dragScale: 0.21,
  crisisStep: 0.25,
  crisisCentre: 50_000,
  crisisWidth: 15_000,
}));

/** Declaration of {@link FittedModernConstants}: the coefficients stay finite and drag positive. @internal */
export const fittedConstantFields: Declared<FittedModernConstants> = /* @__PURE__ */ frozen(() => {
  const constant = (min: number, max: number, name: keyof FittedModernConstants): QuantityField<''> =>
    quantity(RATIO, min, max, fittedModernConstants[name], name);
  return {
    liftLimit: constant(0, 5, 'liftLimit'),
    liftScale: constant(0.001, 10, 'liftScale'),
    dragFloor: constant(0.01, 10, 'dragFloor'),
    dragRise: constant(0, 10, 'dragRise'),
    dragScale: constant(0.001, 10, 'dragScale'),
    crisisStep: constant(0, 10, 'crisisStep'),
    crisisCentre: constant(1, 1e7, 'crisisCentre'),
    crisisWidth: constant(1, 1e7, 'crisisWidth'),
  };
});

/** CL = liftLimit (1 − exp(−S/liftScale)). @internal */
export function fittedLift(constants: FittedModernConstants, spinRatio: number): number {
  return constants.liftLimit * (1 - Math.exp(-spinRatio / constants.liftScale));
}

/**
 * CD = dragFloor + dragRise S²/(S² + dragScale²) + crisisStep/(1 + exp((Re − crisisCentre)/crisisWidth)).
 * @internal
 */
export function fittedDrag(constants: FittedModernConstants, reynolds: number, spinRatio: number): number {
  const half = constants.dragScale * constants.dragScale;
  // Written as 1 − a/(S² + a), so that it stays finite however large S is.
  const spinShare = 1 - half / (spinRatio * spinRatio + half);
  const crisis = 1 / (1 + Math.exp((reynolds - constants.crisisCentre) / constants.crisisWidth));
  return constants.dragFloor + constants.dragRise * spinShare + constants.crisisStep * crisis;
}

/**
 * The default: a modern ball, fitted, not published.
 *
 * CL = 0.375 (1 − exp(−S/0.171));
 * CD = 0.195 + 0.180 S²/(S² + 0.21²) + 0.25/(1 + exp((Re − 50,000)/15,000)).
 *
 * Least squares over eight test-range points (see {@link testRangeLine}) and sixteen tour averages, all from memory,
 * at 1.2 kg/m³. Left over on the tour averages, rms: carry 2.9 yd, apex 1.9 yd, landing 3.5° (long irons land 3–5° too
 * shallow). Centre and height of the drag crisis were set from Lyu et al. (2020), not fitted. Its gains in thin air
 * are on the low side. `npm run refit` repeats the fit and prints every residual.
 */
export const fittedModern: AerodynamicModel = /* @__PURE__ */ frozen(() => ({
  id: 'fitted-modern',
  label: 'Modern ball, fitted to test-range points and tour averages',
  source: {
    authors: 'fairflight contributors',
    year: 2026,
    work: 'src/aerodynamics/build-time/refit-aerodynamics.ts in this repository: least squares over the test-range points of Bissonnette, Dalton and Aoyama (2004) and sixteen tour averages',
    confidence: 'fitted',
    note: 'Empirical. The rows fitted are themselves from memory; left over on the tour rows, rms: carry 2.9 yd, apex 1.9 yd, landing 3.5°.',
  },
  validity: { reynolds: { min: 70_000, max: 230_000 }, spinRatio: { min: 0.08, max: 0.6 } },
  extrapolation:
    'The formulas continue. Lift falls to 0 with the spin and saturates at 0.375; drag stays between 0.195 and 0.375 above the drag crisis and rises by up to 0.25 below it. Under S 0.08 and under Re 70,000 that is a choice of shape without data.',
  spinEntering: 'across',
  ...coefficientsOf(fittedModernConstants),
  spinDecay: SPIN_DECAY,
}));

function coefficientsOf(
  constants: FittedModernConstants,
): Pick<AerodynamicModel, 'dragCoefficient' | 'liftCoefficient'> {
  return {
    dragCoefficient: (reynolds, spinRatio) => fittedDrag(constants, reynolds, spinRatio),
    liftCoefficient: (_reynolds, spinRatio) => fittedLift(constants, spinRatio),
  };
}

/** The law of {@link fittedModern} with other constants, already checked. @internal */
export function fittedFunctions({
  id,
  label = id,
  source,
  constants,
}: {
  readonly id: string;
  readonly label?: string;
  readonly source: Source;
  readonly constants: FittedModernConstants;
}): AerodynamicModel {
  return frozen(() => ({
    ...fittedModern,
    id,
    label,
    source,
    extrapolation: 'The formulas continue.',
    ...coefficientsOf(constants),
  }));
}
