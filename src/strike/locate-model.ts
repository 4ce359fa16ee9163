import type { Ball } from '../ball/index.js';
import { gripLevel } from '../clubhead/grip-level.js';
import type { Clubhead } from '../clubhead/index.js';
import { frozen } from '../inputs/frozen.js';
import type { NormalPrior } from '../inputs/prior.js';
import {
  BALL_READINGS,
  type BallReading,
  CLUB_READINGS,
  type ReadingErrors,
  type StrikeMeasurement,
} from '../inputs/readings.js';
import { type StrikeResult, squareStrike } from './impact.js';
import { type StrikePriors, strikePriorFields } from './strike-priors.js';
import { createStriker } from './striker.js';

/** What a strike is unknown in. @internal */
export type Unknown = keyof Required<StrikePriors>;

/** What a strike is unknown in, in the order of the parameters of the fit. @internal */
export const UNKNOWNS: readonly Unknown[] = /* @__PURE__ */ frozen(
  () => Object.keys(strikePriorFields) as Unknown[],
);

const DEGREE = Math.PI / 180;
/** Spin readings are not better than this, however slow the spin [rad/s]: 30 rpm. */
const LEAST_SPIN_ERROR = 30 * (Math.PI / 30);

/**
 * Priors used for what was not measured. All are assumptions: strike offsets 15 mm and 10 mm about the centre, path
 * and face 4° about the target line, attack and loft typical of the class, grip 0.1 (12 to 15 % of driver spin).
 * @internal
 */
export function defaultPriors(
  head: Clubhead,
  ball: Ball,
  measured: StrikeMeasurement,
): Record<Unknown, NormalPrior> {
  const wood = head.clubClass === 'driver' || head.clubClass === 'fairway-wood';
  const attack = wood ? 0 : -3.5;
  const loft = head.staticLoft + (wood ? 2 : -6) * DEGREE;
  const priors: Record<Unknown, NormalPrior> = {
    toe: { mean: 0, standardDeviation: 0.015 },
    high: { mean: 0, standardDeviation: 0.01 },
    clubSpeed: { mean: 45, standardDeviation: 8 },
    attackAngle: { mean: attack * DEGREE, standardDeviation: 3.5 * DEGREE },
    clubPath: { mean: 0, standardDeviation: 4 * DEGREE },
    faceAngle: { mean: 0, standardDeviation: 4 * DEGREE },
    dynamicLoft: { mean: loft, standardDeviation: 4 * DEGREE },
    grip: { mean: gripLevel(head.tangentialRestitution), standardDeviation: 0.1 },
  };
  if (measured.ballSpeed === undefined) return priors;
  // Without a reading the ball speed is the only hint: a smash factor within 10 % of a centred strike's.
  const e = head.restitution.atReference;
  const spinLoft = loft - attack * DEGREE;
  const smash = ((1 + e) * Math.cos(spinLoft)) / (1 + ball.mass / (head.mass + head.shaftMass));
  const mean = measured.ballSpeed / smash;
  return { ...priors, clubSpeed: { mean, standardDeviation: 0.1 * mean } };
}

/** The least-squares problem of one measured strike in units of standard deviations. @internal */
export interface LocateProblem {
  /** Prior of each unknown, the reading where there is one. */
  readonly priors: readonly NormalPrior[];
  /** Readings of the ball that were given. */
  readonly readings: readonly {
    readonly reading: BallReading;
    readonly value: number;
    readonly sd: number;
  }[];
  /** Standard deviations from its prior at which unknown i has an SI value. */
  readonly standardised: (i: number, value: number) => number;
  /** SI values of the unknowns at q standard deviations from their priors. */
  readonly valuesAt: (q: readonly number[]) => number[];
  /** Launch at q; undefined where no strike can be computed. Overwritten by the next. */
  readonly launchAt: (q: readonly number[]) => StrikeResult['launch'] | undefined;
  /** Residuals: one a ball reading, then one an unknown. */
  readonly residualsAt: (q: readonly number[]) => number[];
  /** Derivatives of the residuals. */
  readonly jacobianAt: (q: readonly number[]) => number[][];
}

