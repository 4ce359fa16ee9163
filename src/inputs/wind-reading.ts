import type { Angle, Length, Speed } from '../units/index.js';
import { DEGREES, METRES, MPH, RATIO } from '../units/unit.js';
import { choice, type Declared, optional, quantity } from './field.js';
import { FASTEST_WIND, type WindProfile, windProfileField } from './wind.js';

/** Where the wind comes from: exactly one of the three ways to say it. */
export type WindOrigin =
  | {
      /** Angle it comes from, seen from the ball: 0 straight from the target (headwind), + from the right [rad], −2π to 2π. */
      readonly from: Angle;
    }
  | {
      /** Hour it comes from on a clock face with 12 at the target, 0 to 12: 12 headwind, 3 from the right, 6 tailwind. */
      readonly clock: number;
    }
  | {
      /** Compass bearing it comes from, clockwise from north [rad], −2π to 2π. */
      readonly bearing: Angle;
      /** Compass bearing of the target, clockwise from north [rad], −2π to 2π. */
      readonly targetBearing: Angle;
    };

/** How the wind changes with height: say the terrain, or the whole profile, or neither (uniform). */
export type WindShape<Terrain extends string> =
  | { readonly terrain?: Terrain; readonly profile?: never }
  | { readonly profile?: WindProfile; readonly terrain?: never };

/** A wind as a player or a weather report gives it. */
export type WindReadingOf<Terrain extends string> = WindOrigin &
  WindShape<Terrain> & {
    /** Wind speed [m/s], 0 to 60. */
    readonly speed: Speed;
    /**
     * Height at which it was measured [m], 0.5 to 200; default the reference height of the profile, 10 m. A hand-held
     * reading is at about 2 m. Needs a terrain or a profile.
     */
    readonly measuredAt?: Length;
  };

/** Every field of a {@link WindReadingOf} side by side. @internal */
export interface WindReadingFields {
  readonly speed: Speed;
  readonly from?: Angle;
  readonly clock?: number;
  readonly bearing?: Angle;
  readonly targetBearing?: Angle;
  readonly terrain?: string;
  readonly profile?: WindProfile;
  readonly measuredAt?: Length;
}

/** Declaration of {@link WindReadingOf}, with the names of the terrains. @internal */
export function windReadingFields(terrains: readonly string[]): Declared<WindReadingFields> {
  const turn = quantity(DEGREES, -2 * Math.PI, 2 * Math.PI, 0.5, 'direction the wind comes from');
  return {
    speed: quantity(MPH, 0, FASTEST_WIND, 4, 'wind speed'),
    from: optional(turn),
    clock: optional(quantity(RATIO, 0, 12, 1.5, 'hour the wind comes from')),
    bearing: optional({ ...turn, label: 'bearing the wind comes from' }),
    targetBearing: optional({ ...turn, label: 'bearing of the target' }),
    terrain: optional(choice(terrains, 'terrain')),
    profile: optional(windProfileField),
    measuredAt: optional(quantity(METRES, 0.5, 200, 2, 'height of the wind reading')),
  };
}
