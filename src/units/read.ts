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
import { number } from './number.js';
import type {
  Angle,
  AngularSpeed,
  Density,
  Duration,
  DynamicViscosity,
  Length,
  Mass,
  MomentOfInertia,
  Pressure,
  Speed,
  Temperature,
} from './quantities.js';

/** Reads a {@link Speed} in metres per second. */
export function toMetresPerSecond(value: Speed): number {
  return number(value);
}
/** Reads a {@link Speed} in miles per hour. */
export function toMph(value: Speed): number {
  return number(value) / METRES_PER_SECOND_PER_MPH;
}
/** Reads a {@link Speed} in kilometres per hour. */
export function toKph(value: Speed): number {
  return number(value) * 3.6;
}
/** Reads a {@link Speed} in feet per second. */
export function toFeetPerSecond(value: Speed): number {
  return number(value) / METRES_PER_SECOND_PER_FPS;
}
/** Reads a {@link Speed} in knots. */
export function toKnots(value: Speed): number {
  return number(value) / METRES_PER_SECOND_PER_KNOT;
}
/** Reads an {@link Angle} in radians. */
export function toRadians(value: Angle): number {
  return number(value);
}
/** Reads an {@link Angle} in degrees. */
export function toDegrees(value: Angle): number {
  return number(value) / RADIANS_PER_DEGREE;
}
/** Reads a {@link Length} in metres. */
export function toMetres(value: Length): number {
  return number(value);
}
/** Reads a {@link Length} in yards. */
export function toYards(value: Length): number {
  return number(value) / METRES_PER_YARD;
}
/** Reads a {@link Length} in feet. */
export function toFeet(value: Length): number {
  return number(value) / METRES_PER_FOOT;
}
/** Reads a {@link Length} in inches. */
export function toInches(value: Length): number {
  return number(value) / METRES_PER_INCH;
}
/** Reads a {@link Length} in millimetres. */
export function toMillimetres(value: Length): number {
  return number(value) * 1000;
}
/** Reads an {@link AngularSpeed} in radians per second. */
export function toRadiansPerSecond(value: AngularSpeed): number {
  return number(value);
}
/** Reads an {@link AngularSpeed} in revolutions per minute. */
export function toRpm(value: AngularSpeed): number {
  return number(value) / RADIANS_PER_SECOND_PER_RPM;
}
/** Reads an {@link AngularSpeed} in degrees per second. */
export function toDegreesPerSecond(value: AngularSpeed): number {
  return number(value) / RADIANS_PER_DEGREE;
}
/** Reads a {@link Mass} in kilograms. */
export function toKilograms(value: Mass): number {
  return number(value);
}
/** Reads a {@link Mass} in grams. */
export function toGrams(value: Mass): number {
  return number(value) * 1000;
}
/** Reads a {@link Mass} in avoirdupois ounces. */
export function toOunces(value: Mass): number {
  return number(value) / KILOGRAMS_PER_OUNCE;
}
/** Reads a {@link MomentOfInertia} in kilogram square metres. */
export function toKilogramSquareMetres(value: MomentOfInertia): number {
  return number(value);
}
/** Reads a {@link MomentOfInertia} in gram square centimetres. */
export function toGramSquareCentimetres(value: MomentOfInertia): number {
  return number(value) / KG_M2_PER_G_CM2;
}
/** Reads a {@link Pressure} in pascals. */
export function toPascals(value: Pressure): number {
  return number(value);
}
/** Reads a {@link Pressure} in hectopascals. */
export function toHectopascals(value: Pressure): number {
  return number(value) / PASCALS_PER_HECTOPASCAL;
}
/** Reads a {@link Pressure} in inches of mercury. */
export function toInchesOfMercury(value: Pressure): number {
  return number(value) / PASCALS_PER_INCH_OF_MERCURY;
}
/** Reads a {@link Density} in kilograms per cubic metre. */
export function toKilogramsPerCubicMetre(value: Density): number {
  return number(value);
}
/** Reads a {@link DynamicViscosity} in pascal seconds. */
export function toPascalSeconds(value: DynamicViscosity): number {
  return number(value);
}
/** Reads a {@link Duration} in seconds. */
export function toSeconds(value: Duration): number {
  return number(value);
}
/** Reads a {@link Duration} in milliseconds. */
export function toMilliseconds(value: Duration): number {
  return number(value) * 1000;
}
/** Reads a {@link Temperature} in kelvins. */
export function toKelvins(value: Temperature): number {
  return number(value);
}
/** Reads a {@link Temperature} in degrees Celsius. */
export function toCelsius(value: Temperature): number {
  return number(value) - KELVIN_AT_ZERO_CELSIUS;
}
/** Reads a {@link Temperature} in degrees Fahrenheit. */
export function toFahrenheit(value: Temperature): number {
  return (number(value) - KELVIN_AT_ZERO_CELSIUS) / KELVIN_PER_FAHRENHEIT + 32;
}
