/** Arguments that are fine in every field, as full as can be, for the table of doors. */

import { windFrom } from '../../src/air/index.js';
import { clubheads } from '../../src/clubhead/index.js';
import { balls, turfs } from '../../src/index.js';
import { deliveryFields } from '../../src/inputs/delivery.js';
import { landingFields } from '../../src/inputs/landing.js';
import { launchFields } from '../../src/inputs/launch.js';
import { type MeasuredShot, measuredShotFields } from '../../src/inputs/measured-shot.js';
import { degrees, metres, mph, rpm, yards } from '../../src/units/index.js';
import { examplesOf } from './declared.js';

/** A record of whatever kind. */
type Data = Readonly<Record<string, unknown>>;

export const delivery: Data = examplesOf(deliveryFields);
export const launch: Data = examplesOf(launchFields);
export const landing: Data = {
  ...examplesOf(landingFields),
  position: { x: 180, y: 0, z: 3 },
  velocity: { x: 21, y: -18, z: 1 },
  spinAxis: { x: 0, y: 0.1, z: 1 },
};

/** A scene with every field; the wind is the same at every height, so that flights are quick. */
export const scene: Readonly<Record<'air' | 'wind' | 'ground' | 'turf' | 'ball' | 'aerodynamics', unknown>> =
  {
    air: { density: 1.15, viscosity: 1.8e-5 },
    wind: { along: -3, across: 2, profile: { kind: 'uniform' } },
    ground: { elevation: -1, slope: 0.01, crossSlope: -0.01 },
    turf: { ...turfs.firm },
    ball: { ...balls.conforming },
    aerodynamics: 'fitted-modern',
  };
/** Scenes with a wind that changes with height. */
export const profiles: Readonly<Record<'log' | 'power', Data>> = {
  log: { ...scene, wind: windFrom({ speed: mph(8), clock: 2, terrain: 'links-course' }) },
  power: {
    ...scene,
    wind: { along: 3, across: 2, profile: { kind: 'power', exponent: 0.14, referenceHeight: 10 } },
  },
};

export const clubhead: Data = { ...clubheads.driver };
export const oblique: Data = {
  ...clubheads.midIron,
  tangentialRestitution: { kind: 'oblique', limit: 0.3, onset: 0.2, scale: 0.1 },
};
export const shotOptions: Data = { tolerance: 1e-3, timeLimit: 60, clubhead };

export const measured: Data = examplesOf(measuredShotFields);

/** Shots in two groups by speed, in four sessions; invented. */
export const shots: readonly MeasuredShot[] = Array.from({ length: 8 }, (_, i) => ({
  ...measured,
  clubSpeed: mph((i % 2 === 0 ? 93 : 101) + 0.3 * Math.sin(5 * i)),
  attackAngle: degrees(1 + 0.5 * Math.sin(3 * i)),
  clubPath: degrees(Math.sin(2 * i)),
  faceAngle: degrees(1.5 * Math.sin(7 * i)),
  dynamicLoft: degrees(14 + Math.sin(i)),
  ballSpeed: mph((i % 2 === 0 ? 136 : 148) + Math.sin(5 * i)),
  launchAngle: degrees(12 + Math.sin(11 * i)),
  launchDirection: degrees(1.4 * Math.sin(7 * i)),
  spinRate: rpm(2700 + 200 * Math.sin(13 * i)),
  spinAxisTilt: degrees(3 * Math.sin(17 * i)),
  carry: yards((i % 2 === 0 ? 215 : 233) + 4 * Math.sin(19 * i)),
  total: yards((i % 2 === 0 ? 238 : 255) + 4 * Math.sin(19 * i)),
  label: i % 2 === 0 ? '93 mph' : '101 mph',
  session: `day ${i % 4}`,
  date: `2026-03-0${1 + (i % 4)}`,
  line: 2 + i,
}));

export const spread: Data = {
  kind: 'student-t',
  dof: 6,
  sd: { clubSpeed: mph(1.5), faceAngle: degrees(2), clubPath: degrees(2), toe: 0.008 },
  correlations: [{ between: ['faceAngle', 'clubPath'], value: 0.4 }],
};
export const launchSpread: Data = { kind: 'normal', sd: { ballSpeed: mph(2), launchDirection: degrees(2) } };
export const ownSpread: Data = { kind: 'own', shots: [delivery, { ...delivery, clubSpeed: mph(97) }] };
export const hole: Data & Readonly<Record<'fairway' | 'hazards', unknown>> = {
  length: yards(410),
  fairway: { width: yards(32), from: yards(50), to: yards(380), bend: { at: yards(230), angle: 0.2 } },
  hazards: [
    {
      kind: 'trees',
      acrossTo: yards(-30),
      alongFrom: yards(100),
      alongTo: yards(300),
      acrossFrom: yards(-90),
    },
  ],
  greenRadius: metres(9),
};
export const outlined: Readonly<Record<'length' | 'fairway' | 'hazards', unknown>> = {
  length: yards(410),
  fairway: {
    polygon: [
      { x: 50, z: -15 },
      { x: 50, z: 15 },
      { x: 350, z: 15 },
      { x: 350, z: -15 },
    ],
  },
  hazards: [
    {
      kind: 'sand',
      polygon: [
        { x: 200, z: 15 },
        { x: 220, z: 15 },
        { x: 210, z: 30 },
      ],
    },
  ],
};

/** A grid of coefficients; invented. */
export const grid: Data & { readonly source: Data } = {
  id: 'own',
  label: 'own',
  reynolds: [5e4, 2e5],
  spinRatio: [0, 0.2, 0.5],
  drag: [
    [0.3, 0.3, 0.35],
    [0.2, 0.25, 0.3],
  ],
  lift: [
    [0, 0.15, 0.25],
    [0, 0.16, 0.28],
  ],
  source: { authors: 'nobody', year: 2026, work: 'an invented ball', confidence: 'assumption' },
  spinEntering: 'across',
  spinDecay: 2e-5,
};
