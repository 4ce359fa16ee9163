import { airAtAltitude, windFrom } from '../../../src/air/index.js';
import { type ClubheadName, clubheads } from '../../../src/clubhead/index.js';
import type { Launch, Scene } from '../../../src/scene/index.js';
import { playShot, type Shot } from '../../../src/shot/index.js';
import type { Delivery } from '../../../src/strike/index.js';
import { degrees, metres, mph } from '../../../src/units/index.js';
import { delivery, launch, type Swing } from '../inputs.js';
import { each, pick, type Room } from '../room.js';

const play = (from: Delivery | Launch, scene: Scene = {}, club: ClubheadName = 'driver'): Shot =>
  playShot(from, scene, { clubhead: clubheads[club] });

const swings: Readonly<Record<string, readonly [ClubheadName, Swing]>> = {
  'driver-113mph': ['driver', { speed: 113, loft: 12, attack: -1.3 }],
  'wood-98mph': ['fairwayWood', { speed: 98, loft: 15, attack: -2 }],
  'hybrid-90mph': ['hybrid', { speed: 90, loft: 19, attack: -3 }],
  'long-iron-88mph': ['longIron', { speed: 88, loft: 18, attack: -3.2 }],
  'mid-iron-82mph': ['midIron', { speed: 82, loft: 24, attack: -4 }],
  'short-iron-thin': ['shortIron', { speed: 78, loft: 33, attack: -3, high: -10 }],
  'wedge-65mph': ['wedge', { speed: 65, loft: 48, attack: -5.5 }],
};
const crooked: Readonly<Record<string, Swing>> = {
  'driver-75mph-toe-15mm': { speed: 75, loft: 16, attack: 2, toe: 15, high: 5 },
  'driver-left-hand-slice': { speed: 95, loft: 15, path: 4, face: 1, hand: 'left' },
};
const drive = delivery({ speed: 100, loft: 13.5, attack: 1, face: 1 });

const scenes: Readonly<Record<string, Scene>> = {
  'links-in-the-wind': {
    wind: windFrom({ speed: mph(15), clock: 2, terrain: 'links-course' }),
    turf: 'firm',
  },
  'mountain-downhill': {
    air: airAtAltitude({ altitude: metres(1800) }),
    ground: { elevation: metres(-25), slope: degrees(-2), crossSlope: degrees(1) },
  },
  'wet-other-model': { turf: 'wet', aerodynamics: 'penner-bearman-harvey' },
};

/** Club to rest. */
export const shot: Room = {
  room: 'shot',
  digits: 10,
  questions: {
    ...each(swings, ([club, swing]) => pick(play(delivery(swing), {}, club), 'carry', 'total')),
    ...each(crooked, (swing) => pick(play(delivery(swing)), 'carry', 'total', 'side')),
    ...each(scenes, (scene) => pick(play(drive, scene), 'carry', 'total', 'side')),
    'from-a-launch': () =>
      pick(play(launch([150, 12, 2600, 1, 4])), 'carry', 'total', 'side', 'run.distance'),
    'never-landed': () =>
      pick(play(launch([60, 10, 3000]), { ground: { elevation: metres(80) } }), 'carry', 'total'),
  },
};
