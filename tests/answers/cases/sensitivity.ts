import { type ClubheadName, clubheads } from '../../../src/clubhead/index.js';
import {
  faceMap,
  judgePattern,
  type Sensitivities,
  type Sensitivity,
  type SensitivityOptions,
  type StrikeQuality,
  sensitivities,
  strikePattern,
  strikeQuality,
} from '../../../src/sensitivity/index.js';
import type { StrikeOffset } from '../../../src/strike/index.js';
import { celsius, degrees, millimetres, mph, rpm, yards } from '../../../src/units/index.js';
import { delivery, launch, wobble } from '../inputs.js';
import { type Numbers, pick, type Room } from '../room.js';

const drive = delivery({ speed: 95, loft: 14, attack: 1, path: 1, face: 0.5 });
const iron = delivery({ speed: 82, loft: 24, attack: -4 });

const byChange = ({ rows }: Sensitivities): Readonly<Record<string, Sensitivity>> =>
  Object.fromEntries(rows.map((row) => [row.change, row]));
/** One number for each change. */
const eachChange = (of: Sensitivities, number: (row: Sensitivity) => number): Numbers =>
  Object.fromEntries(of.rows.map((row) => [row.change, number(row)]));
const worthOf = (
  from: Parameters<typeof sensitivities>[0],
  options: SensitivityOptions = {},
): Sensitivities => sensitivities(from, {}, options);

const quality = (
  club: number,
  ball: number,
  more: Partial<Parameters<typeof strikeQuality>[0]>,
  head: ClubheadName = 'driver',
): StrikeQuality =>
  strikeQuality({ clubSpeed: mph(club), ballSpeed: mph(ball), ...more }, {}, { clubhead: head });

const strikes: readonly StrikeOffset[] = Array.from({ length: 12 }, (_, i) => ({
  toe: millimetres(6 + 9 * wobble(i, 1)),
  high: millimetres(-3 + 6 * wobble(i, 2)),
}));

const map = (): ReturnType<typeof faceMap> =>
  faceMap(drive, {}, { columns: 5, rows: 3, toe: millimetres(24), high: millimetres(12) });

/** What a change is worth. */
export const sensitivity: Room = {
  room: 'sensitivity',
  digits: 8,
  questions: {
    'drive-difference': () => eachChange(worthOf(drive), ({ difference }) => difference.side),
    'drive-slope': () => eachChange(worthOf(drive), ({ slope }) => slope.total),
    'iron-difference': () =>
      pick(
        byChange(worthOf(iron, { clubhead: clubheads.midIron })),
        'clubSpeed.difference.carry',
        'toe.opposite.carry',
        'high.slope.total',
      ),
    'launch-slope-in-frost': () =>
      eachChange(
        worthOf(launch([140, 13, 2800]), { weather: { temperature: celsius(2) } }),
        ({ slope }) => slope.carry,
      ),
    'quality-by-spin-loft': () =>
      pick(quality(100, 145, { spinLoft: degrees(13) }), 'share', 'shareError', 'achievable', 'carryLost'),
    'quality-by-launch': () =>
      pick(
        quality(92, 130, { launchAngle: degrees(12), spinRate: rpm(3100), attackAngle: degrees(-2) }),
        'share',
        'ballSpeedLost',
        'launch.bestDynamicLoft',
        'launch.carryLost',
      ),
    'quality-misread': () =>
      pick(
        quality(90, 150, { spinLoft: degrees(14), carry: yards(240) }),
        'smashFactor',
        'misread.possible.min',
        'misread.possible.max',
      ),
    'quality-iron': () =>
      pick(
        quality(80, 108, { attackAngle: degrees(-4), dynamicLoft: degrees(24) }, 'midIron'),
        'share',
        'carryLost',
      ),
    'face-map': () =>
      pick(
        map(),
        'ballSpeed.0',
        'backspin.0',
        'sidespin.4',
        'launchDirection.4',
        'carry.7',
        'total.10',
        'side.14',
        'longest.carry',
      ),
    pattern: () => {
      const { centre, covariance, spread } = strikePattern(strikes);
      // mm² for the covariance, so that its digits count.
      return { toe: centre.toe, high: centre.high, sdToe: spread.toe, cov: 1e6 * covariance[0][1] };
    },
    'pattern-judged': () =>
      pick(
        judgePattern(strikes, drive),
        'carry',
        'centredCarry',
        'offLine',
        'moves.0.gain',
        'moves.1.gain',
        'moves.2.gain',
      ),
  },
};
