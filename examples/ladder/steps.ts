import { mean, quantile } from 'd3-array';
import {
  attributeChange,
  type DistanceChange,
  fewValuesStretch,
  type MeasuredShot,
} from 'fairflight/session';
import { type Length, type Speed, si } from 'fairflight/units';
import { randomStream } from '../lib/random.js';
import type { FlownShot, LadderSetup, Rung } from './rungs.js';

/** A value with its 95 % interval, which a band of one shot does not give. */
export interface Ranged {
  readonly value: number;
  readonly interval?: { readonly low: number; readonly high: number };
}

/** One cause of a step. */
export interface StepPart {
  readonly cause: string;
  /** Carry it brought [m]. */
  readonly carry: Ranged;
}

/** From one band to the next. */
export interface Step {
  readonly from: string;
  readonly to: string;
  readonly speedGain: Speed;
  readonly carryGain: Length;
  /** Metres of carry per metre per second of club speed. */
  readonly carryPerSpeed: Ranged;
  /** What ball speed brought of the carry: club speed and strike together. */
  readonly fromBallSpeed: Ranged;
  /** Parts of the carry gained; they add up to it. */
  readonly parts: readonly StepPart[];
}

const RESAMPLES = 1000;

/**
 * What each step of speed brought: the change of carry split over its causes by the library, ball speed then divided
 * into club speed and strike. Since ball speed is club speed times smash factor, each gets the share of its logarithm.
 */
export function stepsOf(rungs: readonly Rung[], { scene, keepOutliers }: LadderSetup): readonly Step[] {
  const known = rungs.filter(({ clubSpeed }) => clubSpeed !== undefined);
  return known.slice(1).map((to, i): Step => {
    const from = known[i] as Rung;
    const [before, after] = [from, to].map((rung) => shotsOf(rung, keepOutliers)) as [Complete[], Complete[]];
    const { carry } = attributeChange({ before, after }, scene, { resamples: RESAMPLES });
    const { ballSpeed, launch, spinRate, spinAxis } = carry.causes;
    const scattered = before.length > 1 && after.length > 1;
    const drawn = scattered ? resampledGains(before, after, i + 1) : [];
    const gain = gainOf(meanOf(before), meanOf(after));
    const ranged = (of: (gain: Gain) => number): Ranged => ({
      value: of(gain),
      ...(scattered && { interval: percentiles(drawn.map(of)) }),
    });
    const part = ({ value, low, high }: DistanceChange): Ranged => ({
      value,
      ...(scattered && { interval: { low, high } }),
    });
    return {
      from: from.name,
      to: to.name,
      speedGain: si(gain.speed),
      carryGain: si(gain.carry),
      carryPerSpeed: ranged(({ carry: distance, speed }) => distance / speed),
      fromBallSpeed: part(ballSpeed),
      parts: [
        { cause: 'club speed', carry: ranged(({ clubShare }) => clubShare * ballSpeed.value) },
        { cause: 'strike', carry: ranged(({ clubShare }) => (1 - clubShare) * ballSpeed.value) },
        { cause: 'launch', carry: part(launch) },
        { cause: 'spin', carry: part(spinRate) },
        { cause: 'spin axis', carry: part(spinAxis) },
        {
          cause: 'not explained',
          carry: carry.unexplained === undefined ? { value: 0 } : part(carry.unexplained),
        },
      ],
    };
  });
}

/** A shot with all that a step looks at. */
type Complete = MeasuredShot & Required<Pick<MeasuredShot, 'clubSpeed' | 'ballSpeed' | 'carry'>>;

/** The shots of a band; what was not measured is the model's. */
function shotsOf(rung: Rung, keepOutliers: boolean): Complete[] {
  return rung.shots.flatMap(({ measured, launch, model, outlier }: FlownShot): Complete[] => {
    const { clubSpeed } = measured;
    if (clubSpeed === undefined || (outlier && !keepOutliers)) return [];
    // No device reads rifle spin, so a measured shot has none.
    const { rifleSpin: _, ...readings } = launch;
    return [{ ...measured, ...readings, clubSpeed, carry: measured.carry ?? model.carry }];
  });
}

interface Means {
  readonly club: number;
  readonly ball: number;
  readonly carry: number;
}

interface Gain {
  readonly speed: number;
  readonly carry: number;
  /** Share of the club in the change of ball speed. */
  readonly clubShare: number;
}

function meanOf(shots: readonly Complete[]): Means {
  const of = (name: 'clubSpeed' | 'ballSpeed' | 'carry'): number =>
    mean(shots, (shot) => shot[name]) ?? Number.NaN;
  return { club: of('clubSpeed'), ball: of('ballSpeed'), carry: of('carry') };
}

function gainOf(before: Means, after: Means): Gain {
  return {
    speed: after.club - before.club,
    carry: after.carry - before.carry,
    clubShare: Math.log(after.club / before.club) / Math.log(after.ball / before.ball),
  };
}

/**
 * Gains of bands drawn anew from their shots (bootstrap; Efron 1979). About the means as they are they are stretched,
 * since means of few shots scatter further than resampling says.
 */
function resampledGains(
  before: readonly Complete[],
  after: readonly Complete[],
  seed: number,
): readonly Gain[] {
  const random = randomStream(seed);
  const drawn = (shots: readonly Complete[]): Means => {
    const stretch = fewValuesStretch(shots.length, 0.95);
    const means = meanOf(shots);
    const anew = meanOf(shots.map(() => shots[Math.floor(random() * shots.length)] as Complete));
    const stretched = (key: keyof Means): number => means[key] + stretch * (anew[key] - means[key]);
    return { club: stretched('club'), ball: stretched('ball'), carry: stretched('carry') };
  };
  return Array.from({ length: RESAMPLES }, () => gainOf(drawn(before), drawn(after)));
}

function percentiles(values: readonly number[]): { readonly low: number; readonly high: number } {
  return { low: quantile(values, 0.025) ?? Number.NaN, high: quantile(values, 0.975) ?? Number.NaN };
}
