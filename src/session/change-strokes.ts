import { type StrokesSettings, strokesSettings } from '../dispersion/expected-strokes.js';
import type { Hole } from '../dispersion/hole.js';
import { scoreOf } from '../dispersion/hole-strokes.js';
import type { Launch } from '../inputs/launch.js';
import type { MeasuredShot } from '../inputs/measured-shot.js';
import { mean, stream } from '../numerics/index.js';
import { si } from '../units/index.js';
import { type ChangePlayer, landedBy, type UsualLaunch } from './change-player.js';
import { launchIn } from './launch-of.js';
import type { PlayerWorld } from './player-worlds.js';
import type { RankSettings } from './rank-options.js';

/** How one shot differs from the usual one: speeds and spin as a ratio, angles in radians. */
interface Deviation {
  readonly ballSpeed: number;
  readonly launchAngle: number;
  readonly launchDirection: number;
  readonly spinRate: number;
  readonly spinAxisTilt: number;
}

/** A player's own scatter, and the hole it is scored on. @internal */
export interface ScoredScatter {
  readonly deviations: readonly Deviation[];
  readonly hole: Hole;
  readonly strokes: StrokesSettings;
  readonly seed: number;
}

/** Means over scattered shots. @internal */
export interface ScatteredMeans {
  readonly carry: number;
  readonly total: number;
  readonly strokes: number;
}

/** Fewest shots that show how a player scatters. */
const FEWEST_SHOTS = 5;
/** Shots drawn in every world. */
const SHOTS_A_WORLD = 20;
/** Worlds in which strokes are counted. @internal */
export const STROKE_WORLDS = 60;
/** Streams of the worlds lie below. */
const STREAMS_OF_SHOTS = 1_000_000;

/** The scatter of shots about a player who aims right; undefined without a hole or with fewer than five full launches. @internal */
export function scoredScatter(
  shots: readonly MeasuredShot[],
  { hole, skill, seed }: RankSettings,
): ScoredScatter | undefined {
  const launches = shots.flatMap((shot) => {
    const launch = launchIn(shot);
    return 'missing' in launch || launch.launchDirection === undefined ? [] : [launch];
  });
  if (hole === undefined || launches.length < FEWEST_SHOTS) return undefined;
  const usual = (of: (launch: Launch) => number): number => mean(launches.map(of));
  const ballSpeed = usual((launch) => launch.ballSpeed);
  const launchAngle = usual((launch) => launch.launchAngle);
  const launchDirection = usual((launch) => launch.launchDirection ?? 0);
  const spinRate = usual((launch) => launch.spinRate);
  const spinAxisTilt = usual((launch) => launch.spinAxisTilt ?? 0);
  const deviations = launches.map((launch) => ({
    ballSpeed: launch.ballSpeed / ballSpeed - 1,
    launchAngle: launch.launchAngle - launchAngle,
    launchDirection: (launch.launchDirection ?? 0) - launchDirection,
    spinRate: spinRate > 0 ? launch.spinRate / spinRate - 1 : 0,
    spinAxisTilt: (launch.spinAxisTilt ?? 0) - spinAxisTilt,
  }));
  return { deviations, hole, strokes: strokesSettings({ skill }), seed };
}

/**
 * Scattered shots about a usual one, the same shots of the player for every change of one world.
 * @param k - number of the world
 * @param scale - of the scatter
 * @internal
 */
export function scatteredMeans(
  player: ChangePlayer,
  world: PlayerWorld,
  k: number,
  usual: UsualLaunch | undefined,
  { deviations, hole, strokes, seed }: ScoredScatter,
  scale = 1,
): ScatteredMeans | undefined {
  if (usual === undefined) return undefined;
  const walk = player.walk(world);
  const run = player.runFactor(world);
  const { integer } = stream(seed, STREAMS_OF_SHOTS + k);
  const shots = Array.from({ length: SHOTS_A_WORLD }, () => {
    const own = deviations[integer(deviations.length)] as Deviation;
    const landed = landedBy(walk, scattered(usual, own, scale));
    if (landed === undefined) return undefined;
    const { landingX, landingZ, restX, side, carry } = landed;
    const landing = { x: landingX, z: landingZ };
    const rest = { x: landingX + run * (restX - landingX), z: landingZ + run * (side - landingZ) };
    return {
      carry,
      total: Math.hypot(rest.x, rest.z),
      strokes: scoreOf(pointOf(landing), pointOf(rest), hole, strokes).strokes,
    };
  }).flatMap((shot) => shot ?? []);
  if (shots.length < SHOTS_A_WORLD) return undefined;
  return {
    carry: mean(shots.map((shot) => shot.carry)),
    total: mean(shots.map((shot) => shot.total)),
    strokes: mean(shots.map((shot) => shot.strokes)),
  };
}

function pointOf({ x, z }: { readonly x: number; readonly z: number }): Parameters<typeof scoreOf>[0] {
  return { x: si(x), z: si(z) };
}

function scattered(usual: UsualLaunch, own: Deviation, scale: number): Launch {
  return {
    ballSpeed: si(usual.ballSpeed * (1 + scale * own.ballSpeed)),
    launchAngle: si(usual.launchAngle + scale * own.launchAngle),
    launchDirection: si(scale * own.launchDirection),
    spinRate: si(usual.spinRate * (1 + scale * own.spinRate)),
    spinAxisTilt: si(scale * own.spinAxisTilt),
  };
}
