export type { ModelNumbers } from '../aerodynamics/probe.js';
export type { SobolScramble } from '../numerics/sobol.js';
export { rowWarnings } from '../warnings/bits.js';
export type { ColumnAbout, SweepAbout } from './about.js';
export type * from './design.js';
export { type DesignRowOptions, type DesignRows, designRows } from './design-rows.js';
export { type FactorName, type FactorSpec, type FactorValues, sweepFactors } from './factors.js';
export * from './indices.js';
export type { OutputName } from './outputs.js';
export type { RowRange } from './row-range.js';
export type { SweepBase } from './setup.js';
export { type RowStatus, rowStatuses } from './status.js';
export {
  type AbortLike,
  type ChunkControl,
  type ChunkOptions,
  columnOf,
  type SweepChunk,
  type SweepOptions,
  type SweepProgress,
  type SweepResult,
  type SweepRows,
  sweep,
  sweepChunks,
} from './sweep.js';