/** Standard deviation of a reading in its own unit. @internal */
export function readingError(reading: keyof ReadingErrors, value: number, errors: ReadingErrors): number {
  if (reading === 'spinRate') return Math.max(errors.spinRate * value, LEAST_SPIN_ERROR);
  if (reading === 'clubSpeed' || reading === 'ballSpeed') return errors[reading] * value;
  return errors[reading];
}

/** Sets up the fit; inputs are taken as checked. @internal */
export function locateProblem(
  measured: StrikeMeasurement,
  head: Clubhead,
  ball: Ball,
  mirror: 1 | -1,
  errors: ReadingErrors,
  given: Readonly<Partial<Record<Unknown, NormalPrior>>>,
): LocateProblem {
  const byName: Record<Unknown, NormalPrior> = { ...defaultPriors(head, ball, measured), ...given };
  for (const reading of CLUB_READINGS) {
    const mean = measured[reading];
    if (mean !== undefined) {
      byName[reading] = { mean, standardDeviation: readingError(reading, mean, errors) };
    }
  }
  const priors = UNKNOWNS.map((name) => byName[name]);
  const readings = BALL_READINGS.flatMap((reading) => {
    const value = measured[reading];
    return value === undefined ? [] : [{ reading, value, sd: readingError(reading, value, errors) }];
  });
  const striker = createStriker({ clubhead: head, ball });
  const input = { ...squareStrike(0, 0, 0), mirror };
  const at = (q: readonly number[], i: number): number => {
    const prior = priors[i] as NormalPrior;
    return prior.mean + prior.standardDeviation * (q[i] as number);
  };
  const launchAt = (q: readonly number[]): StrikeResult['launch'] | undefined => {
    input.toe = at(q, 0);
    input.high = at(q, 1);
    input.clubSpeed = at(q, 2);
    input.attackAngle = at(q, 3);
    input.clubPath = at(q, 4);
    input.faceAngle = at(q, 5);
    input.dynamicLoft = at(q, 6);
    striker.laws.grip = at(q, 7);
    const struck = striker.strike(input);
    return typeof struck === 'string' ? undefined : struck.launch;
  };
  const misfit = (launch: StrikeResult['launch'] | undefined, k: number): number => {
    const { reading, value, sd } = readings[k] as LocateProblem['readings'][number];
    if (launch === undefined) return Number.NaN;
    const difference = value - launch[reading];
    // A tilt of +179° lies 2° from one of −179°.
    const wrapped =
      reading === 'spinAxisTilt' ? Math.atan2(Math.sin(difference), Math.cos(difference)) : difference;
    return wrapped / sd;
  };
  const residualsAt = (q: readonly number[]): number[] => {
    const launch = launchAt(q);
    return [...readings.map((_, k) => misfit(launch, k)), ...q];
  };
  const jacobianAt = (q: readonly number[]): number[][] => {
    const rows = readings.map(() => q.map(() => 0));
    const shifted = [...q];
    const h = 1e-4;
    q.forEach((qj, j) => {
      shifted[j] = qj + h;
      const above = launchAt(shifted);
      const high = readings.map((_, k) => misfit(above, k));
      shifted[j] = qj - h;
      const below = launchAt(shifted);
      rows.forEach((row, k) => {
        row[j] = ((high[k] as number) - misfit(below, k)) / (2 * h);
      });
      shifted[j] = qj;
    });
    return [...rows, ...q.map((_, i) => q.map((__, j) => (i === j ? 1 : 0)))];
  };
  const standardised = (i: number, value: number): number => {
    const prior = priors[i] as NormalPrior;
    return (value - prior.mean) / prior.standardDeviation;
  };
  return {
    priors,
    readings,
    standardised,
    valuesAt: (q) => q.map((_, i) => at(q, i)),
    launchAt,
    residualsAt,
    jacobianAt,
  };
}
