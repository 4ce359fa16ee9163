import { requireRecord, requireWithin } from '../errors.js';
import type { Length, Temperature } from '../units/index.js';
import { celsius, hectopascals, si } from '../units/index.js';
import type { Air } from './air.js';
import { AIR_FIELDS, type AirState, moistAirDensity } from './density.js';
import { geopotentialAltitude, LAPSE_RATE, standardAtmosphere } from './standard-atmosphere.js';
import { airViscosity } from './viscosity.js';

const DEFAULT_TEMPERATURE = celsius(20);
const DEFAULT_HUMIDITY = 0.5;

/**
 * Air of a given temperature, pressure and humidity: CIPM-2007 density (see {@link moistAirDensity}) and Sutherland
 * viscosity. What is left out is 20 °C, 1013.25 hPa, 50 %.
 * @throws {@link FairflightError} when a field is not finite, out of range or unknown
 * @example airAt({ temperature: celsius(5), pressure: hectopascals(990), relativeHumidity: 0.9 })
 */
export function airAt(state: Partial<AirState> = {}): Air {
  requireRecord('air', state, AIR_FIELDS);
  const full: AirState = {
    temperature: DEFAULT_TEMPERATURE,
    pressure: hectopascals(1013.25),
    relativeHumidity: DEFAULT_HUMIDITY,
    ...state,
  };
  return { density: moistAirDensity(full), viscosity: airViscosity(full.temperature) };
}

/** A place of which only the elevation need be known. */
export interface Place {
  /** Height above mean sea level [m], −500 to 5,000. */
  readonly altitude: Length;
  /** Air temperature there [K], 223.15 to 333.15; default 20 °C at sea level, less 6.5 K a kilometre. */
  readonly temperature?: Temperature;
  /** Relative humidity, 0 to 1; default 0.5. */
  readonly relativeHumidity?: number;
}

/**
 * Air at an altitude: pressure from the standard atmosphere, temperature and humidity the user's own. At sea level
 * with nothing else given it is {@link defaultAir}. When the day's pressure is known, {@link airAt} with
 * {@link stationPressure} is better.
 * @throws {@link FairflightError} when a field is not finite, out of range or unknown
 * @example airAtAltitude({ altitude: metres(1600), temperature: celsius(28) })
 */
export function airAtAltitude(place: Place): Air {
  requireRecord('place', place, ['altitude', 'temperature', 'relativeHumidity']);
  const altitude = si<Length>(requireWithin('place.altitude', place.altitude, -500, 5000, 'm'));
  const height = geopotentialAltitude(altitude);
  return airAt({
    temperature: place.temperature ?? si<Temperature>(DEFAULT_TEMPERATURE - LAPSE_RATE * height),
    pressure: standardAtmosphere(height).pressure,
    relativeHumidity: place.relativeHumidity ?? DEFAULT_HUMIDITY,
  });
}

/** 20 °C, 1013.25 hPa, 50 % humidity: 1.1993 kg/m³. */
export const defaultAir: Air = /* @__PURE__ */ airAt();
