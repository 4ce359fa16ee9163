import { normalQuantile, type Stream } from '../../src/numerics/index.js';
import { judgeTraining, type MeasuredShot } from '../../src/session/index.js';
import { si } from '../../src/units/index.js';
import { holds, type Outcome, type Study } from './study.js';

const Z = normalQuantile(0.975);
/** Shots a session, their scatter, and the scatter of days [m/s]. */
const SHOTS = 10;
const SHOT_SD = 0.8;
const DAY_SD = 0.5;
/** Gain a session [m/s]. */
const GAIN = 0.1;
/** Carry a metre per second of club speed [m]. */
const SLOPE = 4.5;

interface Days {
  /** One shot in ten scatters three times as widely. */
  readonly wild?: true;
  readonly name: string;
  readonly stated: boolean;
  /** Share of a day's form that the next keeps. */
  readonly kept: number;
  /** Gain at session i of n, as a share of the gain at the end. */
  readonly shape: (share: number) => number;
}

const steady = (share: number): number => share;
const days: readonly Days[] = [
  { name: 'independent days, steady gain', stated: true, kept: 0, shape: steady },
  { name: 'independent days, no gain', stated: true, kept: 0, shape: () => 0 },
  {
    name: 'independent days, gain at once half-way',
    stated: true,
    kept: 0,
    shape: (share) => Number(share > 0.5),
  },
  {
    name: 'independent days, one wild shot in ten, no gain',
    stated: false,
    kept: 0,
    wild: true,
    shape: () => 0,
  },
  { name: 'days that carry over (autocorrelation 0.3), no gain', stated: false, kept: 0.3, shape: () => 0 },
  { name: 'days that carry over (autocorrelation 0.6), no gain', stated: false, kept: 0.6, shape: () => 0 },
];

function shotOf({ normal, uniform }: Stream, wild = false): number {
  return wild && uniform() < 0.1 ? 3 * normal() : normal();
}

/** True means of sessions, and the shots. */
function log(
  random: Stream,
  sessions: number,
  { kept, shape, wild }: Days,
): { gains: number[]; shots: MeasuredShot[] } {
  const gains = Array.from({ length: sessions }, (_, i) => GAIN * (sessions - 1) * shape(i / (sessions - 1)));
  let form = random.normal();
  const shots = gains.flatMap((gain, session) => {
    if (session > 0) form = kept * form + Math.sqrt(1 - kept * kept) * random.normal();
    return Array.from({ length: SHOTS }, (): MeasuredShot => {
      const clubSpeed = 45 + gain + DAY_SD * form + SHOT_SD * shotOf(random, wild);
      return {
        session: `${session}`,
        clubSpeed: si(clubSpeed),
        carry: si(200 + SLOPE * (clubSpeed - 45) + 6 * random.normal()),
      };
    });
  });
  return { gains, shots };
}

/** Studies of `judgeTraining`. */
export const trainingStudies: readonly Study[] = days.flatMap((kind) =>
  [6, 12, 24].map(
    (sessions): Study => ({
      call: 'judgeTraining',
      conditions: `${sessions} sessions, ${kind.name}`,
      stated: kind.stated,
      draws: 1000,
      draw: (random) => {
        const { gains, shots } = log(random, sessions, kind);
        const { change, perTime, worth, block, scatter, carryOver } = judgeTraining(shots);
        const said = carryOver?.verdict === 'carries-over';
        const end = (from: number): number =>
          gains.slice(from, from + block).reduce((sum, gain) => sum + gain / block, 0);
        const truth = end(sessions - block) - end(0);
        const sd = Math.hypot(DAY_SD, SHOT_SD / Math.sqrt(SHOTS));
        const held = (
          interval: { low: number; high: number } | undefined,
          of: number,
          oracle?: number,
          says = said,
        ): Outcome[] =>
          interval === undefined
            ? []
            : [
                holds(interval, of, {
                  ...(!kind.stated && { said: says }),
                  ...(oracle !== undefined && { oracle }),
                }),
              ];
        const width = 2 * Z * sd * Math.sqrt(2 / block);
        const times = gains.map((_, i) => i - (sessions - 1) / 2);
        const square = times.reduce((sum, time) => sum + time * time, 0);
        const found = kind.shape === steady;
        return {
          'change of club speed': held(change, truth, width),
          ...((found || truth === 0) && {
            'change a session': held(perTime, found ? GAIN : 0, (2 * Z * sd) / Math.sqrt(square)),
          }),
          'worth of the change in carry': held(worth, SLOPE * truth),
          'ratio of scatter': held(
            scatter.clubSpeed?.interval,
            1,
            undefined,
            scatter.clubSpeed?.tails.verdict === 'wild',
          ),
        };
      },
    }),
  ),
);
