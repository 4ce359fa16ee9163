import {
  type Angle,
  type AngularSpeed,
  type Length,
  type Speed,
  toDegrees,
  toFeet,
  toKph,
  toMetres,
  toMph,
  toRpm,
  toYards,
} from 'fairflight/units';

/** A quantity's unit as shown, and the way to it from SI. */
export interface Shown<Q> {
  readonly unit: string;
  readonly of: (value: Q) => number;
}

/** In which units an example speaks. */
export interface Display {
  readonly speed: Shown<Speed>;
  readonly distance: Shown<Length>;
  readonly height: Shown<Length>;
  readonly angle: Shown<Angle>;
  readonly spin: Shown<AngularSpeed>;
}

const angle: Shown<Angle> = { unit: '°', of: toDegrees };
const spin: Shown<AngularSpeed> = { unit: 'rpm', of: toRpm };

/** The two ways golfers speak: miles per hour, yards and feet, or kilometres per hour and metres. */
export const displays: Readonly<Record<'imperial' | 'metric', Display>> = {
  imperial: {
    speed: { unit: 'mph', of: toMph },
    distance: { unit: 'yd', of: toYards },
    height: { unit: 'ft', of: toFeet },
    angle,
    spin,
  },
  metric: {
    speed: { unit: 'km/h', of: toKph },
    distance: { unit: 'm', of: toMetres },
    height: { unit: 'm', of: toMetres },
    angle,
    spin,
  },
};
