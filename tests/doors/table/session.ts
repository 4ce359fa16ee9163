import { deliveryFields, strikeOffsetFields } from '../../../src/inputs/delivery.js';
import { flightOptionFields } from '../../../src/inputs/flight-options.js';
import { measuredShotFields } from '../../../src/inputs/measured-shot.js';
import { inferOptionFields, measuredLaunchFields } from '../../../src/optimum/infer-loft.js';
import { faceMapOptionFields } from '../../../src/sensitivity/face-map.js';
import { attributionFields } from '../../../src/session/attribution-options.js';
import { calibrationOptionFields } from '../../../src/session/calibration-options.js';
import { valueCountField } from '../../../src/session/few-values.js';
import { gainsToShowOptionFields } from '../../../src/session/gains-to-show.js';
import * as session from '../../../src/session/index.js';
import { levelField } from '../../../src/session/level.js';
import { rankOptionFields } from '../../../src/session/rank-options.js';
import { scatterTrendOptionFields } from '../../../src/session/scatter-trend.js';
import { sessionOptionFields } from '../../../src/session/summarise.js';
import { trainingOptionFields } from '../../../src/session/training-log.js';
import {
  apart,
  type Door,
  door,
  list,
  one,
  options,
  record,
  scene,
  shotOptions,
  shots,
  slow,
} from '../door.js';
import * as valid from '../valid.js';

const { clubhead } = valid;
const { air, wind, ball } = valid.scene;
const delivery = record('delivery', deliveryFields, valid.delivery);
const strikes = (...all: readonly object[]) => list('strikes', strikeOffsetFields, all, 1);
const accuracy = { tolerance: 1e-3, timeLimit: 60 };

export const sessionDoors: readonly Door[] = [
  door(
    'session.inferDynamicLoft',
    session.inferDynamicLoft,
    record('measured', measuredLaunchFields, {
      launchAngle: 0.2,
      attackAngle: 0.02,
      clubSpeed: 45,
      spinRate: 270,
    }),
    options(inferOptionFields, { clubhead, ball }),
  ),
  door(
    'session.faceMap',
    session.faceMap,
    delivery,
    scene(),
    options(faceMapOptionFields, { ...valid.shotOptions, toe: 0.01, high: 0.005, columns: 3, rows: 3 }),
  ),
  door(
    'session.strikePattern',
    session.strikePattern,
    strikes({ toe: 0.01, high: 0 }, { toe: -0.005, high: 0.004 }),
  ),
  door('session.launchOf', session.launchOf, record('shot', measuredShotFields, valid.measured)),
  door(
    'session.fewValuesStretch',
    session.fewValuesStretch,
    one('count', valueCountField, 5),
    one('level', levelField, 0.9),
  ),
  slow(
    'session.judgePattern',
    session.judgePattern,
    strikes({ toe: 0.01, high: 0 }),
    delivery,
    scene(),
    shotOptions(),
  ),
  slow(
    'session.attributeChange',
    session.attributeChange,
    apart(
      'groups',
      { before: shots().field, after: shots().field },
      { before: valid.shots.slice(0, 3), after: valid.shots.slice(3, 6) },
    ),
    scene(),
    options(attributionFields, {
      ...accuracy,
      level: 0.9,
      resamples: 100,
      seed: 1,
      pairs: 9,
      conditions: { before: { air, wind } },
    }),
  ),
  slow(
    'session.calibrate',
    session.calibrate,
    shots(),
    scene(),
    options(calibrationOptionFields, {
      ...accuracy,
      what: ['dragScale'],
      clubhead,
      hand: 'right',
      readingErrors: { ballSpeed: 0.01 },
      flightErrors: { carry: 0.02 },
      priors: { dragScale: { mean: 1, standardDeviation: 0.1 } },
    }),
  ),
  slow(
    'session.rankChanges',
    session.rankChanges,
    shots(1),
    scene(),
    options(rankOptionFields, {
      ...valid.shotOptions,
      maximise: 'total',
      hole: valid.hole,
      skill: { averageScore: 85 },
      readingErrors: { clubSpeed: 0.02 },
      level: 0.9,
      draws: 100,
      seed: 1,
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
    record('shot', measuredShotFields, valid.measured),
    record('scenes', { from: scene().field, to: scene().field }, { from: valid.scene, to: { turf: 'soft' } }),
    options(flightOptionFields, accuracy),
  ),
  slow(
    'session.summariseSession',
    session.summariseSession,
    shots(1),
    options(sessionOptionFields, { level: 0.9 }),
  ),
  door(
    'session.gainsToShow',
    session.gainsToShow,
    shots(1),
    options(gainsToShowOptionFields, { level: 0.9, gains: [1, 2] }),
  ),
  slow(
    'session.changeElsewhere',
    session.changeElsewhere,
    shots(1),
    record('scenes', { from: scene().field, to: scene().field }, { from: valid.scene, to: { turf: 'soft' } }),
    options(flightOptionFields, accuracy),
  ),
  slow(
    'session.judgeTraining',
    session.judgeTraining,
    shots(),
    scene(),
    options(trainingOptionFields, { ...accuracy, block: 1, level: 0.9 }),
  ),
];
