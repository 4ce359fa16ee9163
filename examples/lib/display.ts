import type { SpokenUnits } from 'fairflight';
import {
  toCelsius,
  toDegrees,
  toFahrenheit,
  toFeet,
  toKph,
  toMetres,
  toMph,
  toRpm,
  toYards,
} from 'fairflight/units';

/** The unit a quantity is shown in, and the way to it from SI. */
export interface Shown {
  readonly unit: string;
  readonly of: (si: number) => number;
}

/** In which units an example speaks. */
export interface Display {
  readonly speed: Shown;
  readonly distance: Shown;
  readonly height: Shown;
  readonly angle: Shown;
  readonly spin: Shown;
  readonly temperature: Shown;
  /** Units in which the library puts warnings into words. */
  readonly spoken: SpokenUnits;
}

/** Means, differences and intervals of quantities are plain numbers in SI, so a reader's brand is dropped here. */
function shown<Q extends number>(unit: string, of: (value: Q) => number): Shown {
  return { unit, of: (si) => of(si as Q) };
}

const angle: Shown = shown('°', toDegrees);
const spin: Shown = shown('rpm', toRpm);

/** The two ways golfers speak: miles per hour, yards and feet, or kilometres per hour and metres. */
export const displays: Readonly<Record<'imperial' | 'metric', Display>> = {
  imperial: {
    speed: shown('mph', toMph),
    distance: shown('yd', toYards),
    height: shown('ft', toFeet),
    angle,
    spin,
    temperature: shown('°F', toFahrenheit),
    spoken: 'yards',
  },
  metric: {
    speed: shown('km/h', toKph),
    distance: shown('m', toMetres),
    height: shown('m', toMetres),
    angle,
    spin,
    temperature: shown('°C', toCelsius),
    spoken: 'metres',
  },
};
