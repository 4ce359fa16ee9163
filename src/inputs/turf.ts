import type { Source } from '../source.js';
import type { Angle } from '../units/index.js';
import { DEGREES, FEET, RATIO } from '../units/unit.js';
import {
  type Declared,
  type Fields,
  type QuantityField,
  quantity,
  record,
  text,
  type VariantField,
} from './field.js';
import { frozen } from './frozen.js';
import { sourceFields } from './source.js';

/** Bounce after Penner 2002: a crater wall whose tilt grows with the speed and with the angle from the normal. */
export interface PennerBounce {
  /** Which model. */
  readonly model: 'penner-2002';
  /** Scale on the tilt of the crater wall, 0 to 3. */
  readonly tiltScale: number;
  /** Largest tilt of the crater wall [rad], 0 to 1. */
  readonly tiltCap: Angle;
  /** Scale on the normal restitution, 0 to 1.9. */
  readonly restitutionScale: number;
  /** Coulomb friction coefficient of the bounce and of the skid, 0.01 to 2. */
  readonly friction: number;
}

/** Bounce after Biber et al. 2023: one tilt and one restitution for every bounce, as fitted to measured ones. */
export interface BiberBounce {
  /** Which model. */
  readonly model: 'biber-2023';
  /** Tilt of the wall that the ball meets [rad], 0 to 1. */
  readonly tilt: Angle;
  /** Normal restitution, 0 to 0.95. */
  readonly restitution: number;
  /** Coulomb friction coefficient of the bounce and of the skid, 0.01 to 2. */
  readonly friction: number;
}

/** How turf throws a ball back, by one of the two models. */
export type TurfBounce = PennerBounce | BiberBounce;

/** How turf answers a landing ball. */
export interface Turf {
  /** Name for reports. */
  readonly name: string;
  /** How it throws the ball back. */
  readonly bounce: TurfBounce;
  /** Coefficient of rolling resistance, 0.005 to 2. */
  readonly rollingResistance: number;
  /** Where the numbers come from. */
  readonly source: Source;
}

const bounceField: VariantField = /* @__PURE__ */ frozen(() => {
  const friction = quantity(RATIO, 0.01, 2, 0.4, 'friction of ball on turf');
  const penner: Declared<Omit<PennerBounce, 'model'>> = {
    tiltScale: quantity(RATIO, 0, 3, 1, 'scale on the tilt of the crater wall'),
    tiltCap: quantity(DEGREES, 0, 1, 0.56, 'largest tilt of the crater wall'),
    restitutionScale: quantity(RATIO, 0, 1.9, 1, 'scale on the restitution of the turf'),
    friction,
  };
  const biber: Declared<Omit<BiberBounce, 'model'>> = {
    tilt: quantity(DEGREES, 0, 1, 0.32, 'tilt of the turf in a bounce'),
    restitution: quantity(RATIO, 0, 0.95, 0.15, 'restitution of the turf'),
    friction,
  };
  return {
    kind: 'variant',
    by: 'model',
    cases: { 'biber-2023': biber as Fields, 'penner-2002': penner as Fields },
    label: 'bounce',
  };
});

/** Declaration of {@link Turf}. @internal */
export const turfFields: Declared<Turf> = /* @__PURE__ */ frozen(() => ({
  name: text('my fairway', 'name'),
  bounce: bounceField,
  rollingResistance: quantity(RATIO, 0.005, 2, 0.22, 'rolling resistance'),
  source: record(sourceFields, 'source'),
}));

/** Declaration of a stimpmeter reading. @internal */
export const greenSpeedField: QuantityField<'m'> = /* @__PURE__ */ frozen(() =>
  quantity(FEET, 0.3, 6.1, 3, 'green speed'),
);
