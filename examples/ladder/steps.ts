import { fly, type Launch, type Scene } from 'fairflight';
import { type Length, type Speed, si } from 'fairflight/units';
import { randomStream } from '../lib/random.js';
import type { FlownShot, LadderSetup, Rung } from './rungs.js';

/** A value with its 95 % interval. */
export interface Ranged {
  readonly value: number;
  readonly low: number;
  readonly high: number;
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
  /** Parts of the carry gained; they add up to it. */
  readonly parts: readonly StepPart[];
}

/** What carries the ball, as far as carry depends on it. */
interface Carrier {
  readonly speed: number;
  readonly smash: number;
  readonly launchAngle: number;
  readonly backspin: number;
  readonly sidespin: number;
  readonly carry: number;
}

/** Causes in the order shown; each takes its fields from the faster band. */
const CAUSES: readonly { readonly cause: string; readonly fields: readonly (keyof Carrier)[] }[] = [
  { cause: 'club speed', fields: ['speed'] },
  { cause: 'strike', fields: ['smash'] },
  { cause: 'launch', fields: ['launchAngle'] },
  { cause: 'spin', fields: ['backspin', 'sidespin'] },
];
const REST = 'not explained';

const RESAMPLES = 400;

/**
 * What each step of speed brought. The carry gained is split by Shapley values on the model (Shapley 1953): each cause
 * gets its average effect over all orders in which the causes can be changed, so that the parts add up exactly; what
 * the model does not explain is left as such. Ball speed counts twice: as club speed, and as strike through the smash
 * factor. Intervals are percentiles of the bootstrap (Efron 1979), shots drawn within each band.
 */
export function stepsOf(rungs: readonly Rung[], { scene, keepOutliers }: LadderSetup): readonly Step[] {
  const known = rungs.filter(({ clubSpeed }) => clubSpeed !== undefined);
  return known.slice(1).map((to, i): Step => {
    const from = known[i] as Rung;
    const [before, after] = [from, to].map((rung) => carriersOf(rung, keepOutliers)) as [
      Carrier[],
      Carrier[],
    ];
    const value = split(meanOf(before), meanOf(after), scene);
    const random = randomStream(i + 1);
    const drawn = Array.from({ length: RESAMPLES }, () =>
      split(meanOf(resampled(before, random)), meanOf(resampled(after, random)), scene),
    );
    const ranged = (of: (each: Split) => number): Ranged => ({
      value: of(value),
      ...percentiles(drawn.map(of)),
    });
    return {
      from: from.name,
      to: to.name,
      speedGain: si(value.speedGain),
      carryGain: si(value.carryGain),
      carryPerSpeed: ranged((each) => each.carryGain / each.speedGain),
      parts: [...CAUSES.map(({ cause }) => cause), REST].map((cause, at) => ({
        cause,
        carry: ranged((each) => each.parts[at] ?? 0),
      })),
    };
  });
}

function carriersOf(rung: Rung, keepOutliers: boolean): Carrier[] {
  return rung.shots.flatMap(({ measured, launch, model, outlier }: FlownShot): Carrier[] => {
    const speed = measured.clubSpeed;
    if (speed === undefined || (outlier && !keepOutliers)) return [];
    const { spinRate, spinAxisTilt = 0 } = launch;
    return [
      {
        speed,
        smash: launch.ballSpeed / speed,
        launchAngle: launch.launchAngle,
        backspin: spinRate * Math.cos(spinAxisTilt),
        sidespin: spinRate * Math.sin(spinAxisTilt),
        carry: measured.carry ?? model.carry,
      },
    ];
  });
}

interface Split {
  readonly speedGain: number;
  readonly carryGain: number;
  readonly parts: readonly number[];
}

function split(before: Carrier, after: Carrier, scene: Scene): Split {
  // Carry by the model for every subset of causes taken from the faster band; bit c stands for cause c.
  const carries = Array.from({ length: 2 ** CAUSES.length }, (_, subset) => {
    const mixed = { ...before };
    CAUSES.forEach(({ fields }, c) => {
      if ((subset >> c) & 1) for (const field of fields) mixed[field] = after[field];
    });
    return fly(launchFrom(mixed), scene, TOLERANCE).carry as number;
  });
  const explained = CAUSES.map((_, c) => shapley(carries, c));
  const carryGain = after.carry - before.carry;
  const rest = carryGain - explained.reduce((sum, part) => sum + part, 0);
  return { speedGain: after.speed - before.speed, carryGain, parts: [...explained, rest] };
}

/** A millimetre is plenty here. */
const TOLERANCE = { tolerance: si<Length>(1e-3) };

function shapley(carries: readonly number[], cause: number): number {
  const count = CAUSES.length;
  let value = 0;
  carries.forEach((carry, subset) => {
    if ((subset >> cause) & 1) return;
    const size = [...Array(count).keys()].filter((c) => (subset >> c) & 1).length;
    const weight = (factorial(size) * factorial(count - size - 1)) / factorial(count);
    value += weight * ((carries[subset | (1 << cause)] ?? carry) - carry);
  });
  return value;
}

function factorial(n: number): number {
  return n <= 1 ? 1 : n * factorial(n - 1);
}

function launchFrom({ speed, smash, launchAngle, backspin, sidespin }: Carrier): Launch {
  return {
    ballSpeed: si(speed * smash),
    launchAngle: si(launchAngle),
    spinRate: si(Math.hypot(backspin, sidespin)),
    spinAxisTilt: si(Math.atan2(sidespin, backspin)),
  };
}

function meanOf(shots: readonly Carrier[]): Carrier {
  const mean = (field: keyof Carrier): number =>
    shots.reduce((sum, shot) => sum + shot[field], 0) / shots.length;
  const speed = mean('speed');
  return {
    speed,
    // Mean ball speed over mean club speed, so that the two multiply back to the mean ball speed.
    smash: shots.reduce((sum, shot) => sum + shot.speed * shot.smash, 0) / shots.length / speed,
    launchAngle: mean('launchAngle'),
    backspin: mean('backspin'),
    sidespin: mean('sidespin'),
    carry: mean('carry'),
  };
}

function resampled(shots: readonly Carrier[], random: () => number): Carrier[] {
  return shots.map(() => shots[Math.floor(random() * shots.length)] as Carrier);
}

function percentiles(values: readonly number[]): { readonly low: number; readonly high: number } {
  const sorted = [...values].sort((a, b) => a - b);
  const at = (share: number): number => sorted[Math.round(share * (sorted.length - 1))] ?? 0;
  return { low: at(0.025), high: at(0.975) };
}
