import { type AerodynamicModel, aerodynamicModels } from '../../../src/aerodynamics/index.js';
import { airAt, airAtAltitude, type WindProfile } from '../../../src/air/index.js';
import { balls } from '../../../src/ball/index.js';
import { type Flight, type FlightOptions, fly } from '../../../src/flight/index.js';
import { flyReference } from '../../../src/reference.js';
import type { Scene } from '../../../src/scene/index.js';
import { pathOf, stateAt } from '../../../src/shot/index.js';
import { celsius, degrees, grams, metres, metresPerSecond, seconds } from '../../../src/units/index.js';
import { type BallLeaves, launch } from '../inputs.js';
import { each, type Numbers, pick, type Room } from '../room.js';
import { ownModels } from './aerodynamics.js';

const flown = (ball: BallLeaves, scene: Scene = {}, options: FlightOptions = {}): Flight =>
  fly(launch(ball), scene, options);
const wind = (along: number, across: number, profile?: WindProfile): Scene => ({
  wind: { along: metresPerSecond(along), across: metresPerSecond(across), ...(profile && { profile }) },
});
const ground = (elevation: number, slope = 0, crossSlope = 0): Scene => ({
  ground: { elevation: metres(elevation), slope: degrees(slope), crossSlope: degrees(crossSlope) },
});

const DRIVE: BallLeaves = [150, 12, 2600];
const WEDGE: BallLeaves = [88, 29, 9800];
const SLICE: BallLeaves = [145, 13, 3100, -3, 14];

const STRAIGHT = ['carry', 'apex'];
const CURVED = ['carry', 'side'];
const ALL = [
  ...CURVED,
  'curve',
  'apex',
  'apexAt',
  'hangTime',
  'descentAngle',
  'landing.speed',
  'landing.spinRate',
];

const straight: Readonly<Record<string, BallLeaves>> = {
  'driver-150mph': DRIVE,
  'wood-139mph': [139, 11, 3500],
  'iron-120mph': [120, 16.3, 7100],
  'pitch-40mph': [40, 35, 5200],
  'chip-8mph': [8, 25, 900],
  'flop-60-degrees': [50, 62, 8000],
  'limit-246mph': [246, 9, 2000],
  'limit-2.3mph': [2.3, 30, 300],
  'limit-20000rpm': [70, 30, 20_000],
  'no-spin': [140, 14, 0],
};

const curved: Readonly<Record<string, readonly [BallLeaves, Scene?]>> = {
  hook: [[155, 10, 2900, 4, -22]],
  'rifle-spin': [[150, 12, 2600, 0, 3, 900]],
  'side-of-the-world': [[130, 14, 3000, 88, -8]],
  'upside-down-spin': [[120, 20, 2500, 0, 175]],
  'headwind-12': [SLICE, wind(-12, 0)],
  'crosswind-15-and-tail': [DRIVE, wind(4, 15)],
  'wind-log-links': [DRIVE, wind(-7, 3, { kind: 'log', roughness: metres(0.03) })],
  'wind-log-trees': [SLICE, wind(5, -4, { kind: 'log', roughness: metres(0.35), displacement: metres(4) })],
  'wind-power': [WEDGE, wind(-6, -6, { kind: 'power', exponent: 0.2 })],
  'limit-wind-40': [DRIVE, wind(-40, 20)],
  uphill: [SLICE, ground(0, 6)],
  'downhill-across': [SLICE, ground(-20, -4, 5)],
};

const scenes: Readonly<Record<string, Scene>> = {
  'altitude-2240m': { air: airAtAltitude({ altitude: metres(2240) }) },
  'frost-minus-5C': { air: airAt({ temperature: celsius(-5) }) },
  'green-10m-above': ground(10),
  'green-60m-below': ground(-60),
  'heavy-ball': { ball: { ...balls.conforming, mass: grams(52) } },
};

/** Ways a flight ends without landing, or lands at once. */
const ends: Readonly<Record<string, () => Flight>> = {
  'time-limit': () => flown(DRIVE, {}, { timeLimit: seconds(2) }),
  'below-ground': () => flown(WEDGE, ground(90)),
  'topped-from-a-cliff': () => flown([90, -12, 1000], ground(-15)),
  'fine-tolerance': () => flown(SLICE, wind(-5, 2), { tolerance: metres(1e-8) }),
  'coarse-tolerance': () => flown(SLICE, wind(-5, 2), { tolerance: metres(0.1) }),
};

/** Some laws have corners: at the default tolerance rounding alone can shift a step across one and move the tenth digit. */
const FINE: FlightOptions = { tolerance: metres(1e-7) };
const inModel = (aerodynamics: AerodynamicModel): Numbers => ({
  ...pick(flown(SLICE, { aerodynamics }, FINE), ...CURVED),
  wedge: flown(WEDGE, { aerodynamics }, FINE).carry,
});

/** Launch to landing. */
export const flight: Room = {
  room: 'flight',
  digits: 10,
  questions: {
    'slice-in-full': () => pick(flown(SLICE), ...ALL),
    'wedge-in-full': () => pick(flown(WEDGE, wind(3, -2)), ...ALL),
    ...each(straight, (ball) => pick(flown(ball), ...STRAIGHT)),
    ...each(curved, ([ball, scene]) => pick(flown(ball, scene), ...CURVED)),
    ...each(scenes, (scene) => pick(flown(DRIVE, scene), 'carry', 'apex')),
    ...each(ends, (end) => pick(end(), 'carry', 'hangTime')),
    ...each({ ...aerodynamicModels, ...ownModels }, inModel),
    'state-at-2s': () =>
      pick(stateAt(flown(SLICE), 2), 'position.x', 'position.y', 'position.z', 'speed', 'spinRate'),
    'path-of-9': () =>
      pick(
        pathOf(flown(WEDGE, wind(-3, 5)), { count: 9 }),
        '3.position.x',
        '3.position.y',
        '3.position.z',
        '6.velocity.y',
        '8.time',
      ),
    'reference-drive': () => pick(flyReference(launch(DRIVE)), 'carry', 'apex'),
    'reference-slice-in-wind': () => pick(flyReference(launch(SLICE), wind(-8, 4)), 'carry', 'side'),
  },
};
