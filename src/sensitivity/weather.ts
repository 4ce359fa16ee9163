import { type Air, type AirState, airAt, standardAtmosphere } from '../air/index.js';
import { ordinaryAir } from '../air/make-air.js';
import { type Length, si } from '../units/index.js';

/**
 * The air of a scene made warmer and higher. A scene keeps density and viscosity only, so they are scaled by what the
 * change does to air of the given weather; that is exact when `weather` is what the scene's air was made from.
 *
 * Going up, pressure falls as in the standard atmosphere (ISO 2533) and the temperature stays: it has a row of its own.
 * @internal
 */
export function changedAir(air: Air, weather: Partial<AirState>, warmer: number, higher: number): Air {
  if (warmer === 0 && higher === 0) return air;
  const state = { ...ordinaryAir, ...weather };
  const before = airAt(state);
  const ratio = standardAtmosphere(si<Length>(higher)).pressure / standardAtmosphere(si<Length>(0)).pressure;
  const after = airAt({
    ...state,
    temperature: si(state.temperature + warmer),
    pressure: si(state.pressure * ratio),
  });
  return {
    density: si((air.density * after.density) / before.density),
    viscosity: si((air.viscosity * after.viscosity) / before.viscosity),
  };
}
