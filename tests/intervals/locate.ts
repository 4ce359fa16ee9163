import { clubheads } from '../../src/clubhead/index.js';
import type { StrikeReading } from '../../src/inputs/readings.js';
import type { FaceRegion, StrikeSolution } from '../../src/strike/estimate.js';
import { locateStrike } from '../../src/strike/index.js';
import { anotherHead, simulatedStrike } from './strikes.js';
import type { Outcome, Study } from './study.js';

const ALL: readonly StrikeReading[] = [
  'clubSpeed',
  'attackAngle',
  'clubPath',
  'faceAngle',
  'dynamicLoft',
  'ballSpeed',
  'launchAngle',
  'launchDirection',
  'spinRate',
  'spinAxisTilt',
];
const BALL: readonly StrikeReading[] = ALL.slice(5);

interface Conditions {
  readonly name: string;
  readonly readings: readonly StrikeReading[];
  readonly stated: boolean;
  readonly wrongHead?: boolean;
  readonly noise?: number;
}

const conditions: readonly Conditions[] = [
  { name: 'all readings', readings: ALL, stated: true },
  { name: 'all but the spin axis', readings: ALL.slice(0, -1), stated: true },
  { name: 'club speed and the ball', readings: ['clubSpeed', ...BALL], stated: true },
  { name: 'the ball alone', readings: BALL, stated: true },
  {
    name: 'club speed, ball speed, launch angle',
    readings: ['clubSpeed', 'ballSpeed', 'launchAngle'],
    stated: true,
  },
  { name: 'club speed and ball speed', readings: ['clubSpeed', 'ballSpeed'], stated: true },
  { name: 'all readings, another head', readings: ALL, stated: false, wrongHead: true },
  {
    name: 'club speed and ball speed, another head',
    readings: ['clubSpeed', 'ballSpeed'],
    stated: false,
    wrongHead: true,
  },
  { name: 'all readings, errors 1.5 times the stated', readings: ALL, stated: false, noise: 1.5 },
];

function inside({ strikeOffset }: StrikeSolution, region: FaceRegion, toe: number, high: number): boolean {
  const [dx, dy] = [toe - strikeOffset.toe, high - strikeOffset.high];
  const [c, s] = [Math.cos(region.orientation), Math.sin(region.orientation)];
  return Math.hypot((dx * c + dy * s) / region.semiMajor, (dy * c - dx * s) / region.semiMinor) <= 1;
}

/** Studies of `locateStrike`: the truth is in a region of a solution or of an alternative. */
export const locateStudies: readonly Study[] = conditions.map(
  ({ name, readings, stated, wrongHead = false, noise = 1 }): Study => ({
    call: 'locateStrike',
    conditions: name,
    stated,
    draws: 4000,
    aims: { 'region of 68 %': 0.6827 },
    draw: (random) => {
      const head = wrongHead ? anotherHead(random) : clubheads.driver;
      const { toe, high, measured } = simulatedStrike(random, { head, noise });
      const given = Object.fromEntries(readings.map((reading) => [reading, measured[reading]]));
      const estimate = locateStrike(given);
      // An answer that no strike explains the readings claims no place.
      if (estimate.outcome === 'inconsistent') {
        const said: Outcome = { covered: false, said: true };
        return stated ? {} : { 'region of 68 %': [said], 'region of 95 %': [said] };
      }
      const places = [estimate, ...estimate.alternatives];
      const region = (level: 'p68' | 'p95'): Outcome[] => [
        {
          covered: places.some((place) => inside(place, place.regions[level], toe, high)),
          width: places.reduce(
            (area, { regions }) => area + 1e6 * Math.PI * regions[level].semiMajor * regions[level].semiMinor,
            0,
          ),
          ...(!stated && { said: estimate.findings.some((finding) => /fit worse/.test(finding)) }),
        },
      ];
      return { 'region of 68 %': region('p68'), 'region of 95 %': region('p95') };
    },
  }),
);
