import { FairflightError, isWithin, requireOneOf, requireRecord, requireWithin } from '../errors.js';
import type { Wind, WindProfile } from './wind.js';
import { REFERENCE_HEIGHT } from './wind-ratio.js';

/** Fastest wind accepted [m/s]; nobody plays golf in a hurricane. */
export const FASTEST_WIND = 60;

/**
 * Returns the wind when it is one a shot can be flown in.
 * @throws {@link FairflightError} naming the field below `field`
 * @internal
 */
export function requireWind(field: string, wind: Wind): Wind {
  requireRecord(field, wind, ['along', 'across', 'profile']);
  if (!isWind(wind.along) || !isWind(wind.across)) {
    const hint = 'if that was mph, pass mph(10)';
    requireWithin(`${field}.along`, wind.along, -FASTEST_WIND, FASTEST_WIND, 'm/s', hint);
    requireWithin(`${field}.across`, wind.across, -FASTEST_WIND, FASTEST_WIND, 'm/s', hint);
  }
  if (wind.profile !== undefined) requireWindProfile(`${field}.profile`, wind.profile);
  return wind;
}

function isWind(speed: unknown): boolean {
  return isWithin(speed, -FASTEST_WIND, FASTEST_WIND);
}

/**
 * Returns the profile when its lengths make sense together.
 * @throws {@link FairflightError} naming the field below `field`
 * @internal
 */
export function requireWindProfile(field: string, profile: WindProfile): WindProfile {
  requireRecord(field, profile, ['kind', 'roughness', 'displacement', 'referenceHeight', 'exponent']);
  const kind = requireOneOf(`${field}.kind`, profile.kind, ['uniform', 'log', 'power']);
  const fields = {
    uniform: ['kind'],
    log: ['kind', 'roughness', 'displacement', 'referenceHeight'],
    power: ['kind', 'exponent', 'referenceHeight'],
  };
  requireRecord(field, profile, fields[kind]);
  if (profile.kind === 'uniform') return profile;
  const reference = requireWithin(
    `${field}.referenceHeight`,
    profile.referenceHeight ?? REFERENCE_HEIGHT,
    0.5,
    200,
    'm',
  );
  if (profile.kind === 'power') {
    requireWithin(`${field}.exponent`, profile.exponent, 0, 1, '');
    return profile;
  }
  const roughness = requireWithin(`${field}.roughness`, profile.roughness, 1e-5, 5, 'm');
  const displacement = requireWithin(`${field}.displacement`, profile.displacement ?? 0, 0, 50, 'm');
  if (reference <= displacement + roughness) {
    throw new FairflightError(
      'invalid-input',
      `${field}.referenceHeight must be above displacement + roughness = ${displacement + roughness} m, where the law gives no wind, got ${reference}`,
      { field: `${field}.referenceHeight`, value: reference, unit: 'm' },
    );
  }
  return profile;
}
