import type { CoefficientLaw } from '../aerodynamics/model.js';
import { type Launch, launchFields } from '../inputs/launch.js';
import { allows } from '../inputs/read.js';
import type { ResolvedScene } from '../scene/scene.js';
import type { ShotSettings } from '../shot/shot-options.js';
import { createWalk, type Walk, type WalkResult } from '../shot/walk.js';
import { createStriker } from '../strike/striker.js';
import { si } from '../units/index.js';
import { type CentredStrike, centredStrike, type PlayerWorld } from './player-worlds.js';

/** What is done to a player's swing, strike or club; what is left out stays. Plain SI. @internal */
export interface SwingChange {
  readonly loft?: number;
  readonly attackAngle?: number;
  readonly clubSpeed?: number;
  /** Share of ball speed gained by the strike, and no more than a centred strike has. */
  readonly strike?: number;
  /** Lofts [rad] of which the best is taken, after the change and before it: what the change brings beyond a fitting. */
  readonly fitted?: readonly number[];
}

/** Carry and total of a usual shot [m]. @internal */
export interface Distances {
  readonly carry: number;
  readonly total: number;
}

/** Launch of the usual shot as plain numbers. @internal */
export interface UsualLaunch {
  readonly ballSpeed: number;
  readonly launchAngle: number;
  readonly spinRate: number;
}

/** Plays drawn players, changed or as they are. @internal */
export interface ChangePlayer {
  /** Launch after a change: the launch as it is, moved by the difference that the strike model sees. */
  readonly launch: (world: PlayerWorld, change: SwingChange) => UsualLaunch | undefined;
  /** Distances of a launch in a world; undefined where the ball does not land or the launch is outside what is computed. */
  readonly distances: (world: PlayerWorld, launch: UsualLaunch | undefined) => Distances | undefined;
  /** The walk of a world's ball, for shots that scatter. */
  readonly walk: (world: PlayerWorld) => Walk;
  /** Factor of the run in a world. */
  readonly runFactor: (world: PlayerWorld) => number;
  /** A centred strike with the delivery of a world. */
  readonly centred: (world: PlayerWorld) => CentredStrike | undefined;
}

/**
 * Makes a player of changes.
 * @param laws - coefficient laws that the ball of a world is one of
 * @param runError - standard error of the run, as a share of it
 * @internal
 */
export function createChangePlayer(
  scene: ResolvedScene,
  settings: ShotSettings,
  laws: readonly CoefficientLaw[],
  runError: number,
): ChangePlayer {
  const { clubhead } = settings;
  const striker = createStriker({ clubhead, ball: scene.ball });
  const walks = laws.map((model) => createWalk({ ...scene, model }, settings));
  const walk = ({ ball }: PlayerWorld): Walk =>
    walks[Math.min(walks.length - 1, Math.floor(ball * walks.length))] as Walk;
  const runFactor = ({ run }: PlayerWorld): number => Math.max(0, 1 + runError * run);
  const centred = (world: PlayerWorld): CentredStrike | undefined =>
    centredStrike(striker, world.clubSpeed, world.attackAngle, world.dynamicLoft);
  return {
    walk,
    runFactor,
    centred,
    launch: (world, change) => {
      const before = centred(world);
      const after = centredStrike(
        striker,
        world.clubSpeed + (change.clubSpeed ?? 0),
        world.attackAngle + (change.attackAngle ?? 0),
        world.dynamicLoft + (change.loft ?? 0),
      );
      if (before === undefined || after === undefined) return undefined;
      const toCentre = Math.max(1, before.ballSpeed / world.ballSpeed);
      const struck = Math.min(1 + (change.strike ?? 0), toCentre);
      const spin = 1 + (after.spinRate / before.spinRate - 1) * (1 + world.response);
      return {
        ballSpeed: world.ballSpeed * (after.ballSpeed / before.ballSpeed) * struck,
        launchAngle: world.launchAngle + after.launchAngle - before.launchAngle,
        spinRate: world.spinRate * spin,
      };
    },
    distances: (world, launch) => {
      const landed = launch && landedBy(walk(world), flown(launch));
      if (landed === undefined) return undefined;
      const { carry, total } = landed;
      return { carry, total: carry + runFactor(world) * (total - carry) };
    },
  };
}

/** What becomes of a launch; undefined where it is outside what is computed or does not land. @internal */
export function landedBy(walk: Walk, launch: Launch): WalkResult | undefined {
  const computed = (['ballSpeed', 'launchAngle', 'spinRate'] as const).every((name) =>
    allows(launchFields[name], launch[name]),
  );
  const result = computed ? walk.play(launch, true) : undefined;
  return result?.landed ? result : undefined;
}

function flown({ ballSpeed, launchAngle, spinRate }: UsualLaunch): Launch {
  return { ballSpeed: si(ballSpeed), launchAngle: si(launchAngle), spinRate: si(spinRate) };
}
