/**
 * The models one by one, and what makes a model of one's own: coefficients of drag and lift, a shot by
 * every model of a present-day ball, air.
 * @module
 */
export {
  type AerodynamicModel,
  type AerodynamicModelId,
  aerodynamicModels,
  bearmanHarvey1976,
  type CoefficientGrid,
  type CoefficientScale,
  davies1949,
  type FittedModel,
  type FittedModernConstants,
  fittedModern,
  fittedModernConstants,
  lieberman2001,
  type ModelChoice,
  type ModelData,
  naruo2004,
  pennerBearmanHarvey,
  presentDayModels,
  type ReverseMagnusModel,
  resolveModel,
  type ScaledModel,
  scaledModel,
  smitsSmith1994,
  type TableModel,
  tabulatedModel,
  testRangeLine,
  withReverseMagnus,
} from './aerodynamics/index.js';
export {
  airViscosity,
  geometricAltitude,
  geopotentialAltitude,
  moistAirDensity,
  type ReducedPressure,
  type StandardAir,
  standardAtmosphere,
  stationPressure,
} from './air/index.js';
export { type Ensemble, type EnsembleFlight, flyEnsemble, type Spread } from './sensitivity/index.js';
