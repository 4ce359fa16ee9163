import type { StrikeOffset } from '../inputs/delivery.js';
import type { BallReading, StrikeMeasurement } from '../inputs/readings.js';
import { chiSquareQuantileOfTwo } from '../numerics/index.js';
import type { EstimateBasis, Identifiability, StrikeSolution } from './estimate.js';
import type { LocateProblem } from './locate-model.js';
import type { Placed } from './locate-region.js';

const NAMES = { toe: 'toe-heel position', high: 'height on the face' } as const;
const READING_NAMES: Readonly<Record<BallReading, string>> = {
  ballSpeed: 'ball speed',
  launchAngle: 'launch angle',
  launchDirection: 'launch direction',
  spinRate: 'spin rate',
  spinAxisTilt: 'spin-axis tilt',
};

/** How firmly toe and high are determined, and by which readings; `faceToPath`: face and path were measured. @internal */
export function identifiability(
  problem: LocateProblem,
  { jacobian, covariance, offsets }: Placed,
  faceToPath: boolean,
): { readonly toe: Identifiability; readonly high: Identifiability } {
  const judge = (index: 0 | 1): Identifiability => {
    const prior = problem.priors[index]?.standardDeviation ?? 0;
    const variance = covariance[index]?.[index] ?? 1;
    const name = index === 0 ? NAMES.toe : NAMES.high;
    // Variance without one reading: the rank-one downdate of the inverse normal matrix (Sherman and Morrison 1950).
    const without = problem.readings.map((_, k) => {
      const row = jacobian[k] ?? [];
      const cj = covariance.map((line) => line.reduce((sum, c, i) => sum + c * (row[i] ?? 0), 0));
      const leverage = cj.reduce((sum, c, i) => sum + c * (row[i] ?? 0), 0);
      return variance + (cj[index] ?? 0) ** 2 / Math.max(1e-12, 1 - leverage);
    });
    const growth = without.map((value) => Math.sqrt(value / variance));
    const restsOn = problem.readings.filter((_, k) => (growth[k] ?? 0) > 1.25).map(({ reading }) => reading);
    const share = Math.sqrt(offsets[index]?.[index] ?? 1);
    const sd = share * prior;
    const weak = share > 0.75;
    const mm = (value: number): string => `${(value * 1000).toFixed(0)} mm`;
    const messages: string[] = [];
    if (weak) {
      messages.push(
        `The readings hardly determine the ${name}: it stays uncertain by ${mm(sd)} where nothing measured leaves ${mm(prior)}.`,
      );
    } else if (restsOn.length === 1) {
      messages.push(
        `The ${name} hangs on the ${READING_NAMES[restsOn[0] as BallReading]} alone: without it the uncertainty grows from ` +
          `${mm(sd)} to ${mm(Math.max(...growth) * sd)}.`,
      );
    }
    if (index === 0 && !faceToPath) {
      messages.push(
        'Face angle and club path were not both measured, so an open or closed face and an off-centre strike can pass for each other.',
      );
    }
    return { standardDeviation: sd, prior, weak, restsOn, message: messages.join(' ') };
  };
  return { toe: judge(0), high: judge(1) };
}

/** Says whether the curve is more, or the other way, than face-to-path explains. @internal */
export function curveFinding(
  problem: LocateProblem,
  measured: StrikeMeasurement,
  mirror: number,
): string | undefined {
  const { spinAxisTilt: tilt, faceAngle, clubPath } = measured;
  if (tilt === undefined || faceAngle === undefined || clubPath === undefined) return undefined;
  const k = problem.readings.findIndex(({ reading }) => reading === 'spinAxisTilt');
  // The strike at the face centre with everything as read, and the error its tilt has from the readings.
  const centre = problem.priors.map((_, i) => (i < 2 ? problem.standardised(i, 0) : 0));
  const launch = problem.launchAt(centre);
  if (launch === undefined) return undefined;
  const expected = launch.spinAxisTilt;
  const sd = problem.readings[k]?.sd ?? 0;
  const row = problem.jacobianAt(centre)[k] ?? [];
  const spread = row.slice(2).reduce((sum, d) => sum + d * d, 1);
  const sigma = sd * Math.sqrt(spread);
  const excess = tilt - expected;
  if (Math.abs(excess) < 2 * sigma) return undefined;
  const degrees = (angle: number): string =>
    `${Math.abs((angle * 180) / Math.PI).toFixed(0)}° ${angle >= 0 ? 'right' : 'left'}`;
  const toe = mirror * excess < 0;
  const how = tilt * expected < 0 ? 'curves the other way than' : 'curves differently from what';
  return (
    `The ball ${how} face-to-path explains: spin axis ${degrees(tilt)}, a centred strike would give ` +
    `${degrees(expected)} ± ${((sigma * 180) / Math.PI).toFixed(0)}°. That is the mark of a strike toward the ${toe ? 'toe' : 'heel'}.`
  );
}

/** Says that the readings fit worse than their errors allow. @internal */
export function misfitFinding({
  chiSquare,
  degreesOfFreedom,
  probability,
}: Pick<EstimateBasis, 'chiSquare' | 'degreesOfFreedom' | 'probability'>): string {
  return (
    `The readings fit worse than their errors allow (chi-square ${chiSquare.toFixed(1)} where ${degreesOfFreedom} is usual, ` +
    `chance ${(100 * probability).toFixed(1)} %): the errors are larger than stated, or the head is another. The regions are wider for it.`
  );
}

/** One sentence about where the strike was. @internal */
export function describeOffset({ strikeOffset, covariance }: StrikeSolution): string {
  const { toe, high } = strikeOffset;
  const [[a, b], [, d]] = covariance;
  const det = a * d - b * b;
  const mahalanobis = det > 0 ? (d * toe * toe - 2 * b * toe * high + a * high * high) / det : 0;
  const part = (value: number, variance: number, plus: string, minus: string): string =>
    `${Math.abs(value * 1000).toFixed(0)} ± ${(Math.sqrt(variance) * 1000).toFixed(0)} mm ${value >= 0 ? plus : minus}`;
  const where = `${part(toe, a, 'toward the toe', 'toward the heel')}, ${part(high, d, 'high', 'low')}`;
  return mahalanobis > chiSquareQuantileOfTwo(0.95)
    ? `Struck off centre: ${where} (one standard deviation).`
    : `The face centre lies inside the 95 % region; best estimate ${where} (one standard deviation).`;
}

/** The places that the readings leave, in one sentence. @internal */
export function describePlaces(solutions: readonly StrikeSolution[]): string {
  const places = solutions.map((s) => `${place(s.strikeOffset)} (${Math.round(100 * s.weight)} %)`);
  return `The readings leave ${places.length} places: ${places.join(', ')}.`;
}

function place({ toe, high }: StrikeOffset): string {
  const part = (value: number, plus: string, minus: string): string =>
    `${Math.abs(value * 1000).toFixed(0)} mm ${value >= 0 ? plus : minus}`;
  return `${part(toe, 'toward the toe', 'toward the heel')} and ${part(high, 'high', 'low')}`;
}
