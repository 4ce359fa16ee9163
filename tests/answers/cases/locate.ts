import { type Clubhead, clubheads } from '../../../src/clubhead/index.js';
import {
  type LocateOptions,
  locateStrike,
  type StrikeMeasurement,
  strike,
} from '../../../src/strike/index.js';
import { degrees, mph, rpm } from '../../../src/units/index.js';
import { delivery, type Swing } from '../inputs.js';
import { type Numbers, pick, type Room } from '../room.js';

const locateIn = (
  measured: StrikeMeasurement,
  head: Clubhead = clubheads.driver,
  options: LocateOptions = {},
): Numbers => {
  const estimate = locateStrike(measured, { ...options, clubhead: head });
  const basis = pick(estimate, 'chiSquare', 'probability');
  if (estimate.outcome === 'inconsistent') return basis;
  return {
    ...basis,
    ...pick(
      estimate,
      'strikeOffset.toe',
      'strikeOffset.high',
      'weight',
      'regions.p95.semiMajor',
      'identifiability.toe.standardDeviation',
      'delivery.dynamicLoft',
    ),
  };
};

/** All readings of a strike, as this head makes it. */
const readingsOf = (swing: Swing, head: Clubhead = clubheads.driver): StrikeMeasurement => {
  const { strikeOffset: _, closureRate: __, hand: ___, ...club } = delivery(swing);
  const { rifleSpin: ____, ...ball } = strike(delivery(swing), { clubhead: head }).launch;
  return { ...club, ...ball };
};

const toe: StrikeMeasurement = readingsOf({
  speed: 100,
  loft: 14,
  attack: 1,
  path: 2,
  face: 1,
  toe: 18,
  high: 6,
});
const heel: StrikeMeasurement = readingsOf(
  { speed: 84, loft: 24, attack: -4, toe: -14, high: -5 },
  clubheads.midIron,
);

/** Where the ball met the face, from measurements. */
export const locate: Room = {
  room: 'locate',
  digits: 8,
  questions: {
    'driver-toe-18mm': () => locateIn(toe),
    'driver-ball-only': () =>
      locateIn({
        ballSpeed: mph(146),
        launchAngle: degrees(14),
        launchDirection: degrees(2),
        spinRate: rpm(2200),
        spinAxisTilt: degrees(-9),
      }),
    'mid-iron-heel-14mm': () => locateIn(heel, clubheads.midIron),
    'left-hand-own-priors': () =>
      locateIn(toe, clubheads.driver, {
        hand: 'left',
        readingErrors: { spinRate: 0.1 },
        priors: { toe: { mean: 0.01, standardDeviation: 0.02 } },
      }),
    contradiction: () => locateIn({ ...toe, ballSpeed: mph(190) }),
  },
};
