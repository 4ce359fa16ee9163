import * as z from 'zod/mini';
import type { Launch } from '../scene/index.js';
import type { Angle, AngularSpeed, Speed } from '../units/index.js';
import { parseWith } from './parse.js';
import { quantity } from './quantity.js';

const HALF_TURN = Math.PI;

const launchSchema: z.ZodMiniType<Launch> = z.strictObject({
  ballSpeed: quantity<Speed>({ dimension: 'speed', range: [1, 110] }),
  launchAngle: quantity<Angle>({ dimension: 'angle', range: [-HALF_TURN / 2, HALF_TURN / 2] }),
  launchDirection: z.exactOptional(quantity<Angle>({ dimension: 'angle', range: [-HALF_TURN, HALF_TURN] })),
  spinRate: quantity<AngularSpeed>({ dimension: 'angular speed', range: [0, 2100] }),
  spinAxisTilt: z.exactOptional(quantity<Angle>({ dimension: 'angle', range: [-HALF_TURN, HALF_TURN] })),
  rifleSpin: z.exactOptional(quantity<AngularSpeed>({ dimension: 'angular speed', range: [-2100, 2100] })),
});

/**
 * Reads a {@link Launch} from plain JSON. Every quantity carries its unit, in the key or beside the value:
 * `{ "ballSpeed (mph)": 150, "launchAngle": { "value": 12, "unit": "deg" }, "spinRate (rpm)": 2600 }`.
 * @throws `FairflightError` `invalid-input` for a missing, unknown or unitless field, `outside-range` for a
 * value outside the range the field documents.
 */
export function parseLaunch(json: unknown): Launch {
  return parseWith('launch', launchSchema, json);
}
