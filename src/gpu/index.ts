/**
 * A batch, a map and sums over designs on a graphics card, by WebGPU.
 * @module
 */
export type { GpuFlights, GpuFlyOptions } from './fly-columns.js';
export type { GpuMapOptions } from './map.js';
export { type Gpu, openGpu } from './open-gpu.js';
export type { FlightSummary, QuantitySummary } from './summary.js';
export type { HistogramAsked, SummaryOptions, SummaryQuantity } from './summary-options.js';
