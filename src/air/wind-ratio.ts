import type { WindProfile } from '../inputs/wind.js';

/** Height of the reference wind where none is given [m], the WMO's. @internal */
export const REFERENCE_HEIGHT = 10;

/** Below this the power law runs straight to 0: its slope at the ground is infinite, and no ball's centre is lower [m]. @internal */
export const LOWEST_HEIGHT = 0.02;

/** Whether a profile is one, and not the same at every height. @internal */
export function changesWithHeight(
  profile: WindProfile | undefined,
): profile is Exclude<WindProfile, { readonly kind: 'uniform' }> {
  return profile !== undefined && profile.kind !== 'uniform';
}

/** Height above the ground at which a profile rises from nothing, with a kink [m]. @internal */
export function windFoot(profile: WindProfile): number {
  return profile.kind === 'log' ? (profile.displacement ?? 0) + profile.roughness : 0;
}

/**
 * Wind speed at a height over the wind speed at the profile's reference height.
 *
 * Logarithmic law ln((z − d)/z0)/ln((z_ref − d)/z0), 0 at and below d + z0; power law (z/z_ref)^α, a straight line to 0
 * at the ground below 2 cm, and 0 below ground; uniform or no profile 1. Neutral air; the logarithmic law is good to about 100 m (WMO-No. 8) and continues
 * above. A kernel: the profile is taken as valid, see `requireWind`.
 * @param profile - how wind changes with height; undefined is uniform
 * @param height - height above the ground [m], any number
 */
export function windRatio(profile: WindProfile | undefined, height: number): number {
  if (profile === undefined || profile.kind === 'uniform') return 1;
  const reference = profile.referenceHeight ?? REFERENCE_HEIGHT;
  if (profile.kind === 'power') {
    if (height >= LOWEST_HEIGHT) return (height / reference) ** profile.exponent;
    return height > 0 ? (height / LOWEST_HEIGHT) * (LOWEST_HEIGHT / reference) ** profile.exponent : 0;
  }
  const { roughness } = profile;
  const above = height - (profile.displacement ?? 0);
  if (above <= roughness) return 0;
  return Math.log(above / roughness) / Math.log((reference - (profile.displacement ?? 0)) / roughness);
}
