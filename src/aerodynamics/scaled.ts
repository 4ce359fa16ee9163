import { optional, type QuantityField, quantity } from '../inputs/field.js';
import { frozen } from '../inputs/frozen.js';
import { RATIO } from '../units/unit.js';
import type { CoefficientLaw, ModelWords } from './model.js';

/** Factors on the coefficients of a model. */
export interface CoefficientScale {
  /** Factor on the drag coefficient, 0.2 to 5; default 1. */
  readonly drag?: number;
  /** Factor on the lift coefficient, 0.2 to 5; default 1. */
  readonly lift?: number;
}

/** Declaration of {@link CoefficientScale}. @internal */
export const scaleFields: Readonly<
  Record<keyof CoefficientScale, QuantityField<''> & { readonly optional: true }>
> = /* @__PURE__ */ frozen(() => ({
  drag: optional(quantity(RATIO, 0.2, 5, 0.97, 'factor on the drag coefficient')),
  lift: optional(quantity(RATIO, 0.2, 5, 1.03, 'factor on the lift coefficient')),
}));

/** The law with its coefficients multiplied. @internal */
export function scaledLaw(law: CoefficientLaw, { drag = 1, lift = 1 }: CoefficientScale): CoefficientLaw {
  const { dragCoefficient, liftCoefficient } = law;
  return Object.freeze({
    ...law,
    id: `${law.id} (drag × ${drag.toFixed(3)}, lift × ${lift.toFixed(3)})`,
    dragCoefficient: (reynolds: number, spinRatio: number) => drag * dragCoefficient(reynolds, spinRatio),
    liftCoefficient: (reynolds: number, spinRatio: number) => lift * liftCoefficient(reynolds, spinRatio),
  });
}

/** The words on it, from those on the model scaled. @internal */
export function scaledWords(
  { label, source, extrapolation }: ModelWords,
  { drag = 1, lift = 1 }: CoefficientScale,
): ModelWords {
  return {
    label: `${label}, drag × ${drag.toFixed(3)}, lift × ${lift.toFixed(3)}`,
    source,
    extrapolation,
  };
}
