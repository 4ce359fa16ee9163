import {
  KELVIN_AT_ZERO_CELSIUS,
  KELVIN_PER_FAHRENHEIT,
  KG_M2_PER_G_CM2,
  KILOGRAMS_PER_OUNCE,
  METRES_PER_FOOT,
  METRES_PER_INCH,
  METRES_PER_SECOND_PER_FPS,
  METRES_PER_SECOND_PER_KNOT,
  METRES_PER_SECOND_PER_MPH,
  METRES_PER_YARD,
  PASCALS_PER_HECTOPASCAL,
  PASCALS_PER_INCH_OF_MERCURY,
  RADIANS_PER_DEGREE,
  RADIANS_PER_SECOND_PER_RPM,
} from './factors.js';

/** SI unit of everything the library takes or gives; '' for a ratio or a count. */
export type SiUnit =
  | 'm/s'
  | 'rad'
  | 'm'
  | 'rad/s'
  | 'kg'
  | 'kg m2'
  | 'K'
  | 'Pa'
  | 'kg/m3'
  | 'Pa s'
  | 's'
  | 's/m'
  | '';

/** A unit as a value: SI = value × size + zero. */
export interface Unit<Si extends SiUnit = SiUnit> {
  /** As it is written, for example `mph`. */
  readonly symbol: string;
  /** The SI unit of the same dimension. */
  readonly si: Si;
  /** The function that makes a quantity from it; left out where there is none. */
  readonly maker?: string;
  /** SI units in one of it. */
  readonly size: number;
  /** SI value at its zero; 0 but for temperatures. */
  readonly zero: number;
}

