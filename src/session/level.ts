import { type QuantityField, quantity } from '../inputs/field.js';
import { frozen } from '../inputs/frozen.js';
import { PERCENT } from '../units/unit.js';

/** Coverage of an interval. @internal */
export const levelField: QuantityField<''> = /* @__PURE__ */ frozen(() =>
  quantity(PERCENT, 0.5, 0.999, 0.95, 'coverage'),
);

/** Coverage where nothing is said. @internal */
export const USUAL_LEVEL = 0.95;
