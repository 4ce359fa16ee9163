import {
  celsius,
  degrees,
  fahrenheit,
  feet,
  grams,
  hectopascals,
  metresPerSecond,
  millimetres,
  mph,
  rpm,
  yards,
} from '../../../src/index.js';
import { kilogramsPerCubicMetre } from '../../../src/units/index.js';

const NAMES = [
  // How the ball leaves; with a club speed, the launch angle is the one that the dynamic loft is solved for.
  'ballSpeed',
  'launchAngle',
  'spin',
  // The ball speed is scaled until the ball carries this far in still air.
  'scaledToCarry',
  // The strike.
  'clubhead',
  'clubSpeed',
  'attackAngle',
  'dynamicLoft',
  'faceAngle',
  'strikeHigh',
  'strikeToe',
  // Changes of the clubhead. `restitution` is the same at every speed; `restitutionAtRest` falls by `restitutionSlope`.
  'headMass',
  'shaftMass',
  'restitution',
  'restitutionAtRest',
  'restitutionSlope',
  'tangentialRestitution',
  'centreDepth',
  'centreHigh',
  'inertiaFactor',
  'face',
  // A question to bestLoft: its dynamic loft less `addedLoft` is the nominal loft.
  'objective',
  'addedLoft',
  'leastDescent',
  // A ball that lands, in place of a flight.
  'landingSpeed',
  'landingAngle',
  'landingSpin',
  // Where. Without `bounce` the turf is the library's own.
  'turf',
  'bounce',
  'temperature',
  'pressure',
  'humidity',
  'altitude',
  'airDensity',
  'headwind',
  'tailwind',
  'crosswind',
  // Coefficients, by one of the built-in models or the default, at Re and S or at a speed and spin.
  'model',
  'reynolds',
  'spinRatio',
  'airSpeed',
  // Time after launch, or quarter of the flight: 1 to half-way up, 2 to the top, 3 to half-way down, 4 to landing.
  'time',
  'part',
] as const;

/** What a row is flown, struck or landed with. Every figure is written with its unit: "155 mph", "12°", "20 °C". */
export type Conditions = { readonly [K in (typeof NAMES)[number]]?: string };

/** Throws where a name is none of the conditions, which would otherwise be left out of the comparison unseen. */
export function requireKnown(conditions: object): void {
  for (const name of Object.keys(conditions)) {
    if (!(NAMES as readonly string[]).includes(name)) throw new Error(`no such condition: ${name}`);
  }
}

const UNITS: Readonly<Record<string, (value: number) => number>> = {
  '': (value) => value,
  '%': (value) => value / 100,
  mph,
  'm/s': metresPerSecond,
  '°': degrees,
  rpm,
  yd: yards,
  ft: feet,
  mm: millimetres,
  g: grams,
  s: (value) => value,
  '°C': celsius,
  '°F': fahrenheit,
  hPa: hectopascals,
  'kg/m³': kilogramsPerCubicMetre,
};

/** A condition in SI units. Throws where it is missing or not a number with a known unit. */
export function inSi<Q extends number = number>(conditions: Conditions, name: keyof Conditions): Q {
  const [, number, unit = ''] = /^([−-]?[\d.]+) ?(\D*)$/.exec(conditions[name] ?? '') ?? [];
  const convert = UNITS[unit];
  if (number === undefined || convert === undefined) {
    throw new Error(`condition ${name} is ${conditions[name] ?? 'missing'}`);
  }
  return convert(Number(number.replace('−', '-'))) as Q;
}

/** As {@link inSi}, or the value given where the condition is left out. */
export function inSiOr<Q extends number>(conditions: Conditions, name: keyof Conditions, otherwise: Q): Q {
  return conditions[name] === undefined ? otherwise : inSi<Q>(conditions, name);
}

/** Conditions in words: "attack angle 0°, turf normal". */
export function inWords(conditions: Conditions): string {
  return Object.entries(conditions)
    .map(([name, value]) => `${name.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`)} ${value}`)
    .join(', ');
}
