import type { Clubhead } from '../clubhead/index.js';
import type { QuantityRange } from '../inputs/between.js';
import { frozen } from '../inputs/frozen.js';
import { type Launch, launchFields } from '../inputs/launch.js';
import { allows } from '../inputs/read.js';
import type { ResolvedScene } from '../scene/scene.js';
import { createPlayer, type Player } from '../shot/player.js';
import { type ShotSettings, shotSettings } from '../shot/shot-options.js';
import { requireFlyable } from '../shot/struck-launch.js';
import { createWalk, type Walk, type WalkResult } from '../shot/walk.js';
import { squareStrike } from '../strike/impact.js';
import { createStriker } from '../strike/striker.js';
import { type Angle, degrees, type Speed, si } from '../units/index.js';
import type { MaximisedDistance, OptimumOptions } from './optimum.js';
import type { Trial } from './search.js';

/** A level, square, centred strike and the walk that follows, as plain numbers. @internal */
export interface Deliverer {
  /**
   * The launch of a delivery, its spin times a factor; undefined where no strike can be computed. Overwritten by the next.
   */
  readonly strike: (clubSpeed: number, attack: number, loft: number, spin?: number) => Launch | undefined;
  /** Distance of a launch: −Infinity where the ball does not land or the launch is outside what is computed. */
  readonly distance: (launch: Launch | undefined) => number;
  /** Whether its distance has no humps: carry has none, total has one for each bounce. */
  readonly smooth: boolean;
  /** Distance and margin to the least descent. */
  readonly trial: (launch: Launch | undefined) => Trial;
}

/** What a search needs, made of scene and options. @internal */
export interface Search {
  readonly maximise: MaximisedDistance;
  readonly deliverer: Deliverer;
  readonly player: Player;
  readonly clubhead: Clubhead;
  readonly lofts: QuantityRange<Angle>;
  readonly minimumDescent: number | undefined;
}

const LOFTS: QuantityRange<Angle> = /* @__PURE__ */ frozen(() => ({ min: degrees(2), max: degrees(60) }));

/** Makes a search of a scene and options already read. @internal */
export function createSearch(scene: ResolvedScene, options: OptimumOptions): Search {
  const { maximise = 'carry', dynamicLoft = LOFTS, minimumDescentAngle, ...rest } = options;
  const settings = shotSettings(rest);
  return {
    maximise,
    deliverer: createDeliverer(scene, settings, maximise === 'total', minimumDescentAngle),
    player: createPlayer(scene, settings),
    clubhead: settings.clubhead,
    lofts: dynamicLoft,
    minimumDescent: minimumDescentAngle,
  };
}

function createDeliverer(
  scene: ResolvedScene,
  settings: ShotSettings,
  withRun: boolean,
  minimumDescent: number | undefined,
): Deliverer {
  const walk: Walk = createWalk(scene, settings);
  const striker = createStriker({ clubhead: settings.clubhead, ball: scene.ball });
  const input = squareStrike(0, 0, 0);
  const play = (from: Launch | undefined): WalkResult | undefined => {
    if (from === undefined || !isComputed(from)) return undefined;
    const result = walk.play(from, withRun);
    return result.landed ? result : undefined;
  };
  const far = (result: WalkResult | undefined): number =>
    result === undefined ? Number.NEGATIVE_INFINITY : withRun ? result.total : result.carry;
  return {
    smooth: !withRun,
    strike: (clubSpeed, attack, loft, spin) => {
      input.clubSpeed = clubSpeed;
      input.attackAngle = attack;
      input.dynamicLoft = loft;
      const struck = striker.strike(input);
      if (typeof struck === 'string') return undefined;
      const { launch } = struck;
      return spin === undefined ? launch : { ...launch, spinRate: si(spin * launch.spinRate) };
    },
    distance: (from) => far(play(from)),
    trial: (from) => {
      const result = play(from);
      const value = far(result);
      if (result === undefined) return { value, margin: Number.NEGATIVE_INFINITY };
      if (minimumDescent === undefined) return { value, margin: Number.POSITIVE_INFINITY };
      return { value, margin: result.descentAngle - minimumDescent };
    },
  };
}

function isComputed(launch: Launch): boolean {
  return allows(launchFields.ballSpeed, launch.ballSpeed) && allows(launchFields.spinRate, launch.spinRate);
}

/** A launch from plain numbers. @internal */
export function plainLaunch(ballSpeed: number, launchAngle: number, spinRate: number): Launch {
  return { ballSpeed: si(ballSpeed), launchAngle: si(launchAngle), spinRate: si(spinRate) };
}

/**
 * Refuses a club speed at which the flattest loft searched sends the ball off faster than a flight is computed for: the
 * best would only seem to lie where more loft slows the ball down.
 * @throws FairflightError naming the club speed below `path`
 * @internal
 */
export function requireComputed(
  { strike }: Deliverer,
  speed: number,
  attack: number,
  loft: number,
  path: string,
): void {
  const launch = strike(speed, attack, loft);
  if (launch !== undefined && launch.ballSpeed > launchFields.ballSpeed.max) {
    requireFlyable(launch, si<Speed>(speed), path);
  }
}
