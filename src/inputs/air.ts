import type { Density, DynamicViscosity, Length, Pressure, Temperature } from '../units/index.js';
import { CELSIUS, HECTOPASCALS, KG_PER_M3, METRES, PASCAL_SECONDS, PERCENT, RATIO } from '../units/unit.js';
import { type Declared, optional, type QuantityField, quantity } from './field.js';
import { frozen } from './frozen.js';

/** The air a ball flies through, the same at every height: density changes by under 1 % over the tallest drive. */
export interface Air {
  /** Density [kg/m³], 0 to 3. */
  readonly density: Density;
  /** Dynamic viscosity [Pa s], 1e-6 to 1e-4. */
  readonly viscosity: DynamicViscosity;
}

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

/** A place of which only the elevation need be known. */
export interface AirPlace {
  /** Height above mean sea level [m], −500 to 5,000. */
  readonly altitude: Length;
  /** Air temperature there [K], 223.15 to 333.15; default 20 °C at sea level, less 6.5 K a kilometre. */
  readonly temperature?: Temperature;
  /** Relative humidity, 0 to 1; default 0.5. */
  readonly relativeHumidity?: number;
}

/** A pressure from a weather report, and where one stands. */
export interface ReducedPressure {
  /** Pressure reduced to sea level, as weather reports give it [Pa], 85,000 to 110,000. */
  readonly seaLevelPressure: Pressure;
  /** Height above mean sea level [m], −500 to 5,000. */
  readonly elevation: Length;
  /**
   * Air temperature at the place [K], 223.15 to 333.15. Without it the pressure is taken as an altimeter setting, which
   * the standard atmosphere alone defines; with it as a weather map's sea-level pressure, reduced by temperature.
   */
  readonly temperature?: Temperature;
}

/** Declaration of {@link Air}. @internal */
export const airFields: Declared<Air> = /* @__PURE__ */ frozen(() => ({
  density: quantity(KG_PER_M3, 0, 3, 1.2, 'air density'),
  viscosity: quantity(PASCAL_SECONDS, 1e-6, 1e-4, 1.8e-5, 'air viscosity'),
}));

/** Declaration of {@link AirState}. @internal */
export const airStateFields: Declared<AirState> = /* @__PURE__ */ frozen(() => ({
  temperature: quantity(CELSIUS, 223.15, 333.15, 293.15, 'air temperature'),
  pressure: quantity(HECTOPASCALS, 30_000, 110_000, 101_325, 'air pressure'),
  relativeHumidity: quantity(PERCENT, 0, 1, 0.5, 'relative humidity'),
  carbonDioxide: optional(quantity(RATIO, 0, 0.01, 0.0004, 'mole fraction of carbon dioxide')),
}));

/** Declaration of {@link AirPlace}. @internal */
export const placeFields: Declared<AirPlace> = /* @__PURE__ */ frozen(() => ({
  altitude: quantity(METRES, -500, 5000, 1600, 'altitude'),
  temperature: optional(airStateFields.temperature),
  relativeHumidity: optional(airStateFields.relativeHumidity),
}));

/** Declaration of {@link ReducedPressure}. @internal */
export const reducedPressureFields: Declared<ReducedPressure> = /* @__PURE__ */ frozen(() => ({
  seaLevelPressure: quantity(HECTOPASCALS, 85_000, 110_000, 101_325, 'pressure reduced to sea level'),
  elevation: placeFields.altitude,
  temperature: optional(airStateFields.temperature),
}));

/** Geopotential altitudes of the standard atmosphere's lowest layer. @internal */
export const geopotentialField: QuantityField<'m'> = /* @__PURE__ */ frozen(() =>
  quantity(METRES, -2000, 11_000, 1600, 'geopotential altitude'),
);

/** Altitudes that are converted from geometric to geopotential and back. @internal */
export const convertedAltitudeField: QuantityField<'m'> = /* @__PURE__ */ frozen(() =>
  quantity(METRES, -2000, 12_000, 1600, 'altitude'),
);
