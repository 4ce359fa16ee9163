export * from './air.js';
export { type AirState, moistAirDensity } from './density.js';
export * from './make-air.js';
export {
  geometricAltitude,
  geopotentialAltitude,
  type StandardAir,
  standardAtmosphere,
} from './standard-atmosphere.js';
export * from './station-pressure.js';
export * from './terrain.js';
export { airViscosity } from './viscosity.js';
export * from './wind.js';
export * from './wind-from.js';
export { windRatio } from './wind-ratio.js';
