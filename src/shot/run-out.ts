import { type Declared, optional, quantity } from '../inputs/field.js';
import { frozen } from '../inputs/frozen.js';
import { type LandingBall, landingFields } from '../inputs/landing.js';
import { readOptions, readRecord } from '../inputs/read.js';
import { resolveScene, type Scene } from '../scene/scene.js';
import type { Run } from '../turf/index.js';
import { runFrom } from '../turf/run-out.js';
import type { Duration } from '../units/index.js';
import { SECONDS } from '../units/unit.js';

/** Options of {@link runOut}. */
export interface RunOptions {
  /** Longest run computed [s], 0 to 600; default 60. */
  readonly timeLimit?: Duration;
}

/** Declaration of {@link RunOptions}. @internal */
export const runOptionFields: Declared<RunOptions> = /* @__PURE__ */ frozen(() => ({
  timeLimit: optional(quantity(SECONDS, 0, 600, 60, 'time limit')),
}));

/** Longest run computed where nothing is said [s]. @internal */
export const RUN_TIME_LIMIT = 60;

/**
 * Bounces and rolls a ball that has just landed, until it rests.
 *
 * Bounce: a rigid sphere on turf that gives way as a tilted wall, in three dimensions with the whole spin vector, so that
 * sidespin kicks the ball. Tilt, restitution and friction are the turf's: by default those that Biber et al. 2023 (Sports
 * Eng. 26) fitted to measured bounces, or the growing tilt of Penner 2002 (Can. J. Phys. 80, 931, constants from memory).
 * Hops fly with drag only (CD 0.30). Then skid, and rolling with turf and air drag. On a slope the whole is done in the
 * frame of the ground plane.
 *
 * Bounces were measured at 1.9–38.7 m/s and 16–90° of descent, those behind Penner's at 15–30 m/s and 35–60°; elsewhere a
 * model is extrapolated and warns. Read `band` for how far a run can be trusted. The sideways kick follows from the
 * mechanics and has no measurement behind it.
 * @param landing - the ball as it meets the ground, for example `flight.landing`
 * @param scene - turf, ground (slopes), ball and air play a part; each has a default
 * @returns contacts, run, resting place and band
 * @throws FairflightError `invalid-input` or `outside-range`
 */
export function runOut(landing: LandingBall, scene: Scene = {}, options: RunOptions = {}): Run {
  const { timeLimit = RUN_TIME_LIMIT } = readOptions(runOptionFields, options);
  return runFrom(readRecord(landingFields, landing, 'landing'), resolveScene(scene), timeLimit);
}
