/** Every public function, with arguments that are fine and the declaration of each. */

import { terrains } from '../../src/air/index.js';
import * as batch from '../../src/batch.js';
import { clubheadField } from '../../src/clubhead/presets.js';
import { aimField } from '../../src/dispersion/aim.js';
import { dispersionOptionFields } from '../../src/dispersion/disperse.js';
import { distanceField, LIES, strokesOptionFields } from '../../src/dispersion/expected-strokes.js';
import { fasterOptionFields, fasterQuestionFields } from '../../src/dispersion/faster-question.js';
import { holeField } from '../../src/dispersion/hole.js';
import * as dispersion from '../../src/dispersion/index.js';
import { deliverySpreadField, launchSpreadField } from '../../src/dispersion/spread.js';
import { strokesOnHoleOptionFields } from '../../src/dispersion/strokes-on-hole.js';
import { conditionFields, flyManyOptionFields } from '../../src/flight/fly-many.js';
import * as root from '../../src/index.js';
import {
  airStateFields,
  convertedAltitudeField,
  geopotentialField,
  placeFields,
  reducedPressureFields,
} from '../../src/inputs/air.js';
import { deliveryFields, strikeOffsetFields } from '../../src/inputs/delivery.js';
import { choice, type Field, type Fields, optional, partial } from '../../src/inputs/field.js';
import { flightOptionFields } from '../../src/inputs/flight-options.js';
import { landingFields } from '../../src/inputs/landing.js';
import { launchFields } from '../../src/inputs/launch.js';
import { measuredShotFields } from '../../src/inputs/measured-shot.js';
import { greenSpeedField } from '../../src/inputs/turf.js';
import { windReadingFields } from '../../src/inputs/wind-reading.js';
import * as models from '../../src/models.js';
import { launchQuestionFields } from '../../src/optimum/best-launch.js';
import { loftQuestionFields } from '../../src/optimum/best-loft.js';
import { inferOptionFields, measuredLaunchFields } from '../../src/optimum/infer-loft.js';
import { mapOptionFields, mapQuestionFields } from '../../src/optimum/map.js';
import { optimumOptionFields } from '../../src/optimum/optimum.js';
import { carryField, speedOptionFields } from '../../src/optimum/speed-for-carry.js';
import * as reference from '../../src/reference.js';
import { sceneFields } from '../../src/scene/scene.js';
import { faceMapOptionFields } from '../../src/sensitivity/face-map.js';
import { sensitivityOptionFields } from '../../src/sensitivity/sensitivities.js';
import { strikeQualityOptionFields, strikeReadingFields } from '../../src/sensitivity/strike-quality.js';
import { attributionFields } from '../../src/session/attribution-options.js';
import { calibrationOptionFields } from '../../src/session/calibration-options.js';
import * as session from '../../src/session/index.js';
import { scatterTrendOptionFields } from '../../src/session/scatter-trend.js';
import { twoScenesFields } from '../../src/session/standardise.js';
import { sessionOptionFields } from '../../src/session/summarise.js';
import { trainingOptionFields } from '../../src/session/training-log.js';
import { runOptionFields } from '../../src/shot/run-out.js';
import { shotOptionFields } from '../../src/shot/shot-options.js';
import { locateOptionFields } from '../../src/strike/locate.js';
import { strikeOptionFields } from '../../src/strike/strike.js';
import * as sweeps from '../../src/sweep/index.js';
import { designField } from '../../src/sweep/points.js';
import { chunkOptionFields, sweepOptionFields } from '../../src/sweep/sweep.js';
import { warningTextOptionFields } from '../../src/warnings/warning-text.js';
import type { Argument } from './declared.js';
import * as valid from './valid.js';

/** A public function under test. */
export interface Door {
  /** Entry and name, as `session.calibrate`; a second row of one function says in brackets what differs. */
  readonly name: string;
  /** Calls it and uses up what it gives. */
  readonly call: (...args: readonly unknown[]) => unknown;
  readonly args: readonly Argument[];
}

type Callable = (...args: readonly never[]) => unknown;

function record(fields: unknown, label = 'record'): Field {
  return { kind: 'record', fields: fields as Fields, label };
}

