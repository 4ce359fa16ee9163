import {
  bestLoft,
  degrees,
  type LoftOptimum,
  type Maximised,
  mph,
  playShot,
  toDegrees,
  toFeet,
  toMph,
  toRpm,
  toYards,
} from '../../../src/index.js';
import { loftForLaunch } from '../../strike/helpers.js';
import optimumData from '../data/outside-optimum.json' with { type: 'json' };
import practiceData from '../data/outside-practice.json' with { type: 'json' };
import type { Group } from './row.js';
import { launchOf, total } from './walk.js';

/** What a player adds to the loft stamped on the head: see the note on the optimum rows. */
const ADDED_LOFT = 4;

const found = new Map<string, LoftOptimum>();
/** Best loft of the generic driver, level attack, normal turf. */
function best(clubSpeed: number, maximise: Maximised = 'total'): LoftOptimum {
  const key = `${clubSpeed} ${maximise}`;
  const known = found.get(key) ?? bestLoft({ clubSpeed: mph(clubSpeed), attackAngle: degrees(0), maximise });
  found.set(key, known);
  return known;
}
const nominalLoft = (clubSpeed: number): number => toDegrees(best(clubSpeed).dynamicLoft) - ADDED_LOFT;
const launchAngle = (clubSpeed: number): number => toDegrees(best(clubSpeed).shot.launch.launchAngle);
const spin = (clubSpeed: number): number => toRpm(best(clubSpeed).shot.launch.spinRate);

/** Speed at which each trade row is looked at: the middle of its range. */
const LOFT_ROWS: Readonly<Record<string, number>> = {
  'four-lofts-65': 65,
  'four-lofts-75': 75,
  'four-lofts-85': 85,
  'four-lofts-95': 95,
  'four-lofts-105': 105,
  'four-lofts-115': 115,
  'web-table-65-75': 70,
  'web-table-75-85': 80,
  'web-table-85-90': 87.5,
  'web-table-95-105': 100,
  'web-table-110-125': 117.5,
  'web-table-130-150': 140,
  'retailer-80-90': 85,
  'tip-80': 80,
  'tip-70': 70,
  'tip-110': 115,
  'consumer-110-120': 115,
  'consumer-90': 90,
};

const optimum: Group = {
  title: 'Best loft, launch and spin',
  about: `${optimumData.about.use} ${optimumData.about.confidence}`,
  rows: optimumData.rows,
  compute: {
    ...Object.fromEntries(Object.entries(LOFT_ROWS).map(([id, speed]) => [id, () => nominalLoft(speed)])),
    'window-120-launch': () => launchAngle(120),
    'window-120-spin': () => spin(120),
    'thomas-125-launch': () => launchAngle(125),
    'thomas-125-spin': () => spin(125),
    'thomas-100-launch': () => launchAngle(100),
  },
};

const group = launchOf(122.5, 8.2, 1775);
const groupFlight = () => playShot(group).flight;
const struck = (clubSpeed: number, dynamicLoft: number) =>
  playShot({ clubSpeed: mph(clubSpeed), attackAngle: degrees(0), dynamicLoft: degrees(dynamicLoft) });
const groupStrike = () => struck(82.1, loftForLaunch(mph(82.1), 0, 8.2));
const matched = (maximise: Maximised): number => toDegrees(best(100, maximise).shot.flight.descentAngle);
/** One driver delivered at one dynamic loft, at ten mph more. */
const step = (from: number): number =>
  toYards(struck(from + 10, 9.5).total) - toYards(struck(from, 9.5).total);

const practice: Group = {
  title: 'Common practice',
  about: `${practiceData.about.use} ${practiceData.about.confidence}.`,
  rows: practiceData.rows,
  compute: {
    'group-carry': () => toYards(groupFlight().carry),
    'group-apex': () => toFeet(groupFlight().apex),
    'group-descent': () => toDegrees(groupFlight().descentAngle),
    'group-total': () => total(group, 'firm'),
    'group-ball-speed': () => toMph(groupStrike().launch.ballSpeed),
    'group-smash': () => groupStrike().strike?.smashFactor ?? 0,
    'group-spin': () => toRpm(groupStrike().launch.spinRate),
    'smash-centred-slow': () => struck(85, 14).strike?.smashFactor ?? 0,
    'smash-centred-fast': () => struck(115, 11).strike?.smashFactor ?? 0,
    'matched-descent-100': () => matched('total'),
    'matched-descent-100-carry': () => matched('carry'),
    'loft-80': () => nominalLoft(80),
    'loft-120': () => nominalLoft(120),
    'loft-130-less-120': () => nominalLoft(130) - nominalLoft(120),
    'total-80-90': () => step(80),
    'total-90-100': () => step(90),
    'total-100-110': () => step(100),
    'total-110-120': () => step(110),
  },
};

export const optimumGroups: readonly Group[] = [optimum, practice];
