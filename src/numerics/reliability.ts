import { normalQuantile } from './distributions.js';
import { requireSample, variance } from './moments.js';

/**
 * Typical error of a measurement repeated within groups: the pooled standard deviation within groups of two and more.
 * Source: Hopkins W G (2000) Measures of reliability in sports medicine and science, Sports Med. 30, 1–15.
 */
export function typicalErrorWithin(groups: readonly (readonly number[])[]): number {
  const usable = groups.filter((group) => group.length >= 2);
  const dof = usable.reduce((sum, group) => sum + group.length - 1, 0);
  requireSample(
    'groups',
    usable.map((group) => group.length),
    1,
  );
  return Math.sqrt(usable.reduce((sum, group) => sum + (group.length - 1) * variance(group), 0) / dof);
}

/**
 * Smallest change between the means of `shots` measurements before and as many after that is more than measurement
 * noise: z √2 TE/√shots, 2.77 TE for single measurements at 95 %.
 * Source: Weir J P (2005) Quantifying test–retest reliability, J. Strength Cond. Res. 19, 231–240; Hopkins (2000).
 */
export function minimalDetectableChange(typicalError: number, shots = 1, level = 0.95): number {
  return (normalQuantile(0.5 + level / 2) * Math.SQRT2 * typicalError) / Math.sqrt(shots);
}