/** An argument that is a record. */
function of(rootName: string, fields: unknown, value: unknown): Argument {
  return { root: rootName, field: record(fields), valid: value };
}

/** A question whose parts are named by themselves. */
function apart(fields: Fields, value: unknown): Argument {
  return { root: 'subject', field: record(fields), valid: value, apart: true };
}

/** An argument of a field's own. */
function one(rootName: string, field: Field, value: unknown): Argument {
  return { root: rootName, field, valid: value };
}

function options(fields: unknown, value: unknown): Argument {
  return { root: 'options', field: optional(record(fields)), valid: value };
}

function sceneOf(value: unknown = valid.scene): Argument {
  return { root: 'scene', field: optional(record(sceneFields)), valid: value };
}

function listOf(rootName: string, fields: unknown, value: readonly unknown[], least: number): Argument {
  const field: Field = { kind: 'list', of: record(fields), least, most: 1_000_000, label: rootName };
  return { root: rootName, field, valid: value };
}

/** Columns: every field of the record a list. */
function columns(rootName: string, fields: Fields, value: unknown): Argument {
  const lists = Object.entries(fields).map(([name, field]): [string, Field] => {
    const list: Field = { kind: 'list', of: { ...field }, least: 0, most: 1e9, label: name };
    return [name, field.optional === true ? optional(list) : list];
  });
  return { root: rootName, field: record(Object.fromEntries(lists)), valid: value };
}

function door(entry: string, call: unknown, ...args: readonly Argument[]): Door {
  return { name: entry, call: call as Door['call'], args };
}

/** A function that gives a chunk after the other: all of them. */
function drained(call: (...args: readonly never[]) => AsyncIterable<unknown>): Callable {
  return async (...args) => {
    const all: unknown[] = [];
    for await (const part of call(...args)) all.push(part);
    return all;
  };
}

const shots = (least = 0) => listOf('shots', measuredShotFields, valid.shots, least);
const scatteredClub = { delivery: record(deliveryFields), spread: deliverySpreadField } as Fields;
const scatteredBall = { launch: record(launchFields), spread: launchSpreadField } as Fields;
const cloud = { shots: 64, sampling: 'sobol', seed: 1 };
const design = {
  kind: 'sobol',
  count: 8,
  scramble: 'owen',
  seed: 1,
  factors: [{ name: 'launch.spinRate', from: 200, to: 300 }],
};
const sweepOptions = { ...valid.shotOptions, clubhead: undefined, from: valid.launch, outputs: ['carry'] };
const columnsOfTwo = Object.fromEntries(Object.entries(valid.launch).map(([name, x]) => [name, [x, x]]));
const flight = root.fly(valid.launch as never);

