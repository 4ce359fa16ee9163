import { STANDARD_GRAVITY } from '../gravity.js';
import { convertedAltitudeField, geopotentialField } from '../inputs/air.js';
import { readQuantity } from '../inputs/read.js';
import type { Density, DynamicViscosity, Length, Pressure, Speed, Temperature } from '../units/index.js';
import { si } from '../units/index.js';
import { sutherland } from './viscosity.js';

/** Temperature at sea level [K]. */
const SEA_LEVEL_TEMPERATURE = 288.15;
/** Pressure at sea level [Pa]. */
const SEA_LEVEL_PRESSURE = 101_325;
/** Fall of temperature with geopotential altitude [K/m]. @internal */
export const LAPSE_RATE = 0.0065;
/** Gas constant of dry air: 8314.32/28.9644, universal constant over molar mass [J/(kg K)]. @internal */
export const DRY_AIR_GAS_CONSTANT: number = 8314.32 / 28.9644;
/** Nominal earth radius of the standard [m]. */
const EARTH_RADIUS = 6_356_766;
/** Exponent of the pressure law, 5.255876. @internal */
export const PRESSURE_EXPONENT: number = STANDARD_GRAVITY / (DRY_AIR_GAS_CONSTANT * LAPSE_RATE);

/** The standard atmosphere at one altitude. */
export interface StandardAir {
  /** Temperature [K]. */
  readonly temperature: Temperature;
  /** Pressure [Pa]. */
  readonly pressure: Pressure;
  /** Density [kg/m³]. */
  readonly density: Density;
  /** Dynamic viscosity [Pa s]. */
  readonly viscosity: DynamicViscosity;
  /** Speed of sound [m/s]. */
  readonly speedOfSound: Speed;
}

/**
 * The standard atmosphere: T = 288.15 − 0.0065 H, p = 101,325 (T/288.15)^(g/(0.0065 R)), ρ = p/(R T), dry,
 * R = 8314.32/28.9644 J/(kg K).
 *
 * U.S. Standard Atmosphere 1976, the same as ISO 2533:1975 below 32 km; lowest layer only.
 * @param altitude - geopotential altitude H [m], −2,000 to 11,000; see {@link geopotentialAltitude}
 * @throws `FairflightError` when the altitude is not finite or out of range
 */
export function standardAtmosphere(altitude: Length): StandardAir {
  const height = readQuantity(geopotentialField, altitude, 'altitude');
  const temperature = SEA_LEVEL_TEMPERATURE - LAPSE_RATE * height;
  const pressure = SEA_LEVEL_PRESSURE * (temperature / SEA_LEVEL_TEMPERATURE) ** PRESSURE_EXPONENT;
  return {
    temperature: si<Temperature>(temperature),
    pressure: si<Pressure>(pressure),
    density: si<Density>(pressure / (DRY_AIR_GAS_CONSTANT * temperature)),
    viscosity: si<DynamicViscosity>(sutherland(temperature)),
    speedOfSound: si<Speed>(Math.sqrt(1.4 * DRY_AIR_GAS_CONSTANT * temperature)),
  };
}

/**
 * Geopotential from geometric altitude: H = r0 Z/(r0 + Z), r0 = 6,356,766 m. U.S. Standard Atmosphere 1976, eq. 18.
 * @param geometric - height above mean sea level, as on a map [m], −2,000 to 12,000
 * @throws `FairflightError` when it is not finite or out of range
 */
export function geopotentialAltitude(geometric: Length): Length {
  const z = readQuantity(convertedAltitudeField, geometric, 'geometric');
  return si<Length>((EARTH_RADIUS * z) / (EARTH_RADIUS + z));
}

/**
 * Geometric from geopotential altitude: Z = r0 H/(r0 − H). U.S. Standard Atmosphere 1976, eq. 19.
 * @param geopotential - geopotential altitude [m], −2,000 to 12,000
 * @throws `FairflightError` when it is not finite or out of range
 */
export function geometricAltitude(geopotential: Length): Length {
  const h = readQuantity(convertedAltitudeField, geopotential, 'geopotential');
  return si<Length>((EARTH_RADIUS * h) / (EARTH_RADIUS - h));
}
