import { type Declared, optional, quantity } from '../inputs/field.js';
import { frozen } from '../inputs/frozen.js';
import { RATIO } from '../units/unit.js';
import type { AerodynamicModel } from './model.js';

/** Factors on the coefficients of a model. */
export interface CoefficientScale {
  /** Factor on the drag coefficient, 0.2 to 5; default 1. */
  readonly drag?: number;
  /** Factor on the lift coefficient, 0.2 to 5; default 1. */
  readonly lift?: number;
}

/** Declaration of {@link CoefficientScale}. @internal */
export const scaleFields: Declared<CoefficientScale> = /* @__PURE__ */ frozen(() => ({
  drag: optional(quantity(RATIO, 0.2, 5, 0.97, 'factor on the drag coefficient')),
  lift: optional(quantity(RATIO, 0.2, 5, 1.03, 'factor on the lift coefficient')),
}));

/** The model with its coefficients multiplied. @internal */
export function scaledFunctions(
  model: AerodynamicModel,
  { drag = 1, lift = 1 }: CoefficientScale,
): AerodynamicModel {
  const { dragCoefficient, liftCoefficient } = model;
  return Object.freeze({
    ...model,
    id: `${model.id} (drag × ${drag.toFixed(3)}, lift × ${lift.toFixed(3)})`,
    label: `${model.label}, drag × ${drag.toFixed(3)}, lift × ${lift.toFixed(3)}`,
    dragCoefficient: (reynolds: number, spinRatio: number) => drag * dragCoefficient(reynolds, spinRatio),
    liftCoefficient: (reynolds: number, spinRatio: number) => lift * liftCoefficient(reynolds, spinRatio),
  });
}