/** Every public function that takes a record, a list or a checked number. */
export const doors: readonly Door[] = [
  door(
    'root.strike',
    root.strike,
    of('delivery', deliveryFields, valid.delivery),
    options(strikeOptionFields, { clubhead: valid.clubhead, ball: valid.scene.ball, gearElasticity: 0.3 }),
  ),
  door(
    'root.strike (oblique law)',
    root.strike,
    of('delivery', deliveryFields, valid.delivery),
    options(strikeOptionFields, { clubhead: valid.oblique }),
  ),
  door(
    'root.fly',
    root.fly,
    of('launch', launchFields, valid.launch),
    sceneOf(),
    options(flightOptionFields, { tolerance: 1e-3, timeLimit: 60 }),
  ),
  door(
    'root.fly (logarithmic wind)',
    root.fly,
    of('launch', launchFields, valid.launch),
    sceneOf(valid.profiles[0]),
  ),
  door(
    'root.fly (power-law wind)',
    root.fly,
    of('launch', launchFields, valid.launch),
    sceneOf(valid.profiles[1]),
  ),
  door(
    'root.flyMany',
    root.flyMany,
    columns('launches', launchFields as Fields, columnsOfTwo),
    sceneOf(),
    options(
      { ...flyManyOptionFields, conditions: optional(columns('', conditionFields, {}).field) },
      { tolerance: 1e-3, timeLimit: 60, conditions: { windAlong: [1, 2] } },
    ),
  ),
  door(
    'root.runOut',
    root.runOut,
    of('landing', landingFields, valid.landing),
    sceneOf(),
    options(runOptionFields, { timeLimit: 60 }),
  ),
  door(
    'root.playShot (delivery)',
    root.playShot,
    of('delivery', deliveryFields, valid.delivery),
    sceneOf(),
    options(shotOptionFields, valid.shotOptions),
  ),
  door(
    'root.playShot (launch)',
    root.playShot,
    of('launch', launchFields, valid.launch),
    sceneOf(),
    options(shotOptionFields, valid.shotOptions),
  ),
  door(
    'root.bestLaunch',
    root.bestLaunch,
    of('launch', launchQuestionFields, { ballSpeed: 65, attackAngle: 0.02 }),
    sceneOf(),
    options(optimumOptionFields, {
      ...valid.shotOptions,
      maximise: 'carry',
      dynamicLoft: { min: 0.2, max: 0.3 },
      minimumDescentAngle: 0.2,
    }),
  ),
  door(
    'root.bestLaunch (freely)',
    root.bestLaunch,
    of('launch', launchQuestionFields, {
      ballSpeed: 65,
      freely: { launchAngle: { min: 0.1, max: 0.2 }, spinRate: { min: 200, max: 300 } },
    }),
  ),
  door(
    'root.bestLoft',
    root.bestLoft,
    of('delivery', loftQuestionFields, { clubSpeed: 43, attackAngle: 0.01, deliveredLoft: 0.3 }),
    sceneOf(),
    options(optimumOptionFields, {
      ...valid.shotOptions,
      maximise: 'total',
      dynamicLoft: { min: 0.2, max: 0.3 },
      minimumDescentAngle: 0.2,
    }),
  ),
  door(
    'root.speedForCarry',
    root.speedForCarry,
    one('carry', carryField, 180),
    sceneOf(),
    options(speedOptionFields, {
      ...valid.shotOptions,
      attackAngle: 0.01,
      dynamicLoft: 0.25,
      clubSpeed: { min: 30, max: 55 },
    }),
  ),
  door(
    'root.carryMap',
    root.carryMap,
    of('launch', mapQuestionFields, {
      ballSpeed: 65,
      launchAngle: { min: 0.1, max: 0.3 },
      spinRate: { min: 200, max: 400 },
    }),
    sceneOf(),
    options(mapOptionFields, { tolerance: 1e-3, timeLimit: 60, columns: 3, rows: 2, withRun: true }),
  ),
  door(
    'root.sensitivities',
    root.sensitivities,
    of('delivery', deliveryFields, valid.delivery),
    sceneOf(),
    options(sensitivityOptionFields, {
      ...valid.shotOptions,
      weather: { temperature: 290, pressure: 1e5, relativeHumidity: 0.4, carbonDioxide: 4e-4 },
    }),
  ),
  door(
    'root.strikeQuality',
    root.strikeQuality,
    of('readings', strikeReadingFields, {
      clubSpeed: 45,
      ballSpeed: 65,
      spinLoft: 0.23,
      launchAngle: 0.2,
      spinRate: 270,
      carry: 200,
    }),
    sceneOf(),
    options(strikeQualityOptionFields, {
      ...valid.shotOptions,
      readingErrors: { clubSpeed: 0.01, ballSpeed: 0.01 },
    }),
  ),
  door(
    'root.locateStrike',
    root.locateStrike,
    of('measured', measuredShotFields, valid.measured),
    options(locateOptionFields, {
      clubhead: valid.clubhead,
      ball: valid.scene.ball,
      hand: 'right',
      readingErrors: { faceAngle: 0.02 },
      priors: { toe: { mean: 0, standardDeviation: 0.01 } },
    }),
  ),
  door('root.airAt', root.airAt, {
    ...of('air', partial(airStateFields), {
      temperature: 290,
      pressure: 1e5,
      relativeHumidity: 0.4,
      carbonDioxide: 4e-4,
    }),
    field: optional(record(partial(airStateFields))),
  }),
  door(
    'root.airAtAltitude',
    root.airAtAltitude,
    of('place', placeFields, { altitude: 1600, temperature: 290, relativeHumidity: 0.3 }),
  ),
  door(
    'root.windFrom (clock)',
    root.windFrom,
    of('wind', windReadingFields(Object.keys(terrains)), {
      speed: 4,
      clock: 2,
      terrain: 'links-course',
      measuredAt: 10,
    }),
  ),
  door(
    'root.windFrom (bearing)',
    root.windFrom,
    of('wind', windReadingFields(Object.keys(terrains)), {
      speed: 4,
      bearing: 1,
      targetBearing: 2,
      profile: { kind: 'power', exponent: 0.14 },
      measuredAt: 10,
    }),
  ),
  door('root.rollingResistanceOfGreen', root.rollingResistanceOfGreen, one('distance', greenSpeedField, 3)),
  door(
    'root.warningText',
    (given: unknown) => root.warningText({ code: 'below-range' } as never, given as never),
    options(warningTextOptionFields, { units: 'metres' }),
  ),

  door(
    'reference.flyReference',
    reference.flyReference,
    of('launch', launchFields, valid.launch),
    sceneOf(),
    options(flightOptionFields, { timeLimit: 60 }),
  ),

  door('models.airViscosity', models.airViscosity, one('temperature', airStateFields.temperature, 290)),
  door(
    'models.moistAirDensity',
    models.moistAirDensity,
    of('air', airStateFields, {
      temperature: 290,
      pressure: 1e5,
      relativeHumidity: 0.4,
      carbonDioxide: 4e-4,
    }),
  ),
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
    of('report', reducedPressureFields, { seaLevelPressure: 101_000, elevation: 200, temperature: 290 }),
  ),

  door(
    'session.inferDynamicLoft',
    session.inferDynamicLoft,
    of('measured', measuredLaunchFields, {
      launchAngle: 0.2,
      attackAngle: 0.02,
      clubSpeed: 45,
      spinRate: 270,
    }),
    options(inferOptionFields, { clubhead: valid.clubhead, ball: valid.scene.ball }),
  ),
  door(
    'session.faceMap',
    session.faceMap,
    of('delivery', deliveryFields, valid.delivery),
    sceneOf(),
    options(faceMapOptionFields, { ...valid.shotOptions, toe: 0.01, high: 0.005, columns: 3, rows: 3 }),
  ),
  door(
    'session.strikePattern',
    session.strikePattern,
    listOf(
      'strikes',
      strikeOffsetFields,
      [
        { toe: 0.01, high: 0 },
        { toe: -0.005, high: 0.004 },
      ],
      1,
    ),
  ),
  door(
    'session.judgePattern',
    session.judgePattern,
    listOf('strikes', strikeOffsetFields, [{ toe: 0.01, high: 0 }], 1),
    of('delivery', deliveryFields, valid.delivery),
    sceneOf(),
    options(shotOptionFields, valid.shotOptions),
  ),
  door(
    'session.attributeChange',
    session.attributeChange,
    apart({ before: shots().field, after: shots().field } as Fields, {
      before: valid.shots.slice(0, 3),
      after: valid.shots.slice(3, 6),
    }),
    sceneOf(),
    options(attributionFields, {
      tolerance: 1e-3,
      timeLimit: 60,
      level: 0.9,
      resamples: 100,
      seed: 1,
      pairs: 9,
      conditions: { before: { air: valid.scene.air, wind: valid.scene.wind } },
    }),
  ),
  door(
    'session.calibrate',
    session.calibrate,
    shots(),
    sceneOf(),
    options(calibrationOptionFields, {
      tolerance: 1e-3,
      timeLimit: 60,
      what: ['dragScale'],
      clubhead: valid.clubhead,
      hand: 'right',
      readingErrors: { ballSpeed: 0.01 },
      flightErrors: { carry: 0.02 },
      priors: { dragScale: { mean: 1, standardDeviation: 0.1 } },
    }),
  ),
  door(
    'session.scatterTrend',
    session.scatterTrend,
    shots(),
    options(scatterTrendOptionFields, { quantity: 'launchDirection', bands: 'labels', level: 0.9 }),
  ),
  door(
    'session.standardise',
    session.standardise,
    of('shot', measuredShotFields, valid.measured),
    of(
      'scenes',
      { from: optional(record(sceneFields)), to: optional(record(sceneFields)) },
      { from: valid.scene, to: { turf: 'soft' } },
    ),
    options(flightOptionFields, { tolerance: 1e-3, timeLimit: 60 }),
  ),
  door(
    'session.summariseSession',
    session.summariseSession,
    shots(1),
    options(sessionOptionFields, { level: 0.9, gains: [1, 2] }),
  ),
  door(
    'session.judgeTraining',
    session.judgeTraining,
    shots(),
    sceneOf(),
    options(trainingOptionFields, { tolerance: 1e-3, timeLimit: 60, block: 1, level: 0.9 }),
  ),

  door(
    'dispersion.disperse (deliveries)',
    dispersion.disperse,
    apart(scatteredClub, { delivery: valid.delivery, spread: valid.spread }),
    sceneOf(),
    options(dispersionOptionFields, {
      ...valid.shotOptions,
      ...cloud,
      aim: 0.01,
      fairway: valid.hole.fairway,
      hazards: valid.hole.hazards,
      limits: { left: 20, right: 25 },
    }),
  ),
  door(
    'dispersion.disperse (launches)',
    dispersion.disperse,
    apart(scatteredBall, { launch: valid.launch, spread: valid.launchSpread }),
    sceneOf(),
    options(dispersionOptionFields, {
      ...cloud,
      fairway: valid.outlined.fairway,
      hazards: valid.outlined.hazards,
    }),
  ),
  door(
    'dispersion.disperse (own shots)',
    dispersion.disperse,
    apart(scatteredClub, { delivery: valid.delivery, spread: valid.ownSpread }),
    sceneOf(),
    options(dispersionOptionFields, cloud),
  ),
  door(
    'dispersion.expectedStrokes',
    dispersion.expectedStrokes,
    one('lie', choice(LIES, 'lie'), 'fairway'),
    one('distance', distanceField, 137),
    options(strokesOptionFields, { skill: { averageScore: 90 }, table: 'raw' }),
  ),
  door(
    'dispersion.strokesOnHole',
    dispersion.strokesOnHole,
    apart(
      { ...scatteredClub, hole: holeField },
      { delivery: valid.delivery, spread: valid.spread, hole: valid.hole },
    ),
    sceneOf(),
    options(
      { ...strokesOnHoleOptionFields, aim: optional(aimField) },
      { ...valid.shotOptions, ...cloud, skill: 'professional', table: 'smoothed', aim: 0.02 },
    ),
  ),
  door(
    'dispersion.fasterOrStraighter',
    dispersion.fasterOrStraighter,
    apart(fasterQuestionFields as Fields, {
      delivery: valid.delivery,
      spread: valid.spread,
      hole: valid.hole,
      law: { directionPerMph: 0.01 },
    }),
    sceneOf(),
    options(fasterOptionFields, { ...valid.shotOptions, ...cloud, skill: 'professional', speeds: [44, 46] }),
  ),

  door(
    'sweep.sweep',
    sweeps.sweep,
    one('design', designField, design),
    sceneOf(),
    options(sweepOptionFields, sweepOptions),
  ),
  door(
    'sweep.sweep (grid)',
    sweeps.sweep,
    one('design', designField, { kind: 'grid', factors: [{ name: 'launch.spinRate', values: [200, 300] }] }),
    sceneOf(),
    options(sweepOptionFields, sweepOptions),
  ),
  door(
    'sweep.sweepChunks',
    drained(sweeps.sweepChunks as never),
    one('design', designField, design),
    sceneOf(),
    options(chunkOptionFields, { ...sweepOptions, chunkSize: 4, start: 2 }),
  ),
];

/** Functions that the rows above do not reach, each with the test that does, or why there is nothing to test. */
export const elsewhere: Readonly<Record<string, string>> = {};

/** The entries, by the names used above. */
export const entries: Readonly<Record<string, Readonly<Record<string, unknown>>>> = {
  root: root as never,
  models: models as never,
  session: session as never,
  dispersion: dispersion as never,
  sweep: sweeps as never,
  batch: batch as never,
  reference: reference as never,
};

export { clubheadField, flight, partial, twoScenesFields };
