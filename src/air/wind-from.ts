import type { Declared } from '../inputs/field.js';
import { frozen } from '../inputs/frozen.js';
import { readRecord } from '../inputs/read.js';
import { refusal, refuseType } from '../inputs/refuse.js';
import { FASTEST_WIND, type Wind, type WindProfile } from '../inputs/wind.js';
import { type WindReadingFields, type WindReadingOf, windReadingFields } from '../inputs/wind-reading.js';
import { RADIANS_PER_DEGREE, type Speed, si } from '../units/index.js';
import { requireSoundProfile } from './sound-wind.js';
import { type TerrainName, terrains } from './terrain.js';
import { REFERENCE_HEIGHT, windRatio } from './wind-ratio.js';

/** A wind as a player or a weather report gives it. */
export type WindReading = WindReadingOf<TerrainName>;

/** Declaration of a reading with the terrains known here. @internal */
export const courseWindFields: Declared<WindReadingFields> = /* @__PURE__ */ frozen(() =>
  windReadingFields(Object.keys(terrains)),
);

/**
 * A {@link Wind} from a speed and the direction it comes from. A reading at another height than the profile's reference
 * height is carried over by the profile: over open grass 10 m/s at 2 m is 13.8 m/s at 10 m.
 * @throws `FairflightError` `invalid-input` or `outside-range` for a field that is missing, unknown or out of range
 * @example windFrom({ speed: mph(8), clock: 1.5, terrain: 'links-course', measuredAt: metres(2) })
 */
export function windFrom(reading: WindReading): Wind {
  return windOf(readRecord(courseWindFields, reading, 'wind'), 'wind');
}

/** {@link windFrom} of a reading already read, which the caller wrote under `path`. @internal */
export function windOf(given: WindReadingFields, path: string): Wind {
  const from = originOf(given, path);
  const profile = profileOf(given, path);
  const speed = given.speed / ratioAt(given, profile, path);
  if (speed > FASTEST_WIND) {
    throw refusal(
      `${path}.speed`,
      `${path}.speed of ${given.speed} m/s at ${given.measuredAt} m means ${speed.toFixed(1)} m/s at the reference height; at most ${FASTEST_WIND} m/s there`,
      { value: given.speed, unit: 'm/s', range: [0, FASTEST_WIND] },
      'outside-range',
    );
  }
  // Adding 0 turns the −0 of a calm or a pure crosswind into 0.
  const wind = {
    along: si<Speed>(0 - speed * Math.cos(from)),
    across: si<Speed>(0 - speed * Math.sin(from)),
    ...(profile !== undefined && { profile }),
  };
  requireSoundProfile(wind, path);
  return wind;
}

function originOf(given: WindReadingFields, path: string): number {
  const ways = (['from', 'clock', 'bearing'] as const).filter((key) => given[key] !== undefined);
  const { from, clock, bearing, targetBearing } = given;
  if (bearing !== undefined && targetBearing === undefined) {
    throw refuseType(`${path}.targetBearing`, 'the bearing of the target, beside bearing', undefined);
  }
  if (ways.length !== 1 || (targetBearing !== undefined && bearing === undefined)) {
    const got = [...ways, ...(targetBearing === undefined ? [] : ['targetBearing'])].join(' and ') || 'none';
    throw refusal(
      path,
      `${path} needs exactly one of from, clock, or bearing with targetBearing, got ${got}`,
    );
  }
  if (from !== undefined) return from;
  if (clock !== undefined) return clock * 30 * RADIANS_PER_DEGREE;
  return Number(bearing) - Number(targetBearing);
}

function profileOf({ terrain, profile }: WindReadingFields, path: string): WindProfile | undefined {
  if (terrain === undefined) return profile;
  if (profile !== undefined)
    throw refusal(`${path}.profile`, `${path} takes a terrain or a profile, not both`);
  return { kind: 'log', roughness: terrains[terrain as TerrainName].roughness };
}

/** Wind at the height of the reading over wind at the reference height. */
function ratioAt({ measuredAt }: WindReadingFields, profile: WindProfile | undefined, path: string): number {
  if (measuredAt === undefined) return 1;
  if (profile === undefined) {
    throw refusal(
      `${path}.measuredAt`,
      `${path}.measuredAt needs a terrain or a profile: a uniform wind is the same at ${measuredAt} m and ${REFERENCE_HEIGHT} m`,
      { value: measuredAt, unit: 'm', hint: "for example terrain: 'links-course'" },
    );
  }
  const ratio = windRatio(profile, measuredAt);
  // A reading among the obstacles says little about the wind above them.
  if (!(ratio >= 0.1)) {
    throw refusal(
      `${path}.measuredAt`,
      `${path}.measuredAt = ${measuredAt} m lies among the obstacles of this profile (displacement and roughness), where a reading does not tell the wind above`,
      { value: measuredAt, unit: 'm' },
      'outside-range',
    );
  }
  return ratio;
}
