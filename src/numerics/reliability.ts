import { studentTQuantile } from './distributions.js';
import { requireSample, variance } from './moments.js';

/** A standard deviation pooled over groups. */
export interface TypicalError {
  /** Pooled standard deviation within the groups. */
  readonly value: number;
  /** Degrees of freedom it is known with. */
  readonly dof: number;
}

/**
 * Typical error of a measurement repeated within groups: the pooled standard deviation within groups of two and more.
 * Source: Hopkins W G (2000) Measures of reliability in sports medicine and science, Sports Med. 30, 1–15.
 */
export function typicalErrorWithin(groups: readonly (readonly number[])[]): TypicalError {
  const usable = groups.filter((group) => group.length >= 2);
  const dof = usable.reduce((sum, group) => sum + group.length - 1, 0);
  requireSample(
    'groups',
    usable.map((group) => group.length),
    1,
  );
  const square = usable.reduce((sum, group) => sum + (group.length - 1) * variance(group), 0) / dof;
  return { value: Math.sqrt(square), dof };
}

/**
 * Smallest change between the means of `shots` measurements before and as many after that is more than measurement
 * noise: t √2 TE/√shots, 2.77 TE for single measurements at 95 % where the typical error is known well.
 * Source: Weir J P (2005) Quantifying test–retest reliability, J. Strength Cond. Res. 19, 231–240; Hopkins (2000);
 * Student's t for their 1.96, because few measurements estimate the error.
 */
export function minimalDetectableChange({ value, dof }: TypicalError, shots = 1, level = 0.95): number {
  return (studentTQuantile(0.5 + level / 2, dof) * Math.SQRT2 * value) / Math.sqrt(shots);
}
