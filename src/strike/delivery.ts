import type { Delivery } from '../inputs/delivery.js';
import type { StrikeInput } from './impact.js';

/** Fills in the defaults of a delivery already read. @internal */
export function numbersOf(delivery: Delivery): Readonly<StrikeInput> {
  return {
    clubSpeed: delivery.clubSpeed,
    attackAngle: delivery.attackAngle,
    clubPath: delivery.clubPath ?? 0,
    faceAngle: delivery.faceAngle ?? 0,
    dynamicLoft: delivery.dynamicLoft,
    toe: delivery.strikeOffset?.toe ?? 0,
    high: delivery.strikeOffset?.high ?? 0,
    closureRate: delivery.closureRate ?? 0,
    mirror: delivery.hand === 'left' ? -1 : 1,
  };
}
