import {
  celsius,
  degrees,
  degreesPerSecond,
  fahrenheit,
  feet,
  feetPerSecond,
  gramSquareCentimetres,
  grams,
  hectopascals,
  inches,
  inchesOfMercury,
  kelvins,
  kilogramSquareMetres,
  kilograms,
  kilogramsPerCubicMetre,
  knots,
  kph,
  metres,
  metresPerSecond,
  millimetres,
  milliseconds,
  mph,
  ounces,
  pascalSeconds,
  pascals,
  radians,
  radiansPerSecond,
  rpm,
  seconds,
  yards,
} from '../units/index.js';

/** Kind of quantity a unit belongs to. */
export type Dimension =
  | 'speed'
  | 'angle'
  | 'length'
  | 'angular speed'
  | 'time'
  | 'temperature'
  | 'pressure'
  | 'density'
  | 'viscosity'
  | 'mass'
  | 'moment of inertia'
  | 'ratio';

/** One unit: its usual symbol, how else it is written (lower case), and its way into SI. */
export interface UnitName {
  readonly symbol: string;
  readonly spellings: readonly string[];
  readonly toSi: (value: number) => number;
}

/** Units understood in headers and JSON, by kind of quantity; the SI unit of each kind first. */
export const UNIT_NAMES: Readonly<Record<Dimension, readonly UnitName[]>> = {
  speed: [
    {
      symbol: 'm/s',
      spellings: ['m/s', 'mps', 'metres per second', 'meters per second'],
      toSi: metresPerSecond,
    },
    { symbol: 'mph', spellings: ['mph', 'mi/h', 'miles per hour'], toSi: mph },
    { symbol: 'km/h', spellings: ['km/h', 'kph', 'kmh', 'kilometres per hour'], toSi: kph },
    { symbol: 'ft/s', spellings: ['ft/s', 'fps', 'feet per second'], toSi: feetPerSecond },
    { symbol: 'kn', spellings: ['kn', 'kt', 'kts', 'knots'], toSi: knots },
  ],
  angle: [
    { symbol: 'rad', spellings: ['rad', 'radians'], toSi: radians },
    { symbol: 'deg', spellings: ['deg', '°', 'degree', 'degrees', 'º'], toSi: degrees },
  ],
  length: [
    { symbol: 'm', spellings: ['m', 'metre', 'metres', 'meter', 'meters'], toSi: metres },
    { symbol: 'yd', spellings: ['yd', 'yds', 'yard', 'yards'], toSi: yards },
    { symbol: 'ft', spellings: ['ft', 'foot', 'feet'], toSi: feet },
    { symbol: 'in', spellings: ['in', 'inch', 'inches'], toSi: inches },
    { symbol: 'mm', spellings: ['mm', 'millimetres', 'millimeters'], toSi: millimetres },
    { symbol: 'cm', spellings: ['cm', 'centimetres', 'centimeters'], toSi: (value) => metres(value / 100) },
  ],
  'angular speed': [
    { symbol: 'rad/s', spellings: ['rad/s'], toSi: radiansPerSecond },
    { symbol: 'rpm', spellings: ['rpm', 'rev/min', '1/min'], toSi: rpm },
    { symbol: 'rev/s', spellings: ['rev/s', 'rps'], toSi: (value) => rpm(value * 60) },
    { symbol: 'deg/s', spellings: ['deg/s', '°/s'], toSi: degreesPerSecond },
  ],
  time: [
    { symbol: 's', spellings: ['s', 'sec', 'second', 'seconds'], toSi: seconds },
    { symbol: 'ms', spellings: ['ms', 'milliseconds'], toSi: milliseconds },
  ],
  temperature: [
    { symbol: 'K', spellings: ['k', 'kelvin', 'kelvins'], toSi: kelvins },
    { symbol: 'C', spellings: ['c', '°c', 'celsius'], toSi: celsius },
    { symbol: 'F', spellings: ['f', '°f', 'fahrenheit'], toSi: fahrenheit },
  ],
  pressure: [
    { symbol: 'Pa', spellings: ['pa', 'pascal', 'pascals'], toSi: pascals },
    { symbol: 'hPa', spellings: ['hpa', 'mbar', 'hectopascals'], toSi: hectopascals },
    { symbol: 'inHg', spellings: ['inhg'], toSi: inchesOfMercury },
  ],
  density: [{ symbol: 'kg/m3', spellings: ['kg/m3', 'kg/m³'], toSi: kilogramsPerCubicMetre }],
  viscosity: [{ symbol: 'Pa s', spellings: ['pa s', 'pa·s'], toSi: pascalSeconds }],
  mass: [
    { symbol: 'kg', spellings: ['kg', 'kilograms'], toSi: kilograms },
    { symbol: 'g', spellings: ['g', 'grams'], toSi: grams },
    { symbol: 'oz', spellings: ['oz', 'ounces'], toSi: ounces },
  ],
  'moment of inertia': [
    { symbol: 'kg m2', spellings: ['kg m2', 'kg m²'], toSi: kilogramSquareMetres },
    { symbol: 'g cm2', spellings: ['g cm2', 'g cm²'], toSi: gramSquareCentimetres },
  ],
  ratio: [
    { symbol: '1', spellings: ['1'], toSi: (value) => value },
    { symbol: '%', spellings: ['%', 'percent', 'per cent'], toSi: (value) => value / 100 },
  ],
};

/** Finds a unit of one kind by any of its spellings, in any case. */
export function findUnit(dimension: Dimension, spelling: string): UnitName | undefined {
  const wanted = spelling.trim().toLowerCase().replace(/\s+/g, ' ');
  return UNIT_NAMES[dimension].find((unit) => unit.spellings.includes(wanted));
}

/** Symbols of one kind of quantity, for messages. */
export function unitSymbols(dimension: Dimension): string {
  return UNIT_NAMES[dimension].map((unit) => unit.symbol).join(', ');
}

/** An SI value read back in a unit; all units are linear, so two points give the way back. */
export function fromSi(unit: UnitName, value: number): number {
  const zero = unit.toSi(0);
  return (value - zero) / (unit.toSi(1) - zero);
}
