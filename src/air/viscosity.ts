import { airStateFields } from '../inputs/air.js';
import { readQuantity } from '../inputs/read.js';
import type { DynamicViscosity, Temperature } from '../units/index.js';
import { si } from '../units/index.js';

/** Sutherland's law with the constants of the standard atmosphere, on plain kelvin. @internal */
export function sutherland(kelvin: number): number {
  return (1.458e-6 * kelvin ** 1.5) / (kelvin + 110.4);
}

/**
 * Dynamic viscosity of dry air [Pa s]: Sutherland's law μ = 1.458e-6 T^1.5/(T + 110.4), with the constants of
 * U.S. Standard Atmosphere 1976, equation 51. Humidity changes it by well under 1 %.
 * @param temperature - air temperature [K], 223.15 to 333.15 (−50 to 60 °C)
 * @throws `FairflightError` when the temperature is not finite or out of range
 */
export function airViscosity(temperature: Temperature): DynamicViscosity {
  return si<DynamicViscosity>(
    sutherland(readQuantity(airStateFields.temperature, temperature, 'temperature')),
  );
}
