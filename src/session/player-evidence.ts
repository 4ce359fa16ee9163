import type { MeasuredShot } from '../inputs/measured-shot.js';
import { mean, type Stream, studentTQuantile, variance } from '../numerics/index.js';
import { RADIANS_PER_DEGREE } from '../units/index.js';
import type { EvidenceName } from './change-ranking.js';

/** What the shots say of the mean of one quantity. @internal */
export interface MeanEvidence {
  readonly count: number;
  readonly mean: number;
  /** Standard error of the mean, with the degrees of freedom it is known with. */
  readonly error: number;
  readonly dof: number;
}

/** What the shots say of a player; absent where nothing was read. Smash factor where both speeds were. @internal */
export type PlayerEvidence = { readonly [Name in EvidenceName | 'smash']?: MeanEvidence };

/**
 * Usual scatter from shot to shot: speeds, smash factor and spin as a share, angles in radians. Assumptions; they count as
 * much as four shots, so that one shot or two like twins are not taken for a player without scatter.
 */
const USUAL: Readonly<Record<EvidenceName | 'smash', number>> = {
  clubSpeed: 0.02,
  ballSpeed: 0.03,
  smash: 0.025,
  spinRate: 0.15,
  attackAngle: 1.5 * RADIANS_PER_DEGREE,
  dynamicLoft: 1.5 * RADIANS_PER_DEGREE,
  launchAngle: 2 * RADIANS_PER_DEGREE,
};
const USUAL_DOF = 3;
const SHARES: readonly string[] = ['clubSpeed', 'ballSpeed', 'smash', 'spinRate'];

/** Gathers what shots already read say of the player. @internal */
export function evidenceOf(shots: readonly MeasuredShot[]): PlayerEvidence {
  const of = (
    name: EvidenceName | 'smash',
    read: (shot: MeasuredShot) => number | undefined,
  ): PlayerEvidence => {
    const values = shots.flatMap((shot) => read(shot) ?? []);
    return values.length === 0 ? {} : { [name]: meanEvidence(name, values) };
  };
  return {
    ...of('clubSpeed', (shot) => shot.clubSpeed),
    ...of('ballSpeed', (shot) => shot.ballSpeed),
    ...of('smash', ({ ballSpeed, clubSpeed }) =>
      ballSpeed === undefined || clubSpeed === undefined ? undefined : ballSpeed / clubSpeed,
    ),
    ...of('attackAngle', (shot) => shot.attackAngle),
    ...of('dynamicLoft', (shot) => shot.dynamicLoft),
    ...of('launchAngle', (shot) => shot.launchAngle),
    ...of('spinRate', (shot) => shot.spinRate),
  };
}

function meanEvidence(name: EvidenceName | 'smash', values: readonly number[]): MeanEvidence {
  const n = values.length;
  const centre = mean(values);
  const usual = USUAL[name] * (SHARES.includes(name) ? centre : 1);
  const dof = USUAL_DOF + n - 1;
  const squares = USUAL_DOF * usual ** 2 + (n > 1 ? (n - 1) * variance(values) : 0);
  return { count: n, mean: centre, error: Math.sqrt(squares / dof / n), dof };
}

/** A mean that these readings could have come from. @internal */
export function drawMean({ mean: centre, error, dof }: MeanEvidence, { uniform }: Stream): number {
  return centre + error * studentTQuantile(uniform(), dof);
}
