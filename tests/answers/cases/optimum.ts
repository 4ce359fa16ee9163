import { airAtAltitude } from '../../../src/air/index.js';
import { clubheads } from '../../../src/clubhead/index.js';
import {
  bestLaunch,
  bestLoft,
  type CarryMap,
  carryMap,
  inferDynamicLoft,
  type LaunchOptimum,
  type LaunchQuestion,
  type LoftOptimum,
  type MaximisedDistance,
  type SpeedAnswer,
  type SpeedOptions,
  speedForCarry,
} from '../../../src/optimum/index.js';
import type { Scene } from '../../../src/scene/index.js';
import { degrees, metres, mph, rpm, yards } from '../../../src/units/index.js';
import { each, pick, type Room } from '../room.js';

const between = <Q>(of: (value: number) => Q, min: number, max: number): { min: Q; max: Q } => ({
  min: of(min),
  max: of(max),
});
const loftFor = (
  speed: number,
  attack: number,
  maximise: MaximisedDistance,
  { scene = {}, delivered }: { readonly scene?: Scene; readonly delivered?: number } = {},
): LoftOptimum =>
  bestLoft(
    {
      clubSpeed: mph(speed),
      attackAngle: degrees(attack),
      ...(delivered !== undefined && { deliveredLoft: degrees(delivered) }),
    },
    scene,
    { maximise },
  );
const launchFor = (
  speed: number,
  more: Omit<LaunchQuestion, 'ballSpeed'> = {},
  maximise: MaximisedDistance = 'carry',
): LaunchOptimum => bestLaunch({ ballSpeed: mph(speed), ...more }, {}, { maximise });
const speedFor = (carry: number, options: SpeedOptions = {}): SpeedAnswer =>
  speedForCarry(yards(carry), {}, options);
const mapOf = (speed: number, withRun: boolean): CarryMap =>
  carryMap(
    { ballSpeed: mph(speed), launchAngle: between(degrees, 6, 18), spinRate: between(rpm, 1800, 4200) },
    {},
    { columns: 5, rows: 4, withRun },
  );

const lofts: Readonly<Record<string, readonly [speed: number, attack: number, maximise: MaximisedDistance]>> =
  {
    'loft-70mph-carry': [70, 0, 'carry'],
    'loft-95mph-carry': [95, 0, 'carry'],
    'loft-95mph-total': [95, 0, 'total'],
    'loft-120mph-down-total': [120, -3, 'total'],
    'loft-165mph-up-carry': [165, 5, 'carry'],
  };
const headwind: Scene = {
  wind: { along: mph(-15), across: mph(0) },
  air: airAtAltitude({ altitude: metres(900) }),
};

/** What is best. */
export const optimum: Room = {
  room: 'optimum',
  digits: 8,
  questions: {
    ...each(lofts, (question) => pick(loftFor(...question), 'dynamicLoft', 'distance')),
    'loft-windows': () =>
      pick(
        loftFor(100, 1, 'carry'),
        'window.dynamicLoft.low',
        'window.dynamicLoft.high',
        'window.attackAngle.low',
        'window.clubSpeed.low',
        'window.launchAngle.high',
        'window.spinRate.high',
      ),
    'loft-headwind': () => pick(loftFor(100, 1, 'carry', { scene: headwind }), 'dynamicLoft', 'distance'),
    'loft-advice': () =>
      pick(loftFor(90, -2, 'total', { delivered: 11 }), 'advice.change', 'advice.gain', 'advice.carryGain'),
    'launch-150mph': () =>
      pick(launchFor(150), 'launch.launchAngle', 'launch.spinRate', 'distance', 'delivery.clubSpeed'),
    'launch-120mph-total': () => pick(launchFor(120, {}, 'total'), 'launch.launchAngle', 'distance'),
    'launch-range-of-attack': () =>
      pick(launchFor(140, { attackAngle: between(degrees, -2, 2) }), 'launch.spinRate', 'distance'),
    'launch-freely': () =>
      pick(
        launchFor(160, {
          freely: { launchAngle: between(degrees, 7.5, 15), spinRate: between(rpm, 2200, 3000) },
        }),
        'launch.launchAngle',
        'distance',
      ),
    'speed-for-200yd': () => pick(speedFor(200), 'clubSpeed', 'dynamicLoft'),
    'speed-for-200yd-with-a-margin': () => pick(speedFor(200, { margin: yards(10) }), 'clubSpeed'),
    'speed-for-150yd-mid-iron': () =>
      pick(
        speedFor(150, { clubhead: clubheads.midIron, attackAngle: degrees(-4), dynamicLoft: degrees(24) }),
        'clubSpeed',
      ),
    'speed-out-of-reach': () => pick(speedFor(480), 'clubSpeed', 'dynamicLoft', 'missing'),
    'speed-too-close': () =>
      pick(speedFor(40, { clubSpeed: between(mph, 60, 80), dynamicLoft: degrees(14) }), 'missing'),
    'map-150mph': () =>
      pick(mapOf(150, true), 'carry.0', 'carry.13', 'apex.19', 'descentAngle.7', 'total.13'),
    'map-90mph': () => pick(mapOf(90, false), 'carry.6', 'launchAngle.1', 'spinRate.2'),
    'infer-loft': () =>
      pick(
        inferDynamicLoft({ launchAngle: degrees(13), attackAngle: degrees(2) }),
        'dynamicLoft',
        'addedLoft',
        'spinLoft',
      ),
    'infer-loft-and-height': () =>
      pick(
        inferDynamicLoft({
          launchAngle: degrees(14.5),
          attackAngle: degrees(-1),
          clubSpeed: mph(98),
          spinRate: rpm(2300),
        }),
        'dynamicLoft',
        'dynamicLoftIfCentred',
        'strikeHeight',
        'spinRatio',
      ),
    'infer-loft-wedge': () =>
      pick(
        inferDynamicLoft(
          { launchAngle: degrees(30), attackAngle: degrees(-5) },
          { clubhead: clubheads.wedge },
        ),
        'dynamicLoft',
      ),
  },
};
