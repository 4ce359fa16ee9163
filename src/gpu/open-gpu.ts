import type { LaunchColumns } from '../flight/fly-many.js';
import type { Scene } from '../scene/scene.js';
import { createCard } from './card.js';
import { flyManyOn, type GpuFlights, type GpuFlyOptions } from './fly-columns.js';
import { openCard } from './web-gpu.js';

/** A graphics card that flies. */
export interface Gpu {
  /** What the card calls itself. */
  readonly name: string;
  readonly flyMany: (launches: LaunchColumns, scene?: Scene, options?: GpuFlyOptions) => Promise<GpuFlights>;
  readonly close: () => void;
}

export async function openGpu(): Promise<Gpu | undefined> {
  const open = await openCard();
  if (open === undefined) return undefined;
  const card = createCard(open);
  return Object.freeze({
    name: card.name,
    flyMany: (launches, scene, options) => flyManyOn(card, launches, scene, options),
    close: card.close,
  } satisfies Gpu);
}
