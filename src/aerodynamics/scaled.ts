import { requireWithin } from '../errors.js';
import type { AerodynamicModel } from './model.js';

/**
 * A model with its drag and lift multiplied by constant factors: a ball that flies a little differently.
 * @param scale - Factors, 0.2 to 5; default 1.
 * @throws {@link FairflightError} for a factor outside the range.
 * @example scaledModel(fittedModern, { drag: 0.97 })
 */
export function scaledModel(
  model: AerodynamicModel,
  scale: { readonly drag?: number; readonly lift?: number },
): AerodynamicModel {
  const drag = requireWithin('scale.drag', scale.drag ?? 1, 0.2, 5, '');
  const lift = requireWithin('scale.lift', scale.lift ?? 1, 0.2, 5, '');
  const { dragCoefficient, liftCoefficient } = model;
  return {
    ...model,
    id: `${model.id} (drag × ${drag.toFixed(3)}, lift × ${lift.toFixed(3)})`,
    label: `${model.label}, drag × ${drag.toFixed(3)}, lift × ${lift.toFixed(3)}`,
    dragCoefficient: (reynolds, spinRatio) => drag * dragCoefficient(reynolds, spinRatio),
    liftCoefficient: (reynolds, spinRatio) => lift * liftCoefficient(reynolds, spinRatio),
  };
}
