import { courseWindFields } from '../../../src/air/wind-from.js';
import { conditionFields, flyManyOptionFields } from '../../../src/flight/fly-many.js';
import * as root from '../../../src/index.js';
import { airStateFields, placeFields } from '../../../src/inputs/air.js';
import { readColumns } from '../../../src/inputs/columns.js';
import { deliveryFields } from '../../../src/inputs/delivery.js';
import { optional, partial } from '../../../src/inputs/field.js';
import { flightOptionFields } from '../../../src/inputs/flight-options.js';
import { landingFields } from '../../../src/inputs/landing.js';
import { launchFields } from '../../../src/inputs/launch.js';
import { measuredShotFields } from '../../../src/inputs/measured-shot.js';
import { readOptions } from '../../../src/inputs/read.js';
import { greenSpeedField } from '../../../src/inputs/turf.js';
import { launchQuestionFields } from '../../../src/optimum/best-launch.js';
import { loftQuestionFields } from '../../../src/optimum/best-loft.js';
import { mapOptionFields, mapQuestionFields } from '../../../src/optimum/map.js';
import { optimumOptionFields } from '../../../src/optimum/optimum.js';
import { carryField, speedOptionFields } from '../../../src/optimum/speed-for-carry.js';
import { sensitivityOptionFields } from '../../../src/sensitivity/sensitivities.js';
import { strikeQualityOptionFields, strikeReadingFields } from '../../../src/sensitivity/strike-quality.js';
import { pathOptionFields, timeField } from '../../../src/shot/path.js';
import { runOptionFields } from '../../../src/shot/run-out.js';
import { locateOptionFields } from '../../../src/strike/locate.js';
import { strikeOptionFields } from '../../../src/strike/strike.js';
import { warningFields, warningTextOptionFields } from '../../../src/warnings/warning-text.js';
import {
  columns,
  type Door,
  door,
  one,
  open,
  options,
  record,
  scene,
  shotOptions,
  slow,
  start,
  tracked,
} from '../door.js';
import * as valid from '../valid.js';

const { ball } = valid.scene;
const { clubhead } = valid;
const delivery = record('delivery', deliveryFields, valid.delivery);
const launch = record('launch', launchFields, valid.launch);
const weather = { temperature: 290, pressure: 1e5, relativeHumidity: 0.4, carbonDioxide: 4e-4 };
const flight = root.fly(valid.launch as never);
const shot = root.playShot(valid.delivery as never);
const inTwoRows = Object.fromEntries(Object.entries(valid.launch).map(([name, x]) => [name, [x, x]]));
const { field: conditions } = columns('conditions', conditionFields, {});
const optimum = {
  ...valid.shotOptions,
  maximise: 'total',
  dynamicLoft: { min: 0.2, max: 0.3 },
  minimumDescentAngle: 0.2,
};
const warning = {
  code: 'topped',
  severity: 'caution',
  model: 'flight',
  quantity: 'launchAngle',
  range: { min: 0, max: 1 },
  value: -1,
};

/** The options of `flyMany`, whose conditions are columns like the launches. */
function readFlyManyOptions(value: unknown): void {
  const { conditions } = readOptions(flyManyOptionFields, value);
  if (conditions !== undefined)
    readColumns(conditionFields, conditions, 'options.conditions', { count: 2, like: 'x' });
}

