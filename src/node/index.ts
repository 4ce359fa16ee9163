/**
 * Sweeps on worker threads and into files, for Node.js.
 * @module
 */
export type { SweepFormat, WarningCounts } from './formats/format.js';
export * from './inspect.js';
export type { ModelModule } from './model-from.js';
export { type ParallelOptions, sweepInParallel } from './pool.js';
export * from './sweep-to-file.js';
