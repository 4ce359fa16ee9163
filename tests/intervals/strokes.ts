import {
  type ClearAnswer,
  type StrokesOnHole,
  speedToClear,
  strokesOnHole,
} from '../../src/dispersion/index.js';
import { studentTQuantile } from '../../src/numerics/index.js';
import { mph, toMph, yards } from '../../src/units/index.js';
import { golfer, streams } from '../dispersion/flown/holes.js';
import { holds, type Study } from './study.js';

type Sampling = 'sobol' | 'random';
const HOW: Readonly<Record<Sampling, string>> = { sobol: 'evenly spread', random: 'at random' };
/** Clouds whose average stands for what all seeds give. */
const SEEDS = 50;
/** Standard errors come from eight parts of a cloud. */
const T = studentTQuantile(0.975, 7);

function averageOf(at: (seed: number) => number): number {
  let sum = 0;
  for (let seed = 0; seed < SEEDS; seed++) sum += at(seed);
  return sum / SEEDS;
}

/** Nine drives in ten over 200 yards. */
function clear(sampling: Sampling, shots: number, seed: number): ClearAnswer & { outcome: 'found' } {
  const clubSpeed = { min: mph(84), max: mph(108) };
  const question = { ...golfer, carry: yards(200), share: 0.9 };
  const answer = speedToClear(question, {}, { shots, seed, sampling, clubSpeed });
  if (answer.outcome !== 'found') throw new Error(answer.outcome);
  return answer;
}

function clearStudy(sampling: Sampling): Study {
  const shots = 256;
  let truth: number | undefined;
  return {
    call: 'speedToClear',
    conditions: `200 yards nine times in ten, ${shots} shots ${HOW[sampling]}`,
    stated: true,
    draws: 1000,
    draw: (random) => {
      truth ??= averageOf((seed) => toMph(clear('sobol', 1024, seed).clubSpeed));
      const { low, high } = clear(sampling, shots, 1000 + random.integer(2 ** 40)).interval;
      const interval = {
        low: low === undefined ? 0 : toMph(low),
        high: high === undefined ? 200 : toMph(high),
      };
      return { 'club speed': [holds(interval, truth)] };
    },
  };
}

function strokesStudy(sampling: Sampling): Study {
  const [stream] = streams;
  if (stream === undefined) throw new Error('no hole');
  const strokes = (seed: number): StrokesOnHole =>
    strokesOnHole({ ...golfer, hole: stream.hole }, {}, { shots: 256, seed, sampling });
  let truth: number | undefined;
  return {
    call: 'strokesOnHole',
    conditions: `${stream.name}, 256 shots ${HOW[sampling]}`,
    stated: true,
    draws: 1000,
    draw: (random) => {
      truth ??= averageOf((seed) => strokes(seed).strokes.value);
      const { value, standardError } = strokes(1000 + random.integer(2 ** 40)).strokes;
      const half = T * standardError;
      return {
        [`strokes ± ${T.toFixed(2)} standard errors`]: [
          holds({ low: value - half, high: value + half }, truth),
        ],
      };
    },
  };
}

/** Studies of `speedToClear` and `strokesOnHole`. */
export const strokesStudies: readonly Study[] = [
  clearStudy('sobol'),
  clearStudy('random'),
  strokesStudy('sobol'),
  strokesStudy('random'),
];
