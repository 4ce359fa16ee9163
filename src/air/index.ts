export type { Air, AirPlace, AirState, ReducedPressure } from '../inputs/air.js';
export type { Wind, WindProfile } from '../inputs/wind.js';
export type { WindOrigin, WindReadingOf, WindShape } from '../inputs/wind-reading.js';
export { moistAirDensity } from './density.js';
export { airAt, airAtAltitude, defaultAir } from './make-air.js';
export {
  geometricAltitude,
  geopotentialAltitude,
  type StandardAir,
  standardAtmosphere,
} from './standard-atmosphere.js';
export { stationPressure } from './station-pressure.js';
export * from './terrain.js';
export { airViscosity } from './viscosity.js';
export { type WindReading, windFrom } from './wind-from.js';
