export type { GpuFlights, GpuFlyOptions } from './fly-columns.js';
export { type Gpu, openGpu } from './open-gpu.js';
