import { FairflightError, requireOneOf, requireRecord, requireWithin } from '../errors.js';
import type { Angle, Length, Speed } from '../units/index.js';
import { RADIANS_PER_DEGREE, si } from '../units/index.js';
import { FASTEST_WIND, requireWindProfile } from './require-wind.js';
import { roughness, type TerrainName } from './terrain.js';
import type { Wind, WindProfile } from './wind.js';
import { REFERENCE_HEIGHT, windRatio } from './wind-ratio.js';

/** Where the wind comes from: exactly one of the three ways to say it. */
export type WindOrigin =
  /** Angle it comes from, seen from the ball: 0 straight from the target (headwind), + from the right [rad], ±2π. */
  | { readonly from: Angle }
  /** Hour it comes from on a clock face with 12 at the target, 0 to 12: 12 headwind, 3 from the right, 6 tailwind. */
  | { readonly clock: number }
  /** Compass bearing it comes from, and compass bearing of the target, both clockwise from north [rad], ±2π. */
  | { readonly bearing: Angle; readonly targetBearing: Angle };

/** How the wind changes with height: say the terrain, or the whole profile, or neither (uniform). */
export type WindShape =
  | { readonly terrain?: TerrainName; readonly profile?: never }
  | { readonly profile?: WindProfile; readonly terrain?: never };

/** A wind as a player or a weather report gives it. */
export type WindReading = WindOrigin &
  WindShape & {
    /** Wind speed [m/s], 0 to 60. */
    readonly speed: Speed;
    /**
     * Height at which it was measured [m], 0.5 to 200; default the reference height of the profile, 10 m. A hand-held
     * reading is at about 2 m. Needs a terrain or a profile.
     */
    readonly measuredAt?: Length;
  };

const FIELDS = [
  'speed',
  'from',
  'clock',
  'bearing',
  'targetBearing',
  'terrain',
  'profile',
  'measuredAt',
] as const;

/**
 * A {@link Wind} from a speed and the direction it comes from. A reading at another height than the profile's reference
 * height is carried over by the profile ({@link windRatio}): over open grass 10 m/s at 2 m is 13.8 m/s at 10 m.
 * @throws {@link FairflightError} `invalid-input` or `outside-range` for a field that is missing, unknown or out of range
 * @example windFrom({ speed: mph(8), clock: 1.5, terrain: 'links-course', measuredAt: metres(2) })
 */
export function windFrom(reading: WindReading): Wind {
  requireRecord('wind', reading, FIELDS);
  const from = originOf(reading);
  const measured = requireWithin(
    'wind.speed',
    reading.speed,
    0,
    FASTEST_WIND,
    'm/s',
    'if that was mph, pass mph(10)',
  );
  const profile = profileOf(reading);
  const speed = measured / ratioAt(reading.measuredAt, profile);
  if (speed > FASTEST_WIND) {
    throw new FairflightError(
      'outside-range',
      `wind.speed of ${measured} m/s at ${reading.measuredAt} m means ${speed.toFixed(1)} m/s at the reference height; at most ${FASTEST_WIND} m/s there`,
      { field: 'wind.speed', value: measured, unit: 'm/s', range: [0, FASTEST_WIND] },
    );
  }
  // Adding 0 turns the −0 of a calm or a pure crosswind into 0.
  const components = {
    along: si<Speed>(0 - speed * Math.cos(from)),
    across: si<Speed>(0 - speed * Math.sin(from)),
  };
  return profile === undefined ? components : { ...components, profile };
}

function originOf(reading: WindReading): number {
  const given = (['from', 'clock', 'bearing'] as const).filter((key) => key in reading);
  if (given.length !== 1) {
    throw new FairflightError(
      'invalid-input',
      `wind needs exactly one of from, clock, or bearing with targetBearing, got ${given.join(' and ') || 'none'}`,
      { field: 'wind', value: reading },
    );
  }
  const hint = 'if that was degrees, pass degrees(90)';
  const angle = (name: string, value: unknown) =>
    requireWithin(`wind.${name}`, value, -2 * Math.PI, 2 * Math.PI, 'rad', hint);
  if ('clock' in reading)
    return requireWithin('wind.clock', reading.clock, 0, 12, 'h') * 30 * RADIANS_PER_DEGREE;
  if ('from' in reading) return angle('from', reading.from);
  return angle('bearing', reading.bearing) - angle('targetBearing', reading.targetBearing);
}

function profileOf(reading: WindReading): WindProfile | undefined {
  const { terrain, profile }: { readonly terrain?: TerrainName; readonly profile?: WindProfile } = reading;
  if (terrain !== undefined && profile !== undefined) {
    throw new FairflightError('invalid-input', 'wind takes a terrain or a profile, not both', {
      field: 'wind.profile',
      value: profile,
    });
  }
  if (terrain !== undefined) {
    const name = requireOneOf('wind.terrain', terrain, Object.keys(roughness) as TerrainName[]);
    return { kind: 'log', roughness: roughness[name].roughness };
  }
  return profile === undefined ? undefined : requireWindProfile('wind.profile', profile);
}

/** Wind at the height of the reading over wind at the reference height. */
function ratioAt(measuredAt: Length | undefined, profile: WindProfile | undefined): number {
  if (measuredAt === undefined) return 1;
  const height = requireWithin('wind.measuredAt', measuredAt, 0.5, 200, 'm');
  if (profile === undefined) {
    throw new FairflightError(
      'invalid-input',
      `wind.measuredAt needs a terrain or a profile: a uniform wind is the same at ${height} m and ${REFERENCE_HEIGHT} m`,
      { field: 'wind.measuredAt', value: measuredAt, unit: 'm', hint: "for example terrain: 'links-course'" },
    );
  }
  const ratio = windRatio(profile, height);
  // A reading among the obstacles says little about the wind above them.
  if (ratio < 0.1) {
    throw new FairflightError(
      'outside-range',
      `wind.measuredAt = ${height} m lies among the obstacles of this profile (displacement and roughness), where a reading does not tell the wind above`,
      { field: 'wind.measuredAt', value: measuredAt, unit: 'm' },
    );
  }
  return ratio;
}
