import type { ResolvedScene } from '../scene/scene.js';
import { numbersOf } from '../strike/delivery.js';
import { createStriker } from '../strike/striker.js';
import { strikeWarnings } from '../strike/warnings.js';
import type { ModelWarning } from '../warnings/warning.js';
import { createPlayer } from './player.js';
import type { ShotSettings } from './shot-options.js';
import type { Start } from './start.js';
import { isFlyable } from './struck-launch.js';
import { createWalk, type WalkResult } from './walk.js';

/** Plays many shots in one scene with one clubhead, without their records: the figures and warnings of `playShot`. @internal */
export interface PlainPlayer {
  /** From a delivery or a launch already read. Overwritten by the next. @throws FairflightError as a player does */
  readonly play: (start: Start) => WalkResult;
  /** Warnings of the last shot. */
  readonly warnings: () => readonly ModelWarning[];
}

/** Makes a plain player with scratch of its own. @internal */
export function createPlainPlayer(scene: ResolvedScene, settings: ShotSettings): PlainPlayer {
  const { clubhead } = settings;
  const { ball } = scene;
  const striker = createStriker({ clubhead, ball });
  const walk = createWalk(scene, settings);
  // What can't be struck or flown it refuses in words.
  const player = createPlayer(scene, settings);
  let ofStrike: readonly ModelWarning[] = [];
  return {
    play: ({ delivery, launch }) => {
      ofStrike = [];
      if (delivery === undefined) return walk.play(launch, true);
      const input = numbersOf(delivery);
      const struck = striker.strike(input);
      if (typeof struck === 'string' || !isFlyable(struck.launch)) {
        player.fromDelivery(delivery);
        throw new Error('a strike that a player takes was refused');
      }
      ofStrike = strikeWarnings(input, clubhead, ball, struck.spinLoft);
      return walk.play(struck.launch, true);
    },
    warnings: () => [...ofStrike, ...walk.warnings()],
  };
}
