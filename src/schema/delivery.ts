import * as z from 'zod/mini';
import type { Delivery } from '../strike/index.js';
import type { Angle, AngularSpeed, Length, Speed } from '../units/index.js';
import { parseWith } from './parse.js';
import { quantity } from './quantity.js';

const angle = (reach: number): z.ZodMiniType<Angle> =>
  quantity<Angle>({ dimension: 'angle', range: [-reach, reach] });
const offset: z.ZodMiniType<Length> = quantity<Length>({ dimension: 'length', range: [-0.1, 0.1] });

const deliverySchema: z.ZodMiniType<Delivery> = z.strictObject({
  clubSpeed: quantity<Speed>({ dimension: 'speed', range: [1, 90] }),
  attackAngle: angle(0.6),
  clubPath: z.exactOptional(angle(Math.PI / 2)),
  faceAngle: z.exactOptional(angle(Math.PI / 2)),
  dynamicLoft: angle(Math.PI / 2),
  strikeOffset: z.exactOptional(z.strictObject({ toe: offset, high: offset })),
  closureRate: z.exactOptional(quantity<AngularSpeed>({ dimension: 'angular speed', range: [-200, 200] })),
  hand: z.exactOptional(z.enum(['right', 'left'])),
});

/**
 * Reads a {@link Delivery} from plain JSON. Every quantity carries its unit, in the key or beside the value:
 * `{ "clubSpeed (mph)": 96, "attackAngle (deg)": 1, "dynamicLoft (deg)": 14, "strikeOffset": { "toe (mm)": 8, "high (mm)": 0 } }`.
 * @throws `FairflightError` `invalid-input` for a missing, unknown or unitless field, `outside-range` for a
 * value outside the range the field documents.
 */
export function parseDelivery(json: unknown): Delivery {
  return parseWith('delivery', deliverySchema, json);
}
