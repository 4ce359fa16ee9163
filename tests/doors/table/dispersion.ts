import { aimField } from '../../../src/dispersion/aim.js';
import { dispersionOptionFields } from '../../../src/dispersion/disperse.js';
import { distanceField, LIES, strokesOptionFields } from '../../../src/dispersion/expected-strokes.js';
import { fasterOptionFields, fasterQuestionFields } from '../../../src/dispersion/faster-question.js';
import { holeField } from '../../../src/dispersion/hole.js';
import * as dispersion from '../../../src/dispersion/index.js';
import { clearOptionFields, clearQuestionFields } from '../../../src/dispersion/speed-to-clear.js';
import { deliverySpreadField, launchSpreadField } from '../../../src/dispersion/spread.js';
import { strokesOnHoleOptionFields } from '../../../src/dispersion/strokes-on-hole.js';
import { deliveryFields } from '../../../src/inputs/delivery.js';
import { choice, optional } from '../../../src/inputs/field.js';
import { launchFields } from '../../../src/inputs/launch.js';
import { apart, type Door, door, one, options, record, scattered, scene, slow } from '../door.js';
import * as valid from '../valid.js';

const { delivery, launch, spread, hole, outlined } = valid;
const ofClub = { delivery: record('', deliveryFields, {}).field, spread: deliverySpreadField };
const ofBall = { launch: record('', launchFields, {}).field, spread: launchSpreadField };
const cloud = { shots: 64, sampling: 'sobol', seed: 1 };

export const dispersionDoors: readonly Door[] = [
  slow(
    'dispersion.disperse (deliveries)',
    dispersion.disperse,
    scattered(ofClub, { delivery, spread }),
    scene(),
    options(dispersionOptionFields, {
      ...valid.shotOptions,
      ...cloud,
      aim: 0.01,
      fairway: hole.fairway,
      hazards: hole.hazards,
      limits: { left: 20, right: 25 },
    }),
  ),
  slow(
    'dispersion.disperse (launches)',
    dispersion.disperse,
    scattered(ofBall, { launch, spread: valid.launchSpread }),
    scene(),
    options(dispersionOptionFields, { ...cloud, fairway: outlined.fairway, hazards: outlined.hazards }),
  ),
  slow(
    'dispersion.disperse (own shots)',
    dispersion.disperse,
    scattered(ofClub, { delivery, spread: valid.ownSpread }),
    scene(),
    options(dispersionOptionFields, cloud),
  ),
  door(
    'dispersion.expectedStrokes',
    dispersion.expectedStrokes,
    one('lie', choice(LIES, 'lie'), 'fairway'),
    one('distance', distanceField, 137),
    options(strokesOptionFields, { skill: { averageScore: 90 }, table: 'raw' }),
  ),
  slow(
    'dispersion.strokesOnHole',
    dispersion.strokesOnHole,
    scattered(ofClub, { delivery, spread, hole }, { hole: holeField }),
    scene(),
    options(
      { ...strokesOnHoleOptionFields, aim: optional(aimField) },
      { ...valid.shotOptions, ...cloud, skill: 'professional', table: 'smoothed', aim: 0.02 },
    ),
  ),
  slow(
    'dispersion.fasterOrStraighter',
    dispersion.fasterOrStraighter,
    apart(
      'subject',
      { ...fasterQuestionFields, hole: holeField },
      { delivery, spread, hole, law: { directionPerMph: 0.01 } },
    ),
    scene(),
    options(fasterOptionFields, { ...valid.shotOptions, ...cloud, skill: 'professional', speeds: [44, 46] }),
  ),
  slow(
    'dispersion.speedToClear',
    dispersion.speedToClear,
    apart('subject', clearQuestionFields, { delivery, spread, carry: 180, share: 0.8 }),
    scene(),
    options(clearOptionFields, {
      ...valid.shotOptions,
      ...cloud,
      margin: 5,
      clubSpeed: { min: 40, max: 50 },
    }),
  ),
];
