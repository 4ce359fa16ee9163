import type { FairflightError } from '../errors.js';
import type { ResolvedScene } from '../scene/scene.js';
import type { ShotSettings } from '../shot/shot-options.js';
import { type Drawing, drawnShots, type WayToPlay, wholeSets } from './drawn-shots.js';
import type { StrokesSettings } from './expected-strokes.js';
import type { Hole } from './hole.js';
import { scoreOf } from './hole-strokes.js';

/** Shots played in one way and counted, a number each: NaN for one outside what can be played. @internal */
export interface PlayedShots {
  /** Strokes on all holes together. */
  readonly strokes: Float64Array;
  readonly carry: Float64Array;
  readonly total: Float64Array;
  /** Share of the holes on which the shot ends on the fairway. */
  readonly fairway: Float64Array;
  /** Why this way of playing cannot be counted: more shots failed than a spread may have. */
  readonly refused: FairflightError | undefined;
}

/** Whose shots, and how they are drawn and counted. @internal */
export interface Golfer extends Drawing {
  readonly holes: readonly Hole[];
  readonly strokes: StrokesSettings;
}

/** Plays the same shots of a golfer in any way, and counts them on all holes. @internal */
export function sameShots(
  scene: ResolvedScene,
  settings: ShotSettings,
  { holes, strokes: counting, ...drawing }: Golfer,
): (way: WayToPlay, shots: number) => PlayedShots {
  const play = drawnShots(scene, settings, drawing);
  return (way, shots) => {
    const count = wholeSets(shots);
    const column = (): Float64Array => new Float64Array(count).fill(Number.NaN);
    const [strokes, carry, total, fairway] = [column(), column(), column(), column()];
    const refused = play(way, count, true, (i, shot) => {
      carry[i] = shot.carry;
      total[i] = shot.total;
      const landing = { x: shot.landingX, z: shot.landingZ };
      const rest = { x: shot.restX, z: shot.side };
      let sum = 0;
      let held = 0;
      for (const hole of holes) {
        const score = scoreOf(landing, rest, hole, counting);
        sum += score.strokes;
        if (score.ending === 'fairway') held++;
      }
      strokes[i] = sum;
      fairway[i] = held / holes.length;
    });
    return { strokes, carry, total, fairway, refused };
  };
}
