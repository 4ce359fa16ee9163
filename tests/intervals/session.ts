import { mean, normalQuantile, powerOfMeanDifference, type Stream } from '../../src/numerics/index.js';
import { gainsToShow, type MeasuredShot, scatterTrend, summariseSession } from '../../src/session/index.js';
import { mph, si } from '../../src/units/index.js';
import { holds, type Outcome, type Study } from './study.js';

/** One value about a usual one: its distribution, mean and standard deviation. */
interface Law {
  readonly name: string;
  readonly draw: (random: Stream) => number;
  readonly mean: number;
  readonly sd: number;
}

const Z = normalQuantile(0.975);
const USUAL = 200;
const SD = 8;
/** One shot in ten is a mishit that loses 10 to 30 % of its carry: invented. */
const MISHITS = { share: 0.1, least: 0.1, most: 0.3 } as const;
const lost = (MISHITS.least + MISHITS.most) / 2;
const lostSquare = lost ** 2 + (MISHITS.most - MISHITS.least) ** 2 / 12;
const mishitMean = USUAL * (1 - MISHITS.share * lost);

/** Carries of a player without mishits, with them, and with a long tail of short shots. */
const laws: readonly Law[] = [
  { name: 'normal', draw: ({ normal }) => USUAL + SD * normal(), mean: USUAL, sd: SD },
  {
    name: 'one mishit in ten',
    draw: ({ normal, uniform }) => {
      const carry = USUAL + SD * normal();
      const loss = MISHITS.least + (MISHITS.most - MISHITS.least) * uniform();
      return uniform() < MISHITS.share ? carry * (1 - loss) : carry;
    },
    mean: mishitMean,
    sd: Math.sqrt((USUAL ** 2 + SD ** 2) * (1 - MISHITS.share * (2 * lost - lostSquare)) - mishitMean ** 2),
  },
  {
    name: 'skewed: the best less an exponential loss',
    draw: ({ uniform }) => USUAL + SD * Math.log(uniform()),
    mean: USUAL - SD,
    sd: SD,
  },
];
/** Bands summed up at once, each a draw of its own. */
const BANDS = 100;

/** Means of bands; a hundred bands a session, since each is an answer. */
const means: readonly Study[] = laws.flatMap((law) =>
  [5, 10, 20, 40].map(
    (count): Study => ({
      call: 'summariseSession',
      conditions: `carry ${law.name}, ${count} shots`,
      stated: true,
      draws: 100,
      draw: (random) => {
        const shots = Array.from(
          { length: BANDS * count },
          (_, i): MeasuredShot => ({
            label: `${Math.floor(i / count)}`,
            carry: si(law.draw(random)),
          }),
        );
        const oracle = (2 * Z * law.sd) / Math.sqrt(count);
        const intervals = summariseSession(shots).bands.flatMap(
          (band) => band.quantities.carry?.interval ?? [],
        );
        return { 'mean carry': intervals.map((interval) => holds(interval, law.mean, { oracle })) };
      },
    }),
  ),
);

/** Slopes of carry with club speed. */
const SLOPE = 4.5;
const trends: readonly Study[] = laws.flatMap((law) =>
  [5, 10, 30].map(
    (count): Study => ({
      call: 'summariseSession',
      conditions: `carry ${law.name} about a line, ${count} shots`,
      stated: true,
      draws: 4000,
      draw: (random) => {
        const speeds = Array.from({ length: count }, () => 45 + 2 * random.normal());
        const shots = speeds.map(
          (speed): MeasuredShot => ({
            clubSpeed: si(speed),
            carry: si(law.draw(random) + SLOPE * (speed - 45)),
            label: 'all',
          }),
        );
        const centre = speeds.reduce((sum, speed) => sum + speed / count, 0);
        const square = speeds.reduce((sum, speed) => sum + (speed - centre) ** 2, 0);
        const oracle = (2 * Z * law.sd) / Math.sqrt(square);
        const trend = summariseSession(shots).trends.carry;
        return { 'trend of carry with club speed': trend ? [holds(trend.interval, SLOPE, { oracle })] : [] };
      },
    }),
  ),
);

