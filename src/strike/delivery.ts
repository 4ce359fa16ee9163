import type { Delivery } from '../inputs/delivery.js';

/** A delivery with its defaults filled in, as plain numbers. @internal */
export interface StrikeNumbers {
  readonly clubSpeed: number;
  readonly attackAngle: number;
  readonly clubPath: number;
  readonly faceAngle: number;
  readonly dynamicLoft: number;
  readonly toe: number;
  readonly high: number;
  readonly closureRate: number;
  /** 1 right-handed, −1 left-handed. */
  readonly mirror: 1 | -1;
}

/** Fills in the defaults of a delivery already read. @internal */
export function numbersOf(delivery: Delivery): StrikeNumbers {
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
