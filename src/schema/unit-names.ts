import {
  CELSIUS,
  CENTIMETRES,
  DEGREES,
  DEGREES_PER_SECOND,
  FAHRENHEIT,
  FEET,
  FPS,
  G_CM2,
  GRAMS,
  HECTOPASCALS,
  INCHES,
  INCHES_OF_MERCURY,
  KELVINS,
  KG_M2,
  KG_PER_M3,
  KILOGRAMS,
  KNOTS,
  KPH,
  METRES,
  METRES_PER_SECOND,
  MILLIMETRES,
  MILLISECONDS,
  MPH,
  OUNCES,
  PASCAL_SECONDS,
  PASCALS,
  PERCENT,
  RADIANS,
  RADIANS_PER_SECOND,
  RATIO,
  REVOLUTIONS_PER_SECOND,
  RPM,
  SECONDS,
  SECONDS_PER_METRE,
  type SiUnit,
  type Unit,
  YARDS,
} from '../units/unit.js';

/** A unit and how it is written, in lower case. */
export interface SpelledUnit {
  readonly unit: Unit;
  readonly spellings: readonly string[];
}

/** A kind of quantity and the units it may be written in. */
export interface UnitKind {
  /** For messages, for example `length`. */
  readonly name: string;
  /** The SI unit first. */
  readonly units: readonly SpelledUnit[];
}

/** Units understood in headers and JSON, by the SI unit of the same kind. */
export const UNIT_KINDS: Readonly<Record<SiUnit, UnitKind>> = {
  'm/s': {
    name: 'speed',
    units: [
      {
        unit: METRES_PER_SECOND,
        spellings: ['m/s', 'mps', 'ms-1', 'metres per second', 'meters per second'],
      },
      { unit: MPH, spellings: ['mph', 'mi/h', 'mi/hr', 'miles per hour'] },
      { unit: KPH, spellings: ['km/h', 'kph', 'kmh', 'km/hr', 'kilometres per hour', 'kilometers per hour'] },
      { unit: FPS, spellings: ['ft/s', 'fps', 'feet per second'] },
      { unit: KNOTS, spellings: ['kn', 'kt', 'kts', 'knots'] },
    ],
  },
  rad: {
    name: 'angle',
    units: [
      { unit: RADIANS, spellings: ['rad', 'radians'] },
      { unit: DEGREES, spellings: ['deg', 'degs', '°', 'degree', 'degrees', 'º'] },
    ],
  },
  m: {
    name: 'length',
    units: [
      { unit: METRES, spellings: ['m', 'metre', 'metres', 'meter', 'meters'] },
      { unit: YARDS, spellings: ['yd', 'yds', 'yard', 'yards'] },
      { unit: FEET, spellings: ['ft', 'foot', 'feet', "'"] },
      { unit: INCHES, spellings: ['in', 'inch', 'inches', '"'] },
      { unit: MILLIMETRES, spellings: ['mm', 'millimetres', 'millimeters'] },
      { unit: CENTIMETRES, spellings: ['cm', 'centimetres', 'centimeters'] },
    ],
  },
  'rad/s': {
    name: 'angular speed',
    units: [
      { unit: RADIANS_PER_SECOND, spellings: ['rad/s'] },
      { unit: RPM, spellings: ['rpm', 'r/min', 'rev/min', 'revs/min', '1/min'] },
      { unit: REVOLUTIONS_PER_SECOND, spellings: ['rev/s', 'rps'] },
      { unit: DEGREES_PER_SECOND, spellings: ['deg/s', '°/s'] },
    ],
  },
  s: {
    name: 'time',
    units: [
      { unit: SECONDS, spellings: ['s', 'sec', 'second', 'seconds'] },
      { unit: MILLISECONDS, spellings: ['ms', 'milliseconds'] },
    ],
  },
  K: {
    name: 'temperature',
    units: [
      { unit: KELVINS, spellings: ['k', 'kelvin', 'kelvins'] },
      { unit: CELSIUS, spellings: ['c', '°c', 'celsius'] },
      { unit: FAHRENHEIT, spellings: ['f', '°f', 'fahrenheit'] },
    ],
  },
  Pa: {
    name: 'pressure',
    units: [
      { unit: PASCALS, spellings: ['pa', 'pascal', 'pascals'] },
      { unit: HECTOPASCALS, spellings: ['hpa', 'mbar', 'hectopascals'] },
      { unit: INCHES_OF_MERCURY, spellings: ['inhg'] },
    ],
  },
  'kg/m3': { name: 'density', units: [{ unit: KG_PER_M3, spellings: ['kg/m3', 'kg/m³'] }] },
  'Pa s': { name: 'viscosity', units: [{ unit: PASCAL_SECONDS, spellings: ['pa s', 'pa·s'] }] },
  kg: {
    name: 'mass',
    units: [
      { unit: KILOGRAMS, spellings: ['kg', 'kilograms'] },
      { unit: GRAMS, spellings: ['g', 'grams'] },
      { unit: OUNCES, spellings: ['oz', 'ounces'] },
    ],
  },
  'kg m2': {
    name: 'moment of inertia',
    units: [
      { unit: KG_M2, spellings: ['kg m2', 'kg m²'] },
      { unit: G_CM2, spellings: ['g cm2', 'g cm²'] },
    ],
  },
  's/m': { name: 'slope', units: [{ unit: SECONDS_PER_METRE, spellings: ['s/m'] }] },
  '': {
    name: 'ratio',
    units: [
      { unit: RATIO, spellings: ['1'] },
      { unit: PERCENT, spellings: ['%', 'percent', 'per cent'] },
    ],
  },
};

/** More words than any unit has, where splitting a hostile one may stop. */
const MORE_WORDS = 5;

/** Finds a unit of one kind by any of its spellings, in any case. */
export function findUnit(si: SiUnit, spelling: string): Unit | undefined {
  const wanted = spelling.trim().toLowerCase().split(/\s+/, MORE_WORDS).join(' ');
  return UNIT_KINDS[si].units.find(({ spellings }) => spellings.includes(wanted))?.unit;
}

/** How a unit is written where one must be: a plain ratio is in units of 1. */
export function symbolOf({ symbol }: Unit): string {
  return symbol === '' ? '1' : symbol;
}

/** Symbols of one kind of quantity, for messages. */
export function unitSymbols(si: SiUnit): string {
  return UNIT_KINDS[si].units.map(({ unit }) => symbolOf(unit)).join(', ');
}
