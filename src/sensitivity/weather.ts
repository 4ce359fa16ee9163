import { type Air, type AirState, airAt, defaultAir, standardAtmosphere } from '../air/index.js';
import { celsius, hectopascals, type Length, si } from '../units/index.js';

const DEFAULT: AirState = {
  temperature: celsius(20),
  pressure: hectopascals(1013.25),
  relativeHumidity: 0.5,
};

/**
 * The air of a scene made warmer and higher. A scene keeps density and viscosity only, so they are scaled by what the
 * change does to air of the given weather; that is exact when `weather` is what the scene's air was made from.
 *
 * Going up, pressure falls as in the standard atmosphere (ISO 2533) and the temperature stays: it has a row of its own.
 * @internal
 */
export function changedAir(
  air: Air | undefined = defaultAir,
  weather: Partial<AirState>,
  warmer: number,
  higher: number,
): Air {
  if (warmer === 0 && higher === 0) return air;
  const state = { ...DEFAULT, ...weather };
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
