import type { Source } from '../source.js';
import type { Angle } from '../units/index.js';

/** Names of the firmness presets, from hardest to softest. */
export type TurfName = 'baked' | 'firm' | 'normal' | 'soft' | 'wet';

/** How turf answers a landing ball. */
export interface Turf {
  /** Name for reports. */
  readonly name: string;
  /** Scale on the tilt of the crater wall. */
  readonly tiltScale: number;
  /** Largest tilt of the crater wall [rad]. */
  readonly tiltCap: Angle;
  /** Scale on the normal restitution. */
  readonly restitutionScale: number;
  /** Coulomb friction coefficient of the bounce. */
  readonly friction: number;
  /** Coefficient of rolling resistance. */
  readonly rollingResistance: number;
  /** Where the numbers come from. */
  readonly source: Source;
}
