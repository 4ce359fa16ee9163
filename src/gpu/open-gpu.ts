import type { LaunchColumns } from '../flight/fly-many.js';
import type { CarryMap, MapQuestion } from '../optimum/map.js';
import type { Scene } from '../scene/scene.js';
import type { Design } from '../sweep/design.js';
import { createCard } from './card.js';
import { flyManyOn, type GpuFlights, type GpuFlyOptions } from './fly-columns.js';
import { carryMapOn, type GpuMapOptions } from './map.js';
import { type FlightSummary, summariseOn } from './summary.js';
import type { SummaryOptions } from './summary-options.js';
import { openCard } from './web-gpu.js';

/**
 * A graphics card that flies, in single precision: landings are within about 0.1 mm of `fly` at its finest, at worst within 2 mm
 * (docs/gpu.md says over which flights). Calls may overlap; the card takes them one after another.
 */
export interface Gpu {
  /** What the card calls itself. */
  readonly name: string;
  /**
   * The columns of `flyMany`, with the same checks and endings.
   * @throws `FairflightError` as `flyMany`; `unsupported` for a coefficient model that no table holds; `system` when the
   *   card is gone
   */
  readonly flyMany: (launches: LaunchColumns, scene?: Scene, options?: GpuFlyOptions) => Promise<GpuFlights>;
  /**
   * The map of `carryMap`. Runs, where asked for, are of the processor.
   * @throws `FairflightError` as `carryMap` and as {@link Gpu.flyMany}
   */
  readonly carryMap: (question: MapQuestion, scene?: Scene, options?: GpuMapOptions) => Promise<CarryMap>;
  /**
   * Flies a Sobol design of launches whose points are drawn on the card, the same for the same seed as those of `sweep`
   * to the rounding of single precision, and brings back sums alone: a thousand million flights need no more memory
   * than a million.
   * @throws `FairflightError` as `sweep` and as {@link Gpu.flyMany}; `unsupported` for other designs and factors
   */
  readonly summarise: (design: Design, scene?: Scene, options?: SummaryOptions) => Promise<FlightSummary>;
  /** Gives the card back; later calls are refused. */
  readonly close: () => void;
}

/**
 * Opens the graphics card by WebGPU: that of the browser, or in Node that of the optional package `webgpu`. Resolves to
 * `undefined` where there is neither, or no card; it never throws.
 * @example const gpu = await openGpu(); const flights = await (gpu?.flyMany(launches) ?? flyMany(launches));
 */
export async function openGpu(): Promise<Gpu | undefined> {
  const open = await openCard();
  if (open === undefined) return undefined;
  const card = createCard(open);
  return Object.freeze({
    name: card.name,
    flyMany: (launches, scene, options) => flyManyOn(card, launches, scene, options),
    carryMap: (question, scene, options) => carryMapOn(card, question, scene, options),
    summarise: (design, scene, options) => summariseOn(card, design, scene, options),
    close: card.close,
  } satisfies Gpu);
}
