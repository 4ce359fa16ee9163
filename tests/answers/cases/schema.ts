import { parseDelivery, parseLaunch, parseScene, readShots } from '../../../src/schema/index.js';
import { pick, type Room } from '../room.js';

const table = `club,Club Speed (mph),Ball Speed (mph),Launch Angle (deg),Spin Rate (rpm),Spin Axis (deg),Carry (yd),Apex (ft),Hang Time (s)
driver,101.3,147.9,12.6,2540,4.2,241.7,92,6.1
driver,99.8,143.2,13.9,2910,-7.5,230.4,101,6.2
`;
const decimalCommas = `Clubhead speed [km/h];ball speed [km/h];launch [deg];spin [rpm];carry [m];descent angle [deg]
163,2;238,1;12,8;2610;221,9;38,4
`;

/** JSON and tables, read into SI. */
export const schema: Room = {
  room: 'schema',
  digits: 12,
  questions: {
    launch: () =>
      pick(
        parseLaunch({
          'ballSpeed (km/h)': 240,
          launchAngle: { value: 12.5, unit: 'deg' },
          'spinRate (rpm)': 2600,
          'launchDirection (deg)': -2,
          'spinAxisTilt (rad)': 0.07,
        }),
        'ballSpeed',
        'launchAngle',
        'spinRate',
        'launchDirection',
        'spinAxisTilt',
      ),
    delivery: () =>
      pick(
        parseDelivery({
          'clubSpeed (mph)': 96,
          'attackAngle (deg)': -1,
          'dynamicLoft (deg)': 14,
          'clubPath (deg)': 2,
          strikeOffset: { 'toe (mm)': 8, 'high (in)': -0.5 },
        }),
        'clubSpeed',
        'dynamicLoft',
        'clubPath',
        'strikeOffset.toe',
        'strikeOffset.high',
      ),
    scene: () =>
      pick(
        parseScene({
          air: { 'altitude (ft)': 4200, 'temperature (F)': 81, 'relativeHumidity (%)': 30 },
          wind: { 'speed (mph)': 9, clock: 4, terrain: 'heath-course', 'measuredAt (m)': 2 },
          ground: { 'elevation (ft)': -30, 'slope (deg)': 1 },
        }),
        'air.density',
        'wind.along',
        'wind.across',
        'ground.elevation',
        'ground.slope',
      ),
    'scene-by-pressure': () =>
      pick(parseScene({ air: { 'temperature (C)': 12, 'pressure (inHg)': 29.4 } }), 'air.density'),
    table: () =>
      pick(
        readShots(table).shots,
        '0.clubSpeed',
        '0.spinRate',
        '0.carry',
        '0.hangTime',
        '1.ballSpeed',
        '1.launchAngle',
        '1.spinAxisTilt',
        '1.apex',
      ),
    'table-with-decimal-commas': () =>
      pick(
        readShots(decimalCommas).shots,
        '0.clubSpeed',
        '0.ballSpeed',
        '0.launchAngle',
        '0.carry',
        '0.descentAngle',
      ),
  },
};
