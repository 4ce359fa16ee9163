import type { AerodynamicModel, ModelChoice } from '../aerodynamics/index.js';
import { resolveModel } from '../aerodynamics/resolve.js';
import { defaultAir } from '../air/index.js';
import { requireSoundProfile } from '../air/sound-wind.js';
import { type BallName, ballField, balls } from '../ball/ball.js';
import { type Air, airFields } from '../inputs/air.js';
import type { Ball } from '../inputs/ball.js';
import { type CustomField, custom, type Declared, optional, record } from '../inputs/field.js';
import { frozen } from '../inputs/frozen.js';
import { type Ground, groundFields } from '../inputs/ground.js';
import { readRecord } from '../inputs/read.js';
import type { Turf } from '../inputs/turf.js';
import { type Wind, type WindProfile, windFields } from '../inputs/wind.js';
import { type TurfName, turfField, turfs } from '../turf/presets.js';

/** Where and with what a shot is played. Every field has a default. */
export interface Scene {
  /** Air; default 20 °C, 1013.25 hPa, 50 % humidity (1.1993 kg/m³, CIPM-2007). */
  readonly air?: Air;
  /** Wind; default none. */
  readonly wind?: Wind;
  /** Ground; default the horizontal plane through the ball's start. */
  readonly ground?: Ground;
  /** Turf where the ball lands, or the name of a preset; default normal. Used by the run only. */
  readonly turf?: Turf | TurfName;
  /** Ball, or the name of a preset; default the conforming ball. */
  readonly ball?: Ball | BallName;
  /** Coefficient model: the id of a built-in one, data, or functions; default the fitted modern ball. */
  readonly aerodynamics?: ModelChoice;
}

/** Declaration of {@link Scene}. @internal */
export const sceneFields: Declared<Scene> = /* @__PURE__ */ frozen(() => ({
  air: optional(record(airFields, 'air')),
  wind: optional(record(windFields, 'wind', requireSoundProfile)),
  ground: optional(record(groundFields, 'ground')),
  turf: optional(turfField),
  ball: optional(ballField),
  aerodynamics: custom(resolveModel as CustomField['read'], 'coefficient model'),
}));

/** A scene with its defaults filled in. @internal */
export interface ResolvedScene {
  readonly air: Air;
  readonly ball: Ball;
  readonly model: AerodynamicModel;
  readonly windAlong: number;
  readonly windAcross: number;
  /** Change of wind with height; undefined for none. */
  readonly profile: WindProfile | undefined;
  readonly elevation: number;
  readonly slope: number;
  readonly crossSlope: number;
  readonly turf: Turf;
}

/** Reads a scene and fills in its defaults. @throws FairflightError naming the field @internal */
export function resolveScene(scene: unknown = {}, path = 'scene'): ResolvedScene {
  const given = readRecord(sceneFields, scene, path);
  const { along = 0, across = 0, profile } = given.wind ?? {};
  const { elevation = 0, slope = 0, crossSlope = 0 } = given.ground ?? {};
  return {
    air: given.air ?? defaultAir,
    // Reading has put the record in the place of a preset's name.
    ball: (given.ball as Ball | undefined) ?? balls.conforming,
    model: (given.aerodynamics as AerodynamicModel | undefined) ?? resolveModel(),
    windAlong: along,
    windAcross: across,
    profile: profile?.kind === 'uniform' ? undefined : profile,
    elevation,
    slope,
    crossSlope,
    turf: (given.turf as Turf | undefined) ?? turfs.normal,
  };
}
