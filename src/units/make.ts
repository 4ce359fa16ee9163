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

/** Makes a {@link Speed} from metres per second. */
export function metresPerSecond(value: number): Speed {
  return number(value) as Speed;
}
/** Makes a {@link Speed} from miles per hour. */
export function mph(value: number): Speed {
  return (number(value) * METRES_PER_SECOND_PER_MPH) as Speed;
}
/** Makes a {@link Speed} from kilometres per hour. */
export function kph(value: number): Speed {
  return (number(value) / 3.6) as Speed;
}
/** Makes a {@link Speed} from feet per second. */
export function feetPerSecond(value: number): Speed {
  return (number(value) * METRES_PER_SECOND_PER_FPS) as Speed;
}
/** Makes a {@link Speed} from knots. */
export function knots(value: number): Speed {
  return (number(value) * METRES_PER_SECOND_PER_KNOT) as Speed;
}
/** Makes an {@link Angle} from radians. */
export function radians(value: number): Angle {
  return number(value) as Angle;
}
/** Makes an {@link Angle} from degrees. */
export function degrees(value: number): Angle {
  return (number(value) * RADIANS_PER_DEGREE) as Angle;
}
/** Makes a {@link Length} from metres. */
export function metres(value: number): Length {
  return number(value) as Length;
}
/** Makes a {@link Length} from yards. */
export function yards(value: number): Length {
  return (number(value) * METRES_PER_YARD) as Length;
}
/** Makes a {@link Length} from feet. */
export function feet(value: number): Length {
  return (number(value) * METRES_PER_FOOT) as Length;
}
/** Makes a {@link Length} from inches. */
export function inches(value: number): Length {
  return (number(value) * METRES_PER_INCH) as Length;
}
/** Makes a {@link Length} from millimetres. */
export function millimetres(value: number): Length {
  return (number(value) / 1000) as Length;
}
/** Makes an {@link AngularSpeed} from radians per second. */
export function radiansPerSecond(value: number): AngularSpeed {
  return number(value) as AngularSpeed;
}
/** Makes an {@link AngularSpeed} from revolutions per minute. */
export function rpm(value: number): AngularSpeed {
  return (number(value) * RADIANS_PER_SECOND_PER_RPM) as AngularSpeed;
}
/** Makes an {@link AngularSpeed} from degrees per second. */
export function degreesPerSecond(value: number): AngularSpeed {
  return (number(value) * RADIANS_PER_DEGREE) as AngularSpeed;
}
/** Makes a {@link Mass} from kilograms. */
export function kilograms(value: number): Mass {
  return number(value) as Mass;
}
/** Makes a {@link Mass} from grams. */
export function grams(value: number): Mass {
  return (number(value) / 1000) as Mass;
}
/** Makes a {@link Mass} from avoirdupois ounces. */
export function ounces(value: number): Mass {
  return (number(value) * KILOGRAMS_PER_OUNCE) as Mass;
}
/** Makes a {@link MomentOfInertia} from kilogram square metres. */
export function kilogramSquareMetres(value: number): MomentOfInertia {
  return number(value) as MomentOfInertia;
}
/** Makes a {@link MomentOfInertia} from gram square centimetres. */
export function gramSquareCentimetres(value: number): MomentOfInertia {
  return (number(value) * KG_M2_PER_G_CM2) as MomentOfInertia;
}
/** Makes a {@link Pressure} from pascals. */
export function pascals(value: number): Pressure {
  return number(value) as Pressure;
}
/** Makes a {@link Pressure} from hectopascals. */
export function hectopascals(value: number): Pressure {
  return (number(value) * PASCALS_PER_HECTOPASCAL) as Pressure;
}
/** Makes a {@link Pressure} from inches of mercury. */
export function inchesOfMercury(value: number): Pressure {
  return (number(value) * PASCALS_PER_INCH_OF_MERCURY) as Pressure;
}
/** Makes a {@link Density} from kilograms per cubic metre. */
export function kilogramsPerCubicMetre(value: number): Density {
  return number(value) as Density;
}
/** Makes a {@link DynamicViscosity} from pascal seconds. */
export function pascalSeconds(value: number): DynamicViscosity {
  return number(value) as DynamicViscosity;
}
/** Makes a {@link Duration} from seconds. */
export function seconds(value: number): Duration {
  return number(value) as Duration;
}
/** Makes a {@link Duration} from milliseconds. */
export function milliseconds(value: number): Duration {
  return (number(value) / 1000) as Duration;
}
/** Makes a {@link Temperature} from kelvins. */
export function kelvins(value: number): Temperature {
  return number(value) as Temperature;
}
/** Makes a {@link Temperature} from degrees Celsius. */
export function celsius(value: number): Temperature {
  return (number(value) + KELVIN_AT_ZERO_CELSIUS) as Temperature;
}
/** Makes a {@link Temperature} from degrees Fahrenheit. */
export function fahrenheit(value: number): Temperature {
  return ((number(value) - 32) * KELVIN_PER_FAHRENHEIT + KELVIN_AT_ZERO_CELSIUS) as Temperature;
}
