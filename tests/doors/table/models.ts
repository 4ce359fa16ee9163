import { gridFields, modelDataField, modelFields } from '../../../src/aerodynamics/model-fields.js';
import { scaleFields } from '../../../src/aerodynamics/scaled.js';
import {
  airStateFields,
  convertedAltitudeField,
  geopotentialField,
  reducedPressureFields,
} from '../../../src/inputs/air.js';
import { flightOptionFields } from '../../../src/inputs/flight-options.js';
import { launchFields } from '../../../src/inputs/launch.js';
import * as models from '../../../src/models.js';
import * as reference from '../../../src/reference.js';
import { type Door, door, one, open, options, record, scene } from '../door.js';
import * as valid from '../valid.js';

const ofModel = modelDataField({
  kind: 'custom',
  read: (value, path) => models.resolveModel(value as never, path),
  label: 'model',
});
const air = { temperature: 290, pressure: 1e5, relativeHumidity: 0.4, carbonDioxide: 4e-4 };

export const modelDoors: readonly Door[] = [
  door('models.tabulatedModel', models.tabulatedModel, record('grid', gridFields, valid.grid)),
  door(
    'models.scaledModel',
    models.scaledModel,
    open('model', 'fitted-modern'),
    record('scale', scaleFields, { drag: 0.97, lift: 1.02 }),
  ),
  door('models.withReverseMagnus', models.withReverseMagnus, open('model', 'fitted-modern')),
  door('models.resolveModel (functions)', models.resolveModel, {
    ...record('aerodynamics', modelFields, { ...models.fittedModern }),
    read: models.resolveModel as never,
  }),
  ...[
    { kind: 'table', ...valid.grid },
    { kind: 'fitted', id: 'own', source: valid.grid.source, constants: { ...models.fittedModernConstants } },
    { kind: 'scaled', of: 'fitted-modern', drag: 0.97, lift: 1.02 },
    { kind: 'reverse-magnus', of: 'fitted-modern' },
  ].map((data) =>
    door(`models.resolveModel (${data.kind})`, models.resolveModel, {
      ...one('aerodynamics', ofModel, data),
      read: models.resolveModel as never,
    }),
  ),
  door(
    'models.flyEnsemble',
    models.flyEnsemble,
    record('launch', launchFields, valid.launch),
    scene({ wind: { along: 3, across: -1 } }),
    options(flightOptionFields, { tolerance: 1e-3, timeLimit: 60 }),
  ),
  door('models.airViscosity', models.airViscosity, one('temperature', airStateFields.temperature, 290)),
  door('models.moistAirDensity', models.moistAirDensity, record('air', airStateFields, air)),
  door('models.standardAtmosphere', models.standardAtmosphere, one('altitude', geopotentialField, 1600)),
  door(
    'models.geopotentialAltitude',
    models.geopotentialAltitude,
    one('geometric', convertedAltitudeField, 1600),
  ),
  door(
    'models.geometricAltitude',
    models.geometricAltitude,
    one('geopotential', convertedAltitudeField, 1600),
  ),
  door(
    'models.stationPressure',
    models.stationPressure,
    record('report', reducedPressureFields, { seaLevelPressure: 101_000, elevation: 200, temperature: 290 }),
  ),
  door(
    'reference.flyReference',
    reference.flyReference,
    record('launch', launchFields, valid.launch),
    scene(),
    options(flightOptionFields, { timeLimit: 60 }),
  ),
];
