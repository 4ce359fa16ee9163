import type * as z from 'zod/mini';
import { ballField } from '../ball/ball.js';
import { clubheadField } from '../clubhead/presets.js';
import type { Ball } from '../inputs/ball.js';
import type { Clubhead } from '../inputs/clubhead.js';
import type { Delivery } from '../inputs/delivery.js';
import type { Launch } from '../inputs/launch.js';
import type { MeasuredShot } from '../inputs/measured-shot.js';
import { readChoice, readField } from '../inputs/read.js';
import type { Turf } from '../inputs/turf.js';
import type { Scene } from '../scene/index.js';
import { turfField } from '../turf/presets.js';
import { type DocumentName, documents } from './documents.js';
import type { JsonSchema } from './json-field.js';
import { describeField } from './json-schema.js';
import { parseWith } from './parse.js';
import { schemaOf } from './schema-of.js';

function schemaFor(name: DocumentName): z.ZodMiniType {
  return schemaOf(documents[name]);
}

const deliverySchema: z.ZodMiniType = /* @__PURE__ */ schemaFor('delivery');
const launchSchema: z.ZodMiniType = /* @__PURE__ */ schemaFor('launch');
const sceneSchema: z.ZodMiniType = /* @__PURE__ */ schemaFor('scene');
const clubheadSchema: z.ZodMiniType = /* @__PURE__ */ schemaFor('clubhead');
const ballSchema: z.ZodMiniType = /* @__PURE__ */ schemaFor('ball');
const turfSchema: z.ZodMiniType = /* @__PURE__ */ schemaFor('turf');
const measuredShotSchema: z.ZodMiniType = /* @__PURE__ */ schemaFor('measuredShot');

/**
 * Reads a {@link Delivery} from plain JSON. Every quantity carries its unit, in the key or beside the value:
 * `{ "clubSpeed (mph)": 96, "attackAngle (deg)": 1, "dynamicLoft (deg)": 14, "strikeOffset": { "toe (mm)": 8, "high (mm)": 0 } }`.
 * @throws `FairflightError` `invalid-input` for a missing, unknown or unitless field, `outside-range` for a
 * value outside the range the field documents
 */
export function parseDelivery(json: unknown): Delivery {
  return parseWith('delivery', deliverySchema, json);
}

/**
 * Reads a {@link Launch} from plain JSON. Every quantity carries its unit, in the key or beside the value:
 * `{ "ballSpeed (mph)": 150, "launchAngle": { "value": 12, "unit": "deg" }, "spinRate (rpm)": 2600 }`.
 * @throws `FairflightError` `invalid-input` for a missing, unknown or unitless field, `outside-range` for a
 * value outside the range the field documents
 */
export function parseLaunch(json: unknown): Launch {
  return parseWith('launch', launchSchema, json);
}

/**
 * Reads a {@link Scene} from plain JSON. Every quantity carries its unit, in the key or beside the value:
 * `{ "air": { "altitude (m)": 1200, "temperature (C)": 24 }, "wind": { "speed (mph)": 8, "clock": 1.5, "terrain": "links-course" },
 * "ground": { "elevation (ft)": -30 }, "turf": "firm", "aerodynamics": "fitted-modern" }`.
 *
 * Air is given by temperature, pressure and humidity, or by altitude, or by density and viscosity; wind by its
 * components (`along`, `across`) or as a reading (see `WindReading`). Turf and ball are records or names of
 * presets; the coefficient model is the id of a built-in one or data (`{ "kind": "scaled", "of": "fitted-modern", "drag": 0.98 }`).
 * @throws `FairflightError` `invalid-input` for a missing, unknown or unitless field, `outside-range` for a
 * value outside the range the field documents, `unsupported` for a model made of functions
 */
export function parseScene(json: unknown): Scene {
  return parseWith('scene', sceneSchema, json);
}

/**
 * Reads a {@link Clubhead} from plain JSON: the name of a preset, or a record whose quantities carry their units.
 * @throws `FairflightError` `invalid-input` for a missing, unknown or unitless field, `outside-range` for a
 * value outside the field's range
 */
export function parseClubhead(json: unknown): Clubhead {
  const head = parseWith('clubhead', clubheadSchema, json);
  return readField(clubheadField, head, 'clubhead') as Clubhead;
}

/**
 * Reads a {@link Ball} from plain JSON: the name of a preset, or a record whose quantities carry their units.
 * @throws `FairflightError` `invalid-input` for a missing, unknown or unitless field, `outside-range` for a
 * value outside the range the field documents
 */
export function parseBall(json: unknown): Ball {
  return readField(ballField, parseWith('ball', ballSchema, json), 'ball') as Ball;
}

/**
 * Reads a {@link Turf} from plain JSON: the name of a preset, or a record whose quantities carry their units.
 * @throws `FairflightError` `invalid-input` for a missing, unknown or unitless field, `outside-range` for a
 * value outside the range the field documents
 */
export function parseTurf(json: unknown): Turf {
  return readField(turfField, parseWith('turf', turfSchema, json), 'turf') as Turf;
}

/**
 * Reads a {@link MeasuredShot} from plain JSON. Every quantity carries its unit, in the key or beside the value:
 * `{ "clubSpeed (mph)": 96, "ballSpeed (mph)": 142, "carry (yd)": 232, "club": "driver" }`. For tables see {@link readShots}.
 * @throws `FairflightError` `invalid-input` for an unknown or unitless field, `outside-range` for a value outside
 * the range the field documents
 */
export function parseMeasuredShot(json: unknown): MeasuredShot {
  return parseWith('shot', measuredShotSchema, json);
}

/**
 * The JSON Schema, draft 2020-12, of what the parser of that name reads, for editors, forms and other languages.
 * Quantities have their unit in the key or beside the value; each unit has its range.
 *
 * The parser is a little more liberal (units in any case, with blanks to spare) and knows what a schema can't say: a
 * field given twice, an origin of the wind said twice, a wind profile that makes no sense, the parts of a coefficient model.
 * @throws `FairflightError` `invalid-input` for another name
 * @example JSON.stringify(jsonSchemaOf('launch'))
 */
export function jsonSchemaOf(name: DocumentName): JsonSchema {
  const document = readChoice(Object.keys(documents) as DocumentName[], name, 'name');
  return {
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    title: document,
    ...describeField(documents[document]),
  };
}
