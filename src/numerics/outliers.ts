import { mean, requireSample } from './moments.js';
import { median } from './order-statistics.js';

/** Modified z-scores beyond this are taken for outliers (Iglewicz and Hoaglin 1993). */
export const MODIFIED_Z_LIMIT = 3.5;

/**
 * Modified z-scores 0.6745 (x − median)/MAD of values in groups: each value against the median of its own group, all
 * against one MAD of the deviations together, since the MAD of five values is a poor guess. Where more than half of the
 * deviations are within rounding of 0, (x − median)/(1.253314 × mean absolute deviation); 0 for all when none differs.
 *
 * Source: Iglewicz B, Hoaglin D C (1993) How to Detect and Handle Outliers, ASQC Basic References in Quality
 * Control 16.
 */
export function modifiedZScores(groups: readonly (readonly number[])[]): number[][] {
  const deviations = groups.map((group) => {
    requireSample('values', group, 1);
    const centre = median(group);
    return group.map((value) => value - centre);
  });
  const sizes = deviations.flat().map(Math.abs);
  const mad = median(sizes);
  // A MAD within the rounding of the values says that more than half of them agree.
  const rounding = Number.EPSILON * Math.max(...groups.flat().map(Math.abs));
  const scale = mad > rounding ? mad / 0.6745 : 1.253314 * mean(sizes);
  return deviations.map((group) => group.map((deviation) => (scale > 0 ? deviation / scale : 0)));
}
