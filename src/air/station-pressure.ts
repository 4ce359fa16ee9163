import { requireRecord, requireWithin } from '../errors.js';
import type { Length, Pressure, Temperature } from '../units/index.js';
import { si } from '../units/index.js';
import { requireTemperature } from './density.js';
import {
  DRY_AIR_GAS_CONSTANT,
  geopotentialAltitude,
  LAPSE_RATE,
  PRESSURE_EXPONENT,
  standardAtmosphere,
} from './standard-atmosphere.js';

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

const FIELDS = ['seaLevelPressure', 'elevation', 'temperature'] as const;
const GRAVITY = 9.80665;

/**
 * Pressure at the place itself [Pa], which is what the air's density depends on, from one reduced to sea level. To
 * take the reported pressure as it stands is the commonest mistake: at 1,500 m it is about 20 % too high.
 *
 * Without `temperature`: altimeter setting, H + H(p_sea) = H(p) on the standard atmosphere (ISO 2533:1975). With it:
 * p = p_sea exp(−g H/(R Tm)), the column's mean temperature Tm taken as T + 0.0065 H/2 (hypsometric equation, any
 * meteorology textbook; the half lapse is WMO-No. 8's way of reducing, there for low stations; humidity left out).
 * @throws {@link FairflightError} when a field is not finite, out of range or unknown
 */
export function stationPressure(report: ReducedPressure): Pressure {
  requireRecord('report', report, FIELDS);
  const reduced = requireWithin(
    'report.seaLevelPressure',
    report.seaLevelPressure,
    85_000,
    110_000,
    'Pa',
    'if that was hectopascals, pass hectopascals(1013.25)',
  );
  const elevation = requireWithin('report.elevation', report.elevation, -500, 5000, 'm');
  const height = geopotentialAltitude(si<Length>(elevation));
  if (report.temperature === undefined) {
    const { pressure, temperature } = standardAtmosphere(si<Length>(0));
    const shift = (reduced / pressure) ** (1 / PRESSURE_EXPONENT);
    return si<Pressure>(pressure * (shift - (LAPSE_RATE * height) / temperature) ** PRESSURE_EXPONENT);
  }
  const mean = requireTemperature('report.temperature', report.temperature) + (LAPSE_RATE * height) / 2;
  return si<Pressure>(reduced * Math.exp((-GRAVITY * height) / (DRY_AIR_GAS_CONSTANT * mean)));
}