/** Scatter of club speed from shot to shot [m/s]. */
const SPEED_SD = 0.8;

/** Two bands without a change between them, and what the first alone says about shots to come. */
const detectable: readonly Study[] = [4, 10, 30].map(
  (count): Study => ({
    call: 'summariseSession',
    conditions: `club speed normal, ${count} shots a band`,
    stated: true,
    draws: 4000,
    aims: { 'gainsToShow finds 1 mph': 0.8 },
    draw: (random) => {
      const speeds = Array.from({ length: 2 * count + 2 }, () => 45 + SPEED_SD * random.normal());
      const shots = speeds.map(
        (speed, i): MeasuredShot => ({
          clubSpeed: si(speed),
          label: i < count ? 'before' : 'after',
        }),
      );
      const two = summariseSession(shots.slice(0, 2 * count)).repeatability.clubSpeed;
      const one = summariseSession(shots.slice(0, count));
      const change = Math.abs(mean(speeds.slice(0, count)) - mean(speeds.slice(count, 2 * count)));
      const single = Math.abs((speeds.at(-1) ?? 0) - (speeds.at(-2) ?? 0));
      const below = (size: number, limit = 0, shotsEach = 1): Outcome => ({
        covered: size <= limit,
        width: limit,
        oracle: Z * SPEED_SD * Math.sqrt(2 / shotsEach),
      });
      const needed = gainsToShow(shots.slice(0, count))?.gains[0]?.shots ?? 2;
      return {
        'detectableMean, no change': [below(change, two?.detectableMean, count)],
        'detectableSingle, no change': [below(single, one.repeatability.clubSpeed?.detectableSingle)],
        'gainsToShow finds 1 mph': [
          { covered: random.uniform() < powerOfMeanDifference(needed, mph(1), SPEED_SD) },
        ],
      };
    },
  }),
);

/** Direction scatter that grows 2 % a mph over four bands. */
const GROWTH = 0.02;
const directions: readonly Law[] = [
  { name: 'normal', draw: ({ normal }) => normal(), mean: 0, sd: 1 },
  {
    name: 'one wild shot in ten',
    draw: ({ normal, uniform }) => (uniform() < 0.1 ? 3 : 1) * normal(),
    mean: 0,
    sd: Math.sqrt(0.9 + 0.1 * 9),
  },
];
const scatter: readonly Study[] = directions.flatMap((law) =>
  [5, 10, 30].map(
    (count): Study => ({
      call: 'scatterTrend',
      conditions: `direction ${law.name}, four bands of ${count} shots`,
      stated: law.name === 'normal',
      draws: 4000,
      draw: (random) => {
        const bands = [85, 90, 95, 100];
        const shots = bands.flatMap((speed) =>
          Array.from(
            { length: count },
            (): MeasuredShot => ({
              clubSpeed: mph(speed),
              launchDirection: si(0.03 * (1 + GROWTH) ** (speed - 92.5) * law.draw(random)),
              label: `${speed}`,
            }),
          ),
        );
        const { interval, tails } = scatterTrend(shots);
        const said = law.name !== 'normal' && { said: tails.verdict === 'wild' };
        // Variance of ln s of normal shots, 1/(2 (n − 1)), over the squares of the speeds about their mean.
        const error = Math.sqrt(1 / (2 * (count - 1)) / 125);
        return { 'growth of scatter': [holds(interval, GROWTH, { oracle: 2 * Z * error, ...said })] };
      },
    }),
  ),
);

/** Studies of `summariseSession` and `scatterTrend`. */
export const sessionStudies: readonly Study[] = [...means, ...trends, ...detectable, ...scatter];
