import * as functions from '../../../src/units/index.js';
import type { Numbers, Room } from '../room.js';

const made = {
  mph: 113,
  kph: 181,
  feetPerSecond: 220,
  knots: 12,
  degrees: 14.5,
  yards: 275,
  millimetres: 21.335,
  rpm: 2686,
  grams: 45.93,
  ounces: 1.62,
  hectopascals: 1013.25,
  inchesOfMercury: 29.92,
  celsius: -7,
  fahrenheit: 68,
} as const;

const read = {
  toMph: 50.5,
  toKph: 50.5,
  toKnots: 6,
  toDegrees: 0.2,
  toYards: 251,
  toFeet: 29,
  toRpm: 281,
  toInchesOfMercury: 101_325,
  toFahrenheit: 291,
} as const;

/** What each function makes of the number beside it. */
function apply(table: Readonly<Record<string, number>>): Numbers {
  const byName = functions as unknown as Readonly<Record<string, (value: number) => number>>;
  return Object.fromEntries(
    Object.entries(table).map(([name, value]) => [name, byName[name]?.(value) ?? Number.NaN]),
  );
}

/** Units: into SI and back. */
export const units: Room = {
  room: 'units',
  digits: 12,
  questions: { make: () => apply(made), read: () => apply(read) },
};
