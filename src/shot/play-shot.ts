import type { Delivery } from '../inputs/delivery.js';
import type { Launch } from '../inputs/launch.js';
import { readOptions } from '../inputs/read.js';
import { resolveScene, type Scene } from '../scene/scene.js';
import { createPlayer } from './player.js';
import type { Shot } from './shot.js';
import { type ShotOptions, shotOptionFields, shotSettings } from './shot-options.js';
import { readStart } from './start.js';

/**
 * Plays one shot: strike, flight and run, from a delivery of the club or from a launch of the ball. Which of the two
 * is told by `clubSpeed` or `ballSpeed`.
 *
 * Carry is the number to trust; the run is a band of ±25 % (`run.band`), and the spin of a strike is known to
 * ±13 % with the driver and ±20 % with other heads (`strike.spinBand`).
 * @param from - how the club comes to the ball, or how the ball leaves
 * @param scene - air, wind, ground, turf, ball and coefficient model; each has a default
 * @param options - clubhead (with a delivery), tolerance and time limit
 * @throws `FairflightError` `invalid-input` or `outside-range`, naming field, value, unit and allowed range
 * @example playShot({ clubSpeed: mph(95), attackAngle: degrees(0), dynamicLoft: degrees(15) }).total
 */
export function playShot(from: Delivery | Launch, scene: Scene = {}, options: ShotOptions = {}): Shot {
  const player = createPlayer(resolveScene(scene), shotSettings(readOptions(shotOptionFields, options)));
  return player.play(readStart(from));
}
