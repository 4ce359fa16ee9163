import { balls } from '../../../src/ball/index.js';
import { type Clubhead, type ClubheadName, clubheads } from '../../../src/clubhead/index.js';
import { type Strike, type StrikeOptions, strike as strikeBall } from '../../../src/strike/index.js';
import { degrees, grams, millimetres } from '../../../src/units/index.js';
import { delivery, type Swing } from '../inputs.js';
import { each, pick, type Room } from '../room.js';

const hit = (swing: Swing, head: Clubhead = clubheads.driver, options: StrikeOptions = {}): Strike =>
  strikeBall(delivery(swing), { ...options, clubhead: head });

const PLAIN = ['launch.ballSpeed', 'launch.launchAngle', 'launch.spinRate'];
const ASKEW = ['launch.ballSpeed', 'launch.launchDirection', 'launch.spinRate', 'launch.spinAxisTilt'];
const ALL = [
  ...ASKEW,
  'launch.launchAngle',
  'smashFactor',
  'spinLoft',
  'faceToPath',
  'backspin',
  'sidespin',
  'gearEffect.backspin',
  'gearEffect.sidespin',
  'restitution',
  'tangentialRestitution',
  'frictionUsed',
  'clubSpeedAfter',
];

const centred: Readonly<Record<string, readonly [ClubheadName, Swing]>> = {
  'driver-113mph': ['driver', { speed: 113, loft: 12, attack: -1.3 }],
  'driver-70mph-up': ['driver', { speed: 70, loft: 18, attack: 5 }],
  'driver-limit-slow': ['driver', { speed: 2.3, loft: 12 }],
  'driver-limit-fast': ['driver', { speed: 201, loft: 9 }],
  'wood-95mph': ['fairwayWood', { speed: 95, loft: 16, attack: -2 }],
  'hybrid-90mph': ['hybrid', { speed: 90, loft: 19, attack: -3 }],
  'long-iron-88mph': ['longIron', { speed: 88, loft: 18, attack: -3.2 }],
  'mid-iron-82mph': ['midIron', { speed: 82, loft: 24, attack: -4 }],
  'short-iron-78mph': ['shortIron', { speed: 78, loft: 36, attack: -4.8 }],
  'wedge-65mph': ['wedge', { speed: 65, loft: 48, attack: -5.5 }],
  'wedge-slides': ['wedge', { speed: 40, loft: 72, attack: -2 }],
};

const askew: Readonly<Record<string, readonly [ClubheadName, Swing]>> = {
  'driver-heel-20mm-low-10mm': ['driver', { speed: 95, loft: 14, toe: -20, high: -10 }],
  'driver-left-hand-toe-8mm-fade': [
    'driver',
    { speed: 96, loft: 14, attack: 1, path: 3, face: 1, toe: 8, high: 4, hand: 'left' },
  ],
  'driver-high-15mm-closing': ['driver', { speed: 105, loft: 13, attack: 3, high: 15, closure: 2800 }],
  'driver-in-to-out-shut': ['driver', { speed: 100, loft: 12, path: 4, face: -2 }],
  'driver-limit-rim': ['driver', { speed: 110, loft: 12, toe: 58, high: 38 }],
  'hybrid-heel-15mm-open': ['hybrid', { speed: 88, loft: 20, attack: -3, face: 5, toe: -15 }],
  'mid-iron-toe-12mm-thin': ['midIron', { speed: 80, loft: 25, attack: -4, toe: 12, high: -9 }],
  'wedge-wide-open': ['wedge', { speed: 55, loft: 58, attack: -6, path: -8, face: 25 }],
};

const heavyBall = { ...balls.conforming, mass: grams(48), radius: millimetres(21.6) };
const ownHead: Clubhead = {
  ...clubheads.driver,
  mass: grams(210),
  bulge: millimetres(250),
  tangentialRestitution: { kind: 'constant', value: -0.1 },
  friction: 0.25,
};
const obliqueHead: Clubhead = {
  ...clubheads.wedge,
  tangentialRestitution: { kind: 'oblique', limit: 0.5, onset: degrees(15), scale: degrees(20) },
};

/** Club to ball. */
export const strike: Room = {
  room: 'strike',
  digits: 12,
  questions: {
    ...each(centred, ([club, swing]) => pick(hit(swing, clubheads[club]), ...PLAIN)),
    ...each(askew, ([club, swing]) => pick(hit(swing, clubheads[club]), ...ASKEW)),
    'driver-113mph-toe-10mm': () => pick(hit({ speed: 113, loft: 12, attack: -1.3, toe: 10 }), ...ALL),
    'heavy-ball': () => pick(hit({ speed: 100, loft: 13 }, clubheads.driver, { ball: heavyBall }), ...PLAIN),
    'elastic-gear': () =>
      pick(
        hit({ speed: 100, loft: 13, toe: 12, high: 8 }, clubheads.driver, { gearElasticity: 0.5 }),
        'gearEffect.backspin',
        'gearEffect.sidespin',
      ),
    'own-head': () => pick(hit({ speed: 100, loft: 13, face: 2, toe: 15 }, ownHead), ...ASKEW),
    'oblique-head': () => pick(hit({ speed: 70, loft: 46, attack: -4 }, obliqueHead), ...PLAIN),
  },
};
