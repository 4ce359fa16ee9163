import { requireRecord, requireWithin } from '../errors.js';
import type { Density, Pressure, Temperature } from '../units/index.js';
import { KELVIN_AT_ZERO_CELSIUS, si } from '../units/index.js';

/** State of the air at one place. */
export interface AirState {
  /** Temperature [K], 223.15 to 333.15 (−50 to 60 °C). */
  readonly temperature: Temperature;
  /** Pressure at the place itself, not reduced to sea level [Pa], 30,000 to 110,000. */
  readonly pressure: Pressure;
  /** Relative humidity, 0 to 1. */
  readonly relativeHumidity: number;
  /** Mole fraction of carbon dioxide, 0 to 0.01; default 0.0004. */
  readonly carbonDioxide?: number;
}

/** Known fields of an {@link AirState}. @internal */
export const AIR_FIELDS: readonly string[] = ['temperature', 'pressure', 'relativeHumidity', 'carbonDioxide'];

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
 * over ice is a little too high.
 * @internal
 */
export function saturationPressure(kelvin: number): number {
  return Math.exp(
    1.2378847e-5 * kelvin * kelvin - 1.9121316e-2 * kelvin + 33.93711047 - 6.3431645e3 / kelvin,
  );
}

/** Mole fraction of water vapour, with the enhancement factor of moist air. @internal */
export function vapourFraction(kelvin: number, pascals: number, relativeHumidity: number): number {
  const celsius = kelvin - KELVIN_AT_ZERO_CELSIUS;
  const enhancement = 1.00062 + 3.14e-8 * pascals + 5.6e-7 * celsius * celsius;
  return (relativeHumidity * enhancement * saturationPressure(kelvin)) / pascals;
}

/** Compressibility factor Z of moist air. @internal */
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
 * Density of moist air [kg/m³], CIPM-2007: ρ = p Ma/(Z R T) (1 − xv (1 − Mv/Ma)).
 *
 * Picard, Davis, Gläser and Fujii (2008), Revised formula for the density of moist air (CIPM-2007), Metrologia 45,
 * 149–155. Stated for 600–1,100 hPa, 15–27 °C, any humidity, relative uncertainty 2.2e-5 (that figure from memory);
 * outside, the formula continues, with an error far below what a golf ball could show. Saturation is over water also
 * below 0 °C.
 * @throws {@link FairflightError} when a field is not finite, out of range or unknown
 */
export function moistAirDensity(state: AirState): Density {
  const { kelvin, pascals, humidity, carbonDioxide } = requireAirState(state);
  const vapour = vapourFraction(kelvin, pascals, humidity);
  const dry = dryAirMolarMass(carbonDioxide);
  const compressed = compressibility(kelvin, pascals, vapour) * GAS_CONSTANT * kelvin;
  return si<Density>(((pascals * dry) / compressed) * (1 - vapour * (1 - MOLAR_MASS_WATER / dry)));
}

function requireAirState(state: AirState): {
  readonly kelvin: number;
  readonly pascals: number;
  readonly humidity: number;
  readonly carbonDioxide: number;
} {
  requireRecord('air', state, AIR_FIELDS);
  return {
    kelvin: requireTemperature('air.temperature', state.temperature),
    pascals: requireWithin(
      'air.pressure',
      state.pressure,
      30_000,
      110_000,
      'Pa',
      'if that was hectopascals, pass hectopascals(1013.25)',
    ),
    humidity: requireWithin(
      'air.relativeHumidity',
      state.relativeHumidity,
      0,
      1,
      '',
      'half saturated is 0.5, not 50',
    ),
    carbonDioxide: requireWithin('air.carbonDioxide', state.carbonDioxide ?? 0.0004, 0, 0.01, ''),
  };
}

/** The temperature when it lies between −50 and 60 °C. @internal */
export function requireTemperature(field: string, temperature: Temperature): number {
  return requireWithin(
    field,
    temperature,
    223.15,
    333.15,
    'K',
    'if that was degrees Celsius, pass celsius(20)',
  );
}
