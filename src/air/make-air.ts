import { type Air, type AirPlace, type AirState, airStateFields, placeFields } from '../inputs/air.js';
import { partial } from '../inputs/field.js';
import { frozen } from '../inputs/frozen.js';
import { readRecord } from '../inputs/read.js';
import { celsius, type DynamicViscosity, hectopascals, si, type Temperature } from '../units/index.js';
import { densityOf } from './density.js';
import { geopotentialAltitude, LAPSE_RATE, standardAtmosphere } from './standard-atmosphere.js';
import { sutherland } from './viscosity.js';

/** What is not said of the air: 20 °C, 1013.25 hPa, half saturated. @internal */
export const ordinaryAir: AirState = /* @__PURE__ */ frozen(() => ({
  temperature: celsius(20),
  pressure: hectopascals(1013.25),
  relativeHumidity: 0.5,
}));

const anyAirFields = /* @__PURE__ */ frozen(() => partial(airStateFields));

/**
 * Air of a given temperature, pressure and humidity: CIPM-2007 density (see `moistAirDensity`) and Sutherland
 * viscosity. What is left out is 20 °C, 1013.25 hPa, 50 %.
 * @throws `FairflightError` when a field is not finite, out of range or unknown
 * @example airAt({ temperature: celsius(5), pressure: hectopascals(990), relativeHumidity: 0.9 })
 */
export function airAt(state: Partial<AirState> = {}): Air {
  return airOf({ ...ordinaryAir, ...readRecord(anyAirFields, state, 'air') });
}

function airOf(state: AirState): Air {
  return { density: densityOf(state), viscosity: si<DynamicViscosity>(sutherland(state.temperature)) };
}

/**
 * Air at an altitude: pressure from the standard atmosphere, temperature and humidity the user's own. At sea level
 * with nothing else given it is {@link defaultAir}. When the day's pressure is known, {@link airAt} with
 * `stationPressure` is better.
 * @throws `FairflightError` when a field is not finite, out of range or unknown
 * @example airAtAltitude({ altitude: metres(1600), temperature: celsius(28) })
 */
export function airAtAltitude(place: AirPlace): Air {
  const { altitude, temperature, relativeHumidity } = readRecord(placeFields, place, 'place');
  const height = geopotentialAltitude(altitude);
  return airOf({
    temperature: temperature ?? si<Temperature>(ordinaryAir.temperature - LAPSE_RATE * height),
    pressure: standardAtmosphere(height).pressure,
    relativeHumidity: relativeHumidity ?? ordinaryAir.relativeHumidity,
  });
}

/** 20 °C, 1013.25 hPa, 50 % humidity: 1.1993 kg/m³. */
export const defaultAir: Air = /* @__PURE__ */ frozen(() => airAt());
