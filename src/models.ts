/**
 * The models one by one, and what makes a model of one's own: coefficients of drag and lift, air.
 * @module
 */
export {
  type AerodynamicModel,
  type AerodynamicModelId,
  aerodynamicModels,
  type CoefficientScale,
  davies1949,
  type FittedModel,
  type FittedModernConstants,
  fittedModern,
  fittedModernConstants,
  type ModelChoice,
  type ModelData,
  pennerBearmanHarvey,
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