export const rootDoors: readonly Door[] = [
  door(
    'root.strike',
    root.strike,
    delivery,
    options(strikeOptionFields, { clubhead, ball, gearElasticity: 0.3 }),
  ),
  door(
    'root.strike (oblique grip)',
    root.strike,
    delivery,
    options(strikeOptionFields, { clubhead: valid.oblique }),
  ),
  door(
    'root.fly',
    root.fly,
    launch,
    scene(),
    options(flightOptionFields, { tolerance: 1e-3, timeLimit: 60 }),
  ),
  door('root.fly (logarithmic wind)', root.fly, launch, scene(valid.profiles.log)),
  door('root.fly (power-law wind)', root.fly, launch, scene(valid.profiles.power)),
  door(
    'root.flyMany',
    root.flyMany,
    {
      ...columns('launches', launchFields, inTwoRows),
      read: (value) => readColumns(launchFields, value, 'launches'),
    },
    scene(),
    {
      ...options(
        { ...flyManyOptionFields, conditions: optional(conditions) },
        { tolerance: 1e-3, timeLimit: 60, conditions: { windAlong: [1, 2], airDensity: [1.1, 1.2] } },
      ),
      read: readFlyManyOptions,
    },
  ),
  door(
    'root.runOut',
    root.runOut,
    record('landing', landingFields, valid.landing),
    scene(),
    options(runOptionFields, { timeLimit: 60 }),
  ),
  door(
    'root.playShot (delivery)',
    root.playShot,
    start('delivery', deliveryFields, valid.delivery),
    scene(),
    shotOptions(),
  ),
  door(
    'root.playShot (launch)',
    root.playShot,
    start('launch', launchFields, valid.launch),
    scene(),
    shotOptions(),
  ),
  door(
    'root.pathOf',
    root.pathOf,
    tracked('shot', shot),
    record('options', pathOptionFields, { count: 3, as: 'xyz' }),
  ),
  door(
    'root.pathOf (flight)',
    root.pathOf,
    tracked('flight', flight),
    record('options', pathOptionFields, { spacing: 50 }),
  ),
  door(
    'root.stateAt',
    root.stateAt,
    tracked('flight', flight),
    one('time', { ...timeField, max: flight.hangTime }, 1),
  ),
  door(
    'root.bestLaunch',
    root.bestLaunch,
    record('launch', launchQuestionFields, { ballSpeed: 65, attackAngle: 0.02 }),
    scene(),
    options(optimumOptionFields, optimum),
  ),
  door(
    'root.bestLaunch (freely)',
    root.bestLaunch,
    record('launch', launchQuestionFields, {
      ballSpeed: 65,
      freely: { launchAngle: { min: 0.1, max: 0.2 }, spinRate: { min: 200, max: 300 } },
    }),
  ),
  door(
    'root.bestLoft',
    root.bestLoft,
    record('delivery', loftQuestionFields, { clubSpeed: 43, attackAngle: 0.01, deliveredLoft: 0.3 }),
    scene(),
    options(optimumOptionFields, optimum),
  ),
  door(
    'root.speedForCarry',
    root.speedForCarry,
    one('carry', carryField, 180),
    scene(),
    options(speedOptionFields, {
      ...valid.shotOptions,
      attackAngle: 0.01,
      dynamicLoft: 0.25,
      clubSpeed: { min: 30, max: 55 },
      margin: 5,
    }),
  ),
  door(
    'root.carryMap',
    root.carryMap,
    record('launch', mapQuestionFields, {
      ballSpeed: 65,
      launchAngle: { min: 0.1, max: 0.3 },
      spinRate: { min: 200, max: 400 },
    }),
    scene(),
    options(mapOptionFields, { tolerance: 1e-3, timeLimit: 60, columns: 3, rows: 2, withRun: true }),
  ),
  door(
    'root.sensitivities',
    root.sensitivities,
    start('delivery', deliveryFields, valid.delivery),
    scene(),
    options(sensitivityOptionFields, { ...valid.shotOptions, weather }),
  ),
  door(
    'root.strikeQuality',
    root.strikeQuality,
    record('readings', strikeReadingFields, {
      clubSpeed: 45,
      ballSpeed: 65,
      spinLoft: 0.23,
      launchAngle: 0.2,
      spinRate: 270,
      carry: 200,
    }),
    scene(),
    options(strikeQualityOptionFields, {
      ...valid.shotOptions,
      readingErrors: { clubSpeed: 0.01, ballSpeed: 0.01 },
    }),
  ),
  slow(
    'root.locateStrike',
    root.locateStrike,
    record('measured', measuredShotFields, valid.measured),
    options(locateOptionFields, {
      clubhead,
      ball,
      hand: 'right',
      readingErrors: { faceAngle: 0.02 },
      priors: { toe: { mean: 0, standardDeviation: 0.01 } },
    }),
  ),
  door('root.airAt', root.airAt, options(partial(airStateFields), weather, 'air')),
  door(
    'root.airAtAltitude',
    root.airAtAltitude,
    record('place', placeFields, { altitude: 1600, temperature: 290, relativeHumidity: 0.3 }),
  ),
  door(
    'root.windFrom (clock)',
    root.windFrom,
    record('wind', courseWindFields, { speed: 4, clock: 2, terrain: 'links-course', measuredAt: 10 }),
  ),
  door(
    'root.windFrom (bearing)',
    root.windFrom,
    record('wind', courseWindFields, {
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
    root.warningText,
    record('warning', warningFields, warning),
    options(warningTextOptionFields, { units: 'metres' }),
  ),
  door('root.isFairflightError', root.isFairflightError, open('error', new Error('another'))),
  door('root.plainColumns', root.plainColumns, open('columns', { carry: new Float64Array(2) })),
];
