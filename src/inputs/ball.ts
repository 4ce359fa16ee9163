import type { Source } from '../source.js';
import type { Length, Mass, MomentOfInertia } from '../units/index.js';
import { G_CM2, GRAMS, MILLIMETRES } from '../units/unit.js';
import { type Declared, quantity, record, text } from './field.js';
import { frozen } from './frozen.js';
import { sourceFields } from './source.js';

/** A golf ball as a rigid sphere. */
export interface Ball {
  /** Name for reports. */
  readonly name: string;
  /** Mass [kg], 0.01 to 0.1. */
  readonly mass: Mass;
  /** Radius [m], 0.01 to 0.04. */
  readonly radius: Length;
  /** Moment of inertia about any diameter [kg m²], 1e-7 to 1e-4. */
  readonly inertia: MomentOfInertia;
  /** Where the numbers come from. */
  readonly source: Source;
}

/** Declaration of {@link Ball}. @internal */
export const ballFields: Declared<Ball> = /* @__PURE__ */ frozen(() => ({
  name: text('my ball', 'name'),
  mass: quantity(GRAMS, 0.01, 0.1, 0.04593, 'mass of the ball'),
  radius: quantity(MILLIMETRES, 0.01, 0.04, 0.021335, 'radius of the ball'),
  inertia: quantity(G_CM2, 1e-7, 1e-4, 8.36e-6, 'moment of inertia of the ball'),
  source: record(sourceFields, 'source'),
}));
