import { fittedLaw } from '../aerodynamics/fitted-modern.js';
import type { CoefficientLaw } from '../aerodynamics/model.js';
import type { ModelChoice } from '../aerodynamics/model-data.js';
import { resolveLaw } from '../aerodynamics/resolve.js';
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
import { sceneTurfField, type TurfName } from '../turf/turf-name.js';

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
  turf: optional(sceneTurfField),
  ball: optional(ballField),
  aerodynamics: custom(resolveLaw as CustomField['read'], 'coefficient model'),
}));

/** A scene with its defaults filled in. @internal */
export interface ResolvedScene {
  readonly air: Air;
  readonly ball: Ball;
  readonly model: CoefficientLaw;
  readonly windAlong: number;
  readonly windAcross: number;
  /** Change of wind with height; undefined for none. */
  readonly profile: WindProfile | undefined;
  readonly elevation: number;
  readonly slope: number;
  readonly crossSlope: number;
  readonly turf: Turf | TurfName;
}

/** A scene as read: balls and models stand in the place of their names; of turf see {@link turfOf}. @internal */
export type ReadScene = Omit<Scene, 'ball' | 'aerodynamics'> & {
  readonly ball?: Ball;
  readonly aerodynamics?: CoefficientLaw;
};

/** Reads a scene. @throws FairflightError naming the field @internal */
export function readScene(scene: unknown = {}, path = 'scene'): ReadScene {
  return readRecord(sceneFields, scene, path) as ReadScene;
}

/** Reads a scene and fills in its defaults. @throws FairflightError naming the field @internal */
export function resolveScene(scene: unknown, path = 'scene'): ResolvedScene {
  return withDefaults(readScene(scene, path));
}

/** Fills in the defaults of a scene already read. @internal */
export function withDefaults({ air, wind, ground, turf, ball, aerodynamics }: ReadScene): ResolvedScene {
  const { along = 0, across = 0, profile } = wind ?? {};
  const { elevation = 0, slope = 0, crossSlope = 0 } = ground ?? {};
  return {
    air: air ?? defaultAir,
    ball: ball ?? balls.conforming,
    model: aerodynamics ?? fittedLaw,
    windAlong: along,
    windAcross: across,
    profile: profile?.kind === 'uniform' ? undefined : profile,
    elevation,
    slope,
    crossSlope,
    turf: turf ?? 'normal',
  };
}
