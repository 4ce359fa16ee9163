export type { NumberColumn, PlainColumns } from '../inputs/columns.js';
export { plainColumns } from '../inputs/columns.js';
export type { FlightOptions } from '../inputs/flight-options.js';
export type { BatchKernel } from './engine/batch.js';
export type * from './flight.js';
export { fly } from './fly.js';
export {
  type ConditionColumns,
  type FlightColumns,
  type FlyManyOptions,
  flightEndings,
  flyMany,
  type LaunchColumns,
} from './fly-many.js';
