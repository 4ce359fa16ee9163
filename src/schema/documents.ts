import type { ModelChoice } from '../aerodynamics/index.js';
import { aerodynamicModels } from '../aerodynamics/registry.js';
import { modelAsData } from '../aerodynamics/resolve.js';
import { airAt, airAtAltitude } from '../air/index.js';
import { courseWindFields, windOf } from '../air/wind-from.js';
import { ballField } from '../ball/ball.js';
import { clubheadField } from '../clubhead/presets.js';
import { isRecord } from '../errors.js';
import { airFields, airStateFields, placeFields } from '../inputs/air.js';
import { deliveryFields } from '../inputs/delivery.js';
import { partial, type RecordField, record } from '../inputs/field.js';
import { frozen } from '../inputs/frozen.js';
import { launchFields } from '../inputs/launch.js';
import { measuredShotFields } from '../inputs/measured-shot.js';
import { refusal, refuseType } from '../inputs/refuse.js';
import { sceneFields } from '../scene/scene.js';
import { turfField } from '../turf/presets.js';
import type { JsonField } from './json-field.js';

/** Records that can be read from JSON. */
export type DocumentName = 'delivery' | 'launch' | 'scene' | 'clubhead' | 'ball' | 'turf' | 'measuredShot';

const air: JsonField = /* @__PURE__ */ frozen(() => ({
  kind: 'ways',
  label: 'air',
  optional: true,
  ways: [
    { toldBy: Object.keys(airFields), record: record(airFields, 'air by density and viscosity') },
    { toldBy: ['altitude'], record: record(placeFields, 'air by altitude'), make: airAtAltitude },
  ],
  otherwise: { record: record(partial(airStateFields), 'air by thermometer and barometer'), make: airAt },
}));

const wind: JsonField = /* @__PURE__ */ frozen(() => ({
  kind: 'ways',
  label: 'wind',
  optional: true,
  ways: [{ toldBy: ['along', 'across'], record: sceneFields.wind as RecordField }],
  otherwise: { record: record(courseWindFields, 'wind by speed and where it comes from'), make: windOf },
}));

const aerodynamics: JsonField = /* @__PURE__ */ frozen(() => ({
  kind: 'custom',
  label: 'coefficient model',
  optional: true,
  read: readModel,
  json: {
    anyOf: [
      { enum: Object.keys(aerodynamicModels) },
      { type: 'object', properties: { kind: { type: 'string' } }, required: ['kind'] },
    ],
  },
}));

/** What each document holds: the declarations of the inputs, and of the scene what JSON alone allows. */
export const documents: Readonly<Record<DocumentName, JsonField>> = /* @__PURE__ */ frozen(() => ({
  delivery: record(deliveryFields, 'delivery'),
  launch: record(launchFields, 'launch'),
  scene: { kind: 'record', label: 'scene', fields: { ...sceneFields, air, wind, aerodynamics } },
  clubhead: clubheadField,
  ball: ballField,
  turf: turfField,
  measuredShot: record(measuredShotFields, 'measured shot'),
}));

function readModel(choice: unknown, path: string): unknown {
  if (typeof choice !== 'string' && !isRecord(choice)) {
    throw refuseType(path, 'the id of a model or a model as data', choice);
  }
  const model = modelAsData(choice as ModelChoice, path);
  if (model !== undefined) return model;
  throw refusal(
    path,
    `${path} is made of functions, which JSON cannot hold; give an id or a model as data`,
    { value: choice, hint: 'tabulatedModel() and scaledModel() make data' },
    'unsupported',
  );
}
