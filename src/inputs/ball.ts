import type { Source } from '../source.js';
import type { Length, Mass, MomentOfInertia, Temperature } from '../units/index.js';
import { CELSIUS, G_CM2, GRAMS, MILLIMETRES } from '../units/unit.js';
import { type Declared, optional, quantity, record, text } from './field.js';
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
  /**
   * Temperature of the ball itself [K], 253.15 to 323.15; left out, it plays no part. A strike gives the ball 0.045 % more
   * speed per kelvin above 20 °C, ± 0.03 %, and less below: derived from trade rows, not measured. A launch is taken as it
   * is, because the speed measured has the ball's temperature in it, and so is the bounce.
   */
  readonly temperature?: Temperature;
  /** Where the numbers come from. */
  readonly source: Source;
}

/** Declaration of {@link Ball}. @internal */
export const ballFields: Declared<Ball> = /* @__PURE__ */ frozen(() => ({
  name: text('my ball', 'name'),
  mass: quantity(GRAMS, 0.01, 0.1, 0.04593, 'mass of the ball'),
  radius: quantity(MILLIMETRES, 0.01, 0.04, 0.021335, 'radius of the ball'),
  inertia: quantity(G_CM2, 1e-7, 1e-4, 8.36e-6, 'moment of inertia of the ball'),
  temperature: optional(quantity(CELSIUS, 253.15, 323.15, 293.15, 'temperature of the ball')),
  source: record(sourceFields, 'source'),
}));
