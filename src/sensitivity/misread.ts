import type { Ball } from '../ball/index.js';
import type { Clubhead } from '../clubhead/index.js';
import type { ReadingErrors, StrikeMeasurement } from '../inputs/readings.js';
import { locate } from '../strike/locate.js';
import { type Angle, type Length, si } from '../units/index.js';

/** A reading that can make a smash factor impossible. */
export type SmashReading =
  | 'clubSpeed'
  | 'ballSpeed'
  | 'spinLoft'
  | 'attackAngle'
  | 'dynamicLoft'
  | 'launchAngle'
  | 'spinRate';

/** Readings that cannot all be right. */
export interface SmashMisread {
  /** The reading most likely wrong. */
  readonly reading: SmashReading;
  /** Whether it reads too high or too low. */
  readonly reads: 'too-high' | 'too-low';
  /** Others that would explain it as well. */
  readonly orElse: readonly SmashReading[];
  /** Smash factors that this head, or the hottest head the rules allow, can give at this spin loft. */
  readonly possible: { readonly min: number; readonly max: number };
  /** Why, in a sentence. */
  readonly message: string;
}

const NAMES: Readonly<Record<SmashReading, string>> = {
  clubSpeed: 'club speed',
  ballSpeed: 'ball speed',
  spinLoft: 'spin loft',
  attackAngle: 'attack angle',
  dynamicLoft: 'dynamic loft',
  launchAngle: 'launch angle',
  spinRate: 'spin',
};
/** Readings that are too low, not too high, when the smash factor is too high for them. */
const OPPOSITE: readonly SmashReading[] = ['clubSpeed', 'attackAngle', 'spinRate'];

/** What is known when a smash factor is judged. @internal */
export interface SmashCase {
  readonly shot: StrikeMeasurement & { readonly spinLoft?: Angle; readonly carry?: Length };
  readonly head: Clubhead;
  readonly ball: Ball;
  readonly errors: ReadingErrors;
  readonly smash: number;
  readonly achievable: number;
  readonly possible: SmashMisread['possible'];
  /** Relative standard deviation of smash against possible. */
  readonly error: number;
  /** Carry that the readings as they are give [m]. */
  readonly carryModel: number;
}

/**
 * Names the reading most likely wrong where the smash factor lies more than two standard deviations outside of what is
 * possible. A measured carry speaks first; then the other readings of the shot, by `locateStrike`, which leaves out one
 * at a time; where they cannot tell, club speed, the less certain of the two speeds.
 * @internal
 */
export function misreadOf(known: SmashCase): SmashMisread | undefined {
  const { shot, smash, achievable, possible, error, carryModel } = known;
  const high = smash > possible.max * (1 + 2 * error);
  const low = smash < possible.min * (1 - 2 * error);
  if (!high && !low) return undefined;
  // A measured carry that fits the ball speed clears it; carry goes about as the 1.3rd power of ball speed.
  const carryRatio = shot.carry === undefined ? undefined : shot.carry / carryModel;
  const ballCleared = carryRatio !== undefined && Math.abs(carryRatio - 1) < 0.06;
  const ballAccused = carryRatio !== undefined && (high ? carryRatio < 0.94 : carryRatio > 1.06);
  const suspects = suspectsOf(known).filter((reading) => reading !== 'ballSpeed' || !ballCleared);
  const [first = 'clubSpeed'] = suspects;
  const reading = ballAccused ? 'ballSpeed' : suspects.includes('clubSpeed') ? 'clubSpeed' : first;
  const orElse = ballAccused ? [] : suspects.filter((each) => each !== reading);
  const reads = OPPOSITE.includes(reading) === high ? 'too-low' : 'too-high';
  const why = ballAccused
    ? 'the measured carry does not fit the ball speed'
    : reading !== 'clubSpeed'
      ? `the other readings agree once the ${NAMES[reading]} is left out`
      : ballCleared
        ? 'the measured carry fits the ball speed'
        : 'club speed is the less certain of the two speeds';
  const others =
    orElse.length === 0 ? '' : ` It could be the ${orElse.map((each) => NAMES[each]).join(' or ')} instead.`;
  const ratio = high ? smash / achievable : achievable / smash;
  const units = Math.abs(ratio / 1.609 - 1) < 0.12 ? ' The two look like different units, km/h and mph.' : '';
  const range = `${possible.min.toFixed(2)} to ${possible.max.toFixed(2)}`;
  return {
    reading,
    reads,
    orElse,
    possible,
    message: `A smash factor of ${smash.toFixed(2)} cannot be at this spin loft (${range}): ${why}, so the ${NAMES[reading]} probably reads ${reads === 'too-low' ? 'too low' : 'too high'}.${others}${units}`,
  };
}

/** The readings without which the rest of the shot agrees; none when they agree as they are. */
function suspectsOf({ shot, head, ball, errors }: SmashCase): readonly SmashReading[] {
  const { clubSpeed, ballSpeed, spinLoft, attackAngle, dynamicLoft, launchAngle, spinRate } = shot;
  const measured: StrikeMeasurement = {
    ...(clubSpeed !== undefined && { clubSpeed }),
    ...(ballSpeed !== undefined && { ballSpeed }),
    ...(attackAngle !== undefined && { attackAngle }),
    ...(dynamicLoft !== undefined && { dynamicLoft }),
    ...(launchAngle !== undefined && { launchAngle }),
    ...(spinRate !== undefined && { spinRate }),
    // A spin loft given as such: a level attack with that loft has it.
    ...(spinLoft !== undefined && { attackAngle: si<Angle>(0), dynamicLoft: spinLoft }),
  };
  const settings = { clubhead: head, ball, hand: 'right' as const, readingErrors: errors, priors: {} };
  const estimate = locate(measured, settings);
  if (estimate.outcome === 'located') return [];
  const named = estimate.suspects.map((reading) =>
    spinLoft !== undefined && (reading === 'dynamicLoft' || reading === 'attackAngle') ? 'spinLoft' : reading,
  );
  return [...new Set(named)].filter((reading): reading is SmashReading => reading in NAMES);
}