export const METRES_PER_SECOND: Unit<'m/s'> = {
  symbol: 'm/s',
  si: 'm/s',
  maker: 'metresPerSecond',
  size: 1,
  zero: 0,
};
export const MPH: Unit<'m/s'> = {
  symbol: 'mph',
  si: 'm/s',
  maker: 'mph',
  size: METRES_PER_SECOND_PER_MPH,
  zero: 0,
};
export const KPH: Unit<'m/s'> = { symbol: 'km/h', si: 'm/s', maker: 'kph', size: 1 / 3.6, zero: 0 };
export const FPS: Unit<'m/s'> = {
  symbol: 'ft/s',
  si: 'm/s',
  maker: 'feetPerSecond',
  size: METRES_PER_SECOND_PER_FPS,
  zero: 0,
};
export const KNOTS: Unit<'m/s'> = {
  symbol: 'kn',
  si: 'm/s',
  maker: 'knots',
  size: METRES_PER_SECOND_PER_KNOT,
  zero: 0,
};
export const RADIANS: Unit<'rad'> = { symbol: 'rad', si: 'rad', maker: 'radians', size: 1, zero: 0 };
export const DEGREES: Unit<'rad'> = {
  symbol: 'deg',
  si: 'rad',
  maker: 'degrees',
  size: RADIANS_PER_DEGREE,
  zero: 0,
};
export const METRES: Unit<'m'> = { symbol: 'm', si: 'm', maker: 'metres', size: 1, zero: 0 };
export const YARDS: Unit<'m'> = { symbol: 'yd', si: 'm', maker: 'yards', size: METRES_PER_YARD, zero: 0 };
export const FEET: Unit<'m'> = { symbol: 'ft', si: 'm', maker: 'feet', size: METRES_PER_FOOT, zero: 0 };
export const INCHES: Unit<'m'> = { symbol: 'in', si: 'm', maker: 'inches', size: METRES_PER_INCH, zero: 0 };
export const CENTIMETRES: Unit<'m'> = { symbol: 'cm', si: 'm', size: 0.01, zero: 0 };
export const MILLIMETRES: Unit<'m'> = { symbol: 'mm', si: 'm', maker: 'millimetres', size: 0.001, zero: 0 };
export const RADIANS_PER_SECOND: Unit<'rad/s'> = {
  symbol: 'rad/s',
  si: 'rad/s',
  maker: 'radiansPerSecond',
  size: 1,
  zero: 0,
};
export const RPM: Unit<'rad/s'> = {
  symbol: 'rpm',
  si: 'rad/s',
  maker: 'rpm',
  size: RADIANS_PER_SECOND_PER_RPM,
  zero: 0,
};
export const REVOLUTIONS_PER_SECOND: Unit<'rad/s'> = {
  symbol: 'rev/s',
  si: 'rad/s',
  size: 2 * Math.PI,
  zero: 0,
};
export const DEGREES_PER_SECOND: Unit<'rad/s'> = {
  symbol: 'deg/s',
  si: 'rad/s',
  maker: 'degreesPerSecond',
  size: RADIANS_PER_DEGREE,
  zero: 0,
};
export const KILOGRAMS: Unit<'kg'> = { symbol: 'kg', si: 'kg', maker: 'kilograms', size: 1, zero: 0 };
export const GRAMS: Unit<'kg'> = { symbol: 'g', si: 'kg', maker: 'grams', size: 0.001, zero: 0 };
export const OUNCES: Unit<'kg'> = {
  symbol: 'oz',
  si: 'kg',
  maker: 'ounces',
  size: KILOGRAMS_PER_OUNCE,
  zero: 0,
};
export const KG_M2: Unit<'kg m2'> = {
  symbol: 'kg m2',
  si: 'kg m2',
  maker: 'kilogramSquareMetres',
  size: 1,
  zero: 0,
};
export const G_CM2: Unit<'kg m2'> = {
  symbol: 'g cm2',
  si: 'kg m2',
  maker: 'gramSquareCentimetres',
  size: KG_M2_PER_G_CM2,
  zero: 0,
};
export const KELVINS: Unit<'K'> = { symbol: 'K', si: 'K', maker: 'kelvins', size: 1, zero: 0 };
export const CELSIUS: Unit<'K'> = {
  symbol: 'C',
  si: 'K',
  maker: 'celsius',
  size: 1,
  zero: KELVIN_AT_ZERO_CELSIUS,
};
export const FAHRENHEIT: Unit<'K'> = {
  symbol: 'F',
  si: 'K',
  maker: 'fahrenheit',
  size: KELVIN_PER_FAHRENHEIT,
  zero: KELVIN_AT_ZERO_CELSIUS - 32 * KELVIN_PER_FAHRENHEIT,
};
export const PASCALS: Unit<'Pa'> = { symbol: 'Pa', si: 'Pa', maker: 'pascals', size: 1, zero: 0 };
export const HECTOPASCALS: Unit<'Pa'> = {
  symbol: 'hPa',
  si: 'Pa',
  maker: 'hectopascals',
  size: PASCALS_PER_HECTOPASCAL,
  zero: 0,
};
export const INCHES_OF_MERCURY: Unit<'Pa'> = {
  symbol: 'inHg',
  si: 'Pa',
  maker: 'inchesOfMercury',
  size: PASCALS_PER_INCH_OF_MERCURY,
  zero: 0,
};
export const KG_PER_M3: Unit<'kg/m3'> = {
  symbol: 'kg/m3',
  si: 'kg/m3',
  maker: 'kilogramsPerCubicMetre',
  size: 1,
  zero: 0,
};
export const PASCAL_SECONDS: Unit<'Pa s'> = {
  symbol: 'Pa s',
  si: 'Pa s',
  maker: 'pascalSeconds',
  size: 1,
  zero: 0,
};
export const SECONDS: Unit<'s'> = { symbol: 's', si: 's', maker: 'seconds', size: 1, zero: 0 };
export const MILLISECONDS: Unit<'s'> = { symbol: 'ms', si: 's', maker: 'milliseconds', size: 0.001, zero: 0 };
export const SECONDS_PER_METRE: Unit<'s/m'> = { symbol: 's/m', si: 's/m', size: 1, zero: 0 };
export const RATIO: Unit<''> = { symbol: '', si: '', size: 1, zero: 0 };
export const PERCENT: Unit<''> = { symbol: '%', si: '', size: 0.01, zero: 0 };

/** A value in SI read in a unit. */
export function inUnit(unit: Unit, value: number): number {
  return (value - unit.zero) / unit.size;
}

/** A value in a unit as SI. */
export function fromUnit(unit: Unit, value: number): number {
  return value * unit.size + unit.zero;
}
