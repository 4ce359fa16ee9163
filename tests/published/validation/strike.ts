import {
  type Clubhead,
  clubheads,
  type Delivery,
  degrees,
  type Launch,
  metres,
  millimetres,
  mph,
  playShot,
  rpm,
  type Shot,
  toYards,
} from '../../../src/index.js';
import { CASE_B, driverWith, loftForLaunch } from '../../strike/helpers.js';
import averages from '../data/impact-averages.json' with { type: 'json' };
import effects from '../data/impact-effects.json' with { type: 'json' };
import data from '../data/outside-strike.json' with { type: 'json' };
import { averageRows, effectRows } from '../impact-rows.js';
import type { Group, OutsideRow } from './row.js';

/** Sets whose ball speed and spin set constants of the generic heads; see the sources in src/clubhead/presets.ts. */
const INDEPENDENT: readonly string[] = ['tour women driver', 'ball test 2028'];
const SPIN_MISFITS: Readonly<Record<string, string>> = {
  'tour women driver': 'Unexplained; as if the ball gripped fully or were struck 6–8 mm low.',
  'ball test 2028':
    'No tangential restitution and attack angle fits both ball tests; the robot’s attack angle is not published.',
};

const launchRows = averageRows();
const launches: Group = {
  title: 'Launch from delivery',
  about: `${averages.about.what} ${averages.about.confidence} Dynamic loft solved here for the quoted launch angle.`,
  rows: launchRows.map((row): OutsideRow => {
    const spin = row.quantity === 'spin rate';
    const misfit = spin ? SPIN_MISFITS[row.set] : undefined;
    return {
      id: `${row.set} ${row.quantity}`,
      quantity: `${row.quantity} from delivery`,
      what: row.set,
      unit: row.unit,
      expected: row.published,
      tolerance: (spin ? 0.2 : 0.03) * row.published,
      source: row.source,
      limits: spin
        ? 'Spin predicted from a delivery is good to 20 %.'
        : 'Two definitions of club speed differ by 1.5 %; rounding 1 %.',
      ...(INDEPENDENT.includes(row.set) ? {} : { usedInFit: true }),
      ...(misfit === undefined ? {} : { misfit }),
    };
  }),
  compute: Object.fromEntries(launchRows.map((row) => [`${row.set} ${row.quantity}`, () => row.model])),
};

const effectList = effectRows();
const effectSizes: Group = {
  title: 'Effects of the strike on launch',
  about: `${effects.about.what} ${effects.about.confidence}`,
  rows: effectList.map((row) => ({
    id: row.quantity,
    quantity: row.quantity,
    what: row.quantity,
    unit: row.unit,
    expected: row.published,
    tolerance: row.tolerance,
    source: row.source,
    limits: row.why,
  })),
  compute: Object.fromEntries(effectList.map((row) => [row.quantity, () => row.model])),
};

const driver = clubheads.driver;

function played(
  clubSpeed: number,
  attack: number,
  loft: number,
  head: Clubhead = driver,
  high = 0,
  toe = 0,
): Shot {
  const delivery: Delivery = {
    clubSpeed: mph(clubSpeed),
    attackAngle: degrees(attack),
    dynamicLoft: degrees(loft),
    strikeOffset: { toe: millimetres(toe), high: millimetres(high) },
  };
  return playShot(delivery, { clubhead: head });
}

const withRestitution = (atReference: number): Clubhead =>
  driverWith({
    restitution: { ...driver.restitution, atReference, atEdge: Math.min(atReference, 0.78), slope: 0 },
  });

const caseB = CASE_B.clubSpeed / mph(1);
const loftB = loftForLaunch(CASE_B.clubSpeed, CASE_B.attackAngle, CASE_B.launchAngle);
const totalOf = (shot: Shot): number => toYards(shot.total);
/** The centred strike of case b, with launch and spin changed by degrees and rpm. */
const launched = (more: number, spin: number): Launch => ({
  ballSpeed: mph(164),
  launchAngle: degrees(CASE_B.launchAngle + more),
  spinRate: rpm(2800 + spin),
});
/** Finish of a 150 mph ball struck toward the toe, from a straight delivery. */
const toeSide = (toe: number): number => toYards(metres(played(101.5, 0, 12, driver, 0, toe).side));

const onDistance: Group = {
  title: 'Effects of the strike on distance and curve',
  about: `${data.about.use} ${data.about.confidence}`,
  rows: data.rows,
  compute: {
    'high-total': () =>
      totalOf(played(caseB, CASE_B.attackAngle, loftB, driver, 15)) -
      totalOf(played(caseB, CASE_B.attackAngle, loftB)),
    'high-launch-only': () => totalOf(playShot(launched(4, -800))) - totalOf(playShot(launched(0, 0))),
    'low-total': () =>
      totalOf(played(caseB, CASE_B.attackAngle, loftB)) -
      totalOf(played(caseB, CASE_B.attackAngle, loftB, driver, -15)),
    'toe-6-side': () => toeSide(6.35),
    'toe-13-side': () => toeSide(12.7),
    'restitution-0.78-0.83': () =>
      totalOf(played(113, 0, 12.5, withRestitution(0.83))) -
      totalOf(played(113, 0, 12.5, withRestitution(0.78))),
    'restitution-0.74-0.845': () =>
      totalOf(played(90, 0, 14.5, withRestitution(0.845))) -
      totalOf(played(90, 0, 14.5, withRestitution(0.74))),
    'speed-and-restitution': () =>
      totalOf(played(120, 0, 11.6, withRestitution(0.82))) -
      totalOf(played(109, 0, 11.6, withRestitution(0.78))),
  },
};

export const strikeGroups: readonly Group[] = [launches, effectSizes, onDistance];
