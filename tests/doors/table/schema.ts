import * as schema from '../../../src/schema/index.js';
import { readShotsOptionFields } from '../../../src/schema/read-shots-options.js';
import { type Door, door, open, options } from '../door.js';

const csv = 'ball speed (mph),launch angle (deg),spin (rpm)\n150,12,2600\n';
const { readShots, jsonSchemaOf, ...parsers } = schema;

/** What each parser reads. Its fields are tried one by one in tests/schema/same-verdict.test.ts, in JSON and in code. */
const documents: Readonly<Record<keyof typeof parsers, unknown>> = {
  parseDelivery: { 'clubSpeed (mph)': 96, 'attackAngle (deg)': 1, 'dynamicLoft (deg)': 14 },
  parseLaunch: { 'ballSpeed (mph)': 150, launchAngle: { value: 12, unit: 'deg' }, 'spinRate (rpm)': 2600 },
  parseScene: {
    air: { 'altitude (m)': 1200 },
    wind: { 'speed (mph)': 8, clock: 1.5, terrain: 'links-course' },
    ground: { 'elevation (ft)': -30 },
    turf: 'firm',
    aerodynamics: { kind: 'scaled', of: 'fitted-modern', drag: 0.98 },
  },
  parseClubhead: 'driver',
  parseBall: 'conforming',
  parseTurf: 'firm',
  parseMeasuredShot: { 'clubSpeed (mph)': 96, 'carry (yd)': 232, club: 'driver' },
};

export const schemaDoors: readonly Door[] = [
  ...Object.entries(parsers).map(([name, parse]) =>
    door(`schema.${name}`, parse, open('json', documents[name as keyof typeof parsers])),
  ),
  door('schema.jsonSchemaOf', jsonSchemaOf, open('name', 'launch')),
  door(
    'schema.readShots',
    readShots,
    open('csvText', csv),
    options(readShotsOptionFields, { needs: 'flight' }),
  ),
];
