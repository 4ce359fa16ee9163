import type { Source } from '../source.js';
import type { Angle } from '../units/index.js';
import { DEGREES, FEET, RATIO } from '../units/unit.js';
import { type Declared, type QuantityField, quantity, record, text } from './field.js';
import { frozen } from './frozen.js';
import { sourceFields } from './source.js';

/** How turf answers a landing ball. */
export interface Turf {
  /** Name for reports. */
  readonly name: string;
  /** Scale on the tilt of the crater wall, 0 to 3. */
  readonly tiltScale: number;
  /** Largest tilt of the crater wall [rad], 0 to 1. */
  readonly tiltCap: Angle;
  /** Scale on the normal restitution, 0 to 1.9. */
  readonly restitutionScale: number;
  /** Coulomb friction coefficient of the bounce, 0.01 to 2. */
  readonly friction: number;
  /** Coefficient of rolling resistance, 0.005 to 2. */
  readonly rollingResistance: number;
  /** Where the numbers come from. */
  readonly source: Source;
}

/** Declaration of {@link Turf}. @internal */
export const turfFields: Declared<Turf> = /* @__PURE__ */ frozen(() => ({
  name: text('my fairway', 'name'),
  tiltScale: quantity(RATIO, 0, 3, 1, 'scale on the tilt of the crater wall'),
  tiltCap: quantity(DEGREES, 0, 1, 0.56, 'largest tilt of the crater wall'),
  restitutionScale: quantity(RATIO, 0, 1.9, 1, 'scale on the restitution of the turf'),
  friction: quantity(RATIO, 0.01, 2, 0.4, 'friction of ball on turf'),
  rollingResistance: quantity(RATIO, 0.005, 2, 0.22, 'rolling resistance'),
  source: record(sourceFields, 'source'),
}));

/** Declaration of a stimpmeter reading. @internal */
export const greenSpeedField: QuantityField<'m'> = /* @__PURE__ */ frozen(() =>
  quantity(FEET, 0.3, 6.1, 3, 'green speed'),
);
