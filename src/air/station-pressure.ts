import { STANDARD_GRAVITY } from '../gravity.js';
import { type ReducedPressure, reducedPressureFields } from '../inputs/air.js';
import { readRecord } from '../inputs/read.js';
import type { Length, Pressure } from '../units/index.js';
import { si } from '../units/index.js';
import {
  DRY_AIR_GAS_CONSTANT,
  geopotentialAltitude,
  LAPSE_RATE,
  PRESSURE_EXPONENT,
  standardAtmosphere,
} from './standard-atmosphere.js';

/**
 * Pressure at the place itself [Pa], which is what the air's density depends on, from one reduced to sea level. To
 * take the reported pressure as it stands is the commonest mistake: at 1,500 m it is about 20 % too high.
 *
 * Without `temperature`: altimeter setting, H + H(p_sea) = H(p) on the standard atmosphere (ISO 2533:1975). With it:
 * p = p_sea exp(−g H/(R Tm)), the column's mean temperature Tm taken as T + 0.0065 H/2 (hypsometric equation, any
 * meteorology textbook; the half lapse is WMO-No. 8's way of reducing, there for low stations; humidity left out).
 * @throws `FairflightError` when a field is not finite, out of range or unknown
 */
export function stationPressure(report: ReducedPressure): Pressure {
  const {
    seaLevelPressure,
    elevation,
    temperature: here,
  } = readRecord(reducedPressureFields, report, 'report');
  const height = geopotentialAltitude(elevation);
  if (here === undefined) {
    const { pressure, temperature } = standardAtmosphere(si<Length>(0));
    const shift = (seaLevelPressure / pressure) ** (1 / PRESSURE_EXPONENT);
    return si<Pressure>(pressure * (shift - (LAPSE_RATE * height) / temperature) ** PRESSURE_EXPONENT);
  }
  const mean = here + (LAPSE_RATE * height) / 2;
  return si<Pressure>(
    seaLevelPressure * Math.exp((-STANDARD_GRAVITY * height) / (DRY_AIR_GAS_CONSTANT * mean)),
  );
}
