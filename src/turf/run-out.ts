import type { Air } from '../inputs/air.js';
import type { Ball } from '../inputs/ball.js';
import type { LandingBall } from '../inputs/landing.js';
import { refusal } from '../inputs/refuse.js';
import type { Turf } from '../inputs/turf.js';
import type { Range } from '../source.js';
import { type Angle, type AngularSpeed, type Duration, type Speed, si } from '../units/index.js';
import type { Vector3 } from '../vector.js';
import { type ModelWarning, outsideRange } from '../warnings/warning.js';
import { STRAIGHT_DOWN } from './bounce.js';
import { type RunConstants, runConstants } from './constants.js';
import { CONTACT_SIZE, run, toGround, worldX, worldY, worldZ } from './kernel.js';
import type { Bounce, Run } from './run.js';
import { newRunState, POSITION, SPIN, VELOCITY } from './state.js';

/** What a run needs to know of the scene. @internal */
export interface RunGround {
  readonly turf: Turf;
  readonly ball: Ball;
  readonly air: Pick<Air, 'density'>;
  readonly slope: number;
  readonly crossSlope: number;
}

/** Where the bounce model was tested: greens, 15 to 30 m/s at 35° to 60°. */
const TESTED_SPEED: Range = { min: 15, max: 30 };
const TESTED_DESCENT: Range = { min: (35 * Math.PI) / 180, max: (60 * Math.PI) / 180 };
/** Id of the bounce model. @internal */
export const RUN_MODEL = 'crater-bounce';
/** Relative half-width of the band of the run. */
const BAND = 0.3;

/**
 * Bounces and rolls a ball that has just landed, until it rests; what `runOut` does with inputs already read.
 * @throws FairflightError `invalid-input` for a spin axis of no length
 * @internal
 */
export function runFrom(landing: LandingBall, ground: RunGround, timeLimit: number): Run {
  const { turf, ball, air, slope, crossSlope } = ground;
  const c = runConstants(turf, ball, air, slope, crossSlope, timeLimit);
  const { position, velocity, spinAxis: axis, spinRate } = landing;
  const length = Math.hypot(axis.x, axis.y, axis.z);
  if (!(length > 1e-6)) {
    throw refusal('landing.spinAxis', 'landing.spinAxis must have a length: it is 0 or nearly so', {
      value: axis,
    });
  }
  const spin = spinRate / length;

  // The frame of the ground has its origin where the ball landed.
  const s = newRunState();
  toGround(c, velocity.x, velocity.y, velocity.z, s, VELOCITY);
  toGround(c, spin * axis.x, spin * axis.y, spin * axis.z, s, SPIN);
  const warnings = warningsFor(s[3] as number, s[4] as number, s[5] as number);
  const record: number[] = [];
  const rests = run(c, s, record);

  const restsAt = place(c, position, s, POSITION);
  const dx = restsAt.x - position.x;
  const dz = restsAt.z - position.z;
  const along = Math.hypot(velocity.x, velocity.z);
  const hx = along > STRAIGHT_DOWN ? velocity.x / along : 1;
  const hz = along > STRAIGHT_DOWN ? velocity.z / along : 0;
  const distance = dx * hx + dz * hz;
  const spread = BAND * Math.abs(distance);
  return {
    bounces: bouncesOf(c, position, record),
    distance: si(distance),
    side: si(dz * hx - dx * hz),
    restsAt,
    ended: rests ? 'at-rest' : 'still-rolling',
    band: { low: si(distance - spread), high: si(distance + spread) },
    warnings,
  };
}

function place(c: RunConstants, origin: Vector3, s: ArrayLike<number>, at: number): Vector3 {
  const along = s[at] as number;
  const normal = s[at + 1] as number;
  const across = s[at + 2] as number;
  return {
    x: origin.x + worldX(c, along, normal, across),
    y: origin.y + worldY(c, along, normal, across),
    z: origin.z + worldZ(c, normal, across),
  };
}

function bouncesOf(c: RunConstants, origin: Vector3, record: readonly number[]): Bounce[] {
  const bounces: Bounce[] = [];
  for (let i = 0; i < record.length; i += CONTACT_SIZE) {
    bounces.push({
      position: place(c, origin, record, i),
      time: si<Duration>(record[i + 3] as number),
      speedBefore: si<Speed>(record[i + 4] as number),
      descentAngle: si<Angle>(record[i + 5] as number),
      speedAfter: si<Speed>(record[i + 6] as number),
      backspinAfter: si<AngularSpeed>(record[i + 7] as number),
      hopHeight: si(record[i + 8] as number),
    });
  }
  return bounces;
}

function warningsFor(along: number, normal: number, across: number): ModelWarning[] {
  const speed = Math.hypot(along, normal, across);
  const descent = Math.atan2(-normal, Math.hypot(along, across));
  return [
    outsideRange('landing-speed-outside-data', RUN_MODEL, 'landingSpeed', TESTED_SPEED, speed),
    outsideRange('descent-outside-data', RUN_MODEL, 'descentAngle', TESTED_DESCENT, descent),
  ].filter((warning) => warning !== undefined);
}
