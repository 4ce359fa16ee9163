import { type Dispersion, disperse } from '../../src/dispersion/index.js';
import { type Stream, studentTQuantile } from '../../src/numerics/index.js';
import { degrees, millimetres, mph, yards } from '../../src/units/index.js';
import { holds, type Outcome, type Study } from './study.js';

/** Standard errors come from the differences of eight parts of a cloud, so seven degrees of freedom. */
const T = studentTQuantile(0.975, 7);
const SHOTS = 256;

function cloud(seed: number, sampling: 'sobol' | 'random'): Dispersion {
  return disperse(
    {
      delivery: { clubSpeed: mph(95), attackAngle: degrees(1), dynamicLoft: degrees(15) },
      spread: {
        kind: 'normal',
        sd: { clubSpeed: mph(1.5), faceAngle: degrees(2), toe: millimetres(8), high: millimetres(6) },
      },
    },
    { turf: 'firm' },
    { shots: SHOTS, seed, sampling, fairway: { width: yards(32) } },
  );
}

type Estimates = Readonly<Record<string, { readonly value: number; readonly error: number }>>;

function estimatesOf({ carry, restEllipses, restRegion }: Dispersion): Estimates {
  const of = ({ value, standardError }: { value: number; standardError: number }) => ({
    value,
    error: standardError,
  });
  const [, ellipse] = restEllipses;
  const [, region] = restRegion?.regions ?? [];
  return {
    'mean carry': of(carry.mean),
    'standard deviation of carry': of(carry.sd),
    'carry that 5 % fall short of': of(carry.p5),
    ...(ellipse !== undefined && {
      'share in the 90 % ellipse': { value: ellipse.holds, error: ellipse.standardErrors.holds },
      'area of the 90 % ellipse': { value: ellipse.area, error: ellipse.standardErrors.area },
    }),
    ...(region !== undefined && {
      'area of the 90 % region': { value: region.area, error: region.standardErrors.area },
    }),
  };
}

/** Clouds whose average stands for what all seeds give. */
const SEEDS = 150;

function study(sampling: 'sobol' | 'random'): Study {
  let known: { readonly estimates: Record<string, number>; readonly share: number } | undefined;
  const truths = (): NonNullable<typeof known> => {
    const estimates: Record<string, number> = {};
    let share = 0;
    for (let seed = 0; seed < SEEDS; seed++) {
      const found = cloud(seed, sampling);
      for (const [name, { value }] of Object.entries(estimatesOf(found))) {
        estimates[name] = (estimates[name] ?? 0) + value / SEEDS;
      }
      share += (found.fairway?.share ?? 0) / SEEDS;
    }
    return { estimates, share };
  };
  return {
    call: 'disperse',
    conditions: sampling === 'sobol' ? `${SHOTS} shots, evenly spread` : `${SHOTS} shots at random`,
    stated: true,
    draws: 4000,
    draw: (random: Stream) => {
      known ??= truths();
      const { estimates, share } = known;
      const found = cloud(1000 + random.integer(2 ** 40), sampling);
      const within = Object.entries(estimatesOf(found)).map(
        ([name, { value, error }]): [string, Outcome[]] => [
          `${name} ± ${T.toFixed(2)} standard errors`,
          [{ covered: Math.abs(value - (estimates[name] ?? 0)) <= T * error, width: 2 * T * error }],
        ],
      );
      return {
        ...Object.fromEntries(within),
        'share on the fairway, interval': found.fairway ? [holds(found.fairway.interval, share)] : [],
      };
    },
  };
}

/** Studies of `disperse`. */
export const dispersionStudies: readonly Study[] = [study('sobol'), study('random')];
