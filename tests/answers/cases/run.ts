import { defaultAir } from '../../../src/air/index.js';
import type { Scene } from '../../../src/scene/index.js';
import { type LandingBall, runOut } from '../../../src/shot/index.js';
import { type Run, rollingResistanceOfGreen, type Turf, turfs } from '../../../src/turf/index.js';
import { degrees, feet, kilogramsPerCubicMetre } from '../../../src/units/index.js';
import { landingBall } from '../../turf/landing.js';
import { each, pick, type Room } from '../room.js';

const runs = (landing: LandingBall, turf: Turf = turfs.normal, scene: Omit<Scene, 'turf'> = {}): Run =>
  runOut(landing, { ...scene, turf });

const ALL = [
  'distance',
  'side',
  'restsAt.x',
  'restsAt.z',
  'bounces.0.speedAfter',
  'bounces.1.hopHeight',
  'bounces.1.time',
];
const drive = landingBall(29, 38, 1900);
const slice = landingBall(28, 40, 2300, { heading: 4, tilt: 15 });
const wedge = landingBall(22, 49, 8200);

const landings: Readonly<Record<string, LandingBall>> = {
  'low-and-fast': landingBall(40, 12, 1200),
  'straight-down': landingBall(25, 90, 3000),
  'limit-hardly-moving': landingBall(0.5, 30, 0),
  'topspin-skid': landingBall(15, 5, 0, { heading: -10 }),
};

const slopes: Readonly<Record<string, readonly [slope: number, crossSlope: number]>> = {
  'uphill-5-degrees': [5, 0],
  'downhill-3-across-2': [-3, 2],
  'across-8': [0, 8],
};

const green: Turf = { ...turfs.normal, name: 'green', rollingResistance: rollingResistanceOfGreen(feet(10)) };

/** Landing to rest. */
export const run: Room = {
  room: 'run',
  digits: 10,
  questions: {
    ...each(landings, (landing) => pick(runs(landing), 'distance')),
    'slice-in-full': () => pick(runs(slice), ...ALL, 'band.low', 'band.high'),
    'wedge-in-full': () =>
      pick(runs(wedge), 'distance', 'bounces.0.speedAfter', 'bounces.0.backspinAfter', 'bounces.1.hopHeight'),
    ...each(turfs, (turf) => ({ drive: runs(drive, turf).distance, wedge: runs(wedge, turf).distance })),
    ...each(slopes, ([slope, crossSlope]) =>
      pick(
        runs(drive, turfs.normal, { ground: { slope: degrees(slope), crossSlope: degrees(crossSlope) } }),
        'distance',
        'side',
      ),
    ),
    'thin-air': () =>
      pick(
        runs(drive, turfs.firm, { air: { ...defaultAir, density: kilogramsPerCubicMetre(0.9) } }),
        'distance',
      ),
    'green-of-10ft': () => ({ resistance: green.rollingResistance, ...pick(runs(wedge, green), 'distance') }),
  },
};
