import { type AirState, airStateFields } from '../inputs/air.js';
import { readRecord } from '../inputs/read.js';
import type { Density } from '../units/index.js';
import { KELVIN_AT_ZERO_CELSIUS, si } from '../units/index.js';

/** Molar gas constant as CIPM-2007 uses it [J/(mol K)]. */
const GAS_CONSTANT = 8.314472;
/** Molar mass of water [kg/mol]. */
const MOLAR_MASS_WATER = 18.01528e-3;

/** Molar mass of dry air [kg/mol]. */
function dryAirMolarMass(carbonDioxide: number): number {
  return (28.96546 + 12.011 * (carbonDioxide - 0.0004)) * 1e-3;
}

/**
 * Pressure of water vapour over water when saturated [Pa], at `kelvin`: Picard et al. (2008), appendix A.1, which
 * over ice is a little too high: exp(1.2378847e-5 T² − 1.9121316e-2 T + 33.93711047 − 6.3431645e3/T).
 * @internal
 */
export function saturationPressure(kelvin: number): number {
  return Math.exp(
    1.2378847e-5 * kelvin * kelvin - 1.9121316e-2 * kelvin + 33.93711047 - 6.3431645e3 / kelvin,
  );
}

/**
 * Mole fraction of water vapour, xv = humidity (1.00062 + 3.14e-8 p + 5.6e-7 t²) psv/p, t in °C: Picard et al. (2008). The
 * bracket is the enhancement factor of moist air.
 * @internal
 */
export function vapourFraction(kelvin: number, pascals: number, relativeHumidity: number): number {
  const celsius = kelvin - KELVIN_AT_ZERO_CELSIUS;
  const enhancement = 1.00062 + 3.14e-8 * pascals + 5.6e-7 * celsius * celsius;
  return (relativeHumidity * enhancement * saturationPressure(kelvin)) / pascals;
}

/**
 * Compressibility factor of moist air: Z = 1 − (p/T) [1.58123e-6 − 2.9331e-8 t + 1.1043e-10 t² + (5.707e-6 − 2.051e-8 t) xv
 * + (1.9898e-4 − 2.376e-6 t) xv²] + (p/T)² (1.83e-11 − 0.765e-8 xv²), t in °C: Picard et al. (2008).
 * @internal
 */
export function compressibility(kelvin: number, pascals: number, vapour: number): number {
  const t = kelvin - KELVIN_AT_ZERO_CELSIUS;
  const ratio = pascals / kelvin;
  const second =
    1.58123e-6 -
    2.9331e-8 * t +
    1.1043e-10 * t * t +
    (5.707e-6 - 2.051e-8 * t) * vapour +
    (1.9898e-4 - 2.376e-6 * t) * vapour * vapour;
  return 1 - ratio * second + ratio * ratio * (1.83e-11 - 0.765e-8 * vapour * vapour);
}

/**
 * Density of moist air [kg/m³], CIPM-2007: ρ = p Ma/(Z R T) (1 − xv (1 − Mv/Ma)), R = 8.314472 J/(mol K),
 * Mv = 18.01528e-3 kg/mol, Ma = (28.96546 + 12.011 (xCO2 − 0.0004)) 1e-3 kg/mol, xCO2 = 0.0004 unless given.
 *
 * Picard, Davis, Gläser and Fujii (2008), Revised formula for the density of moist air (CIPM-2007), Metrologia 45,
 * 149–155. Stated for 600–1,100 hPa, 15–27 °C, any humidity, relative uncertainty 2.2e-5 (that figure from memory);
 * outside, the formula continues, with an error far below what a golf ball could show. Saturation is over water also
 * below 0 °C.
 * @throws `FairflightError` when a field is not finite, out of range or unknown
 */
export function moistAirDensity(state: AirState): Density {
  return densityOf(readRecord(airStateFields, state, 'air'));
}

/** {@link moistAirDensity} of a state already read. @internal */
export function densityOf({
  temperature,
  pressure,
  relativeHumidity,
  carbonDioxide = 0.0004,
}: AirState): Density {
  const vapour = vapourFraction(temperature, pressure, relativeHumidity);
  const dry = dryAirMolarMass(carbonDioxide);
  const compressed = compressibility(temperature, pressure, vapour) * GAS_CONSTANT * temperature;
  return si<Density>(((pressure * dry) / compressed) * (1 - vapour * (1 - MOLAR_MASS_WATER / dry)));
}
