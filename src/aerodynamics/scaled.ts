import { requireWithin } from '../errors.js';
import type { AerodynamicModel } from './model.js';

/** Factors on the coefficients of a model. */
export interface CoefficientScale {
  /** Factor on the drag coefficient, 0.2 to 5; default 1. */
  readonly drag?: number;
  /** Factor on the lift coefficient, 0.2 to 5; default 1. */
  readonly lift?: number;
}

/** A checked copy of the factors. @throws FairflightError naming the factor @internal */
export function checkScale({ drag, lift }: CoefficientScale, field: string): CoefficientScale {
  return {
    ...(drag !== undefined && { drag: requireWithin(`${field}.drag`, drag, 0.2, 5, '') }),
    ...(lift !== undefined && { lift: requireWithin(`${field}.lift`, lift, 0.2, 5, '') }),
  };
}

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
