import type { Air } from '../inputs/air.js';
import type { Ball } from '../inputs/ball.js';
import type { LandingBall } from '../inputs/landing.js';
import { refusal } from '../inputs/refuse.js';
import type { Turf } from '../inputs/turf.js';
import type { Track } from '../track.js';
import { type Angle, type AngularSpeed, type Duration, type Speed, si } from '../units/index.js';
import type { Vector3 } from '../vector.js';
import { type ModelWarning, outsideRange } from '../warnings/warning.js';
import { STRAIGHT_DOWN } from './bounce.js';
import type { BounceLaw } from './bounce-law.js';
import { type RunConstants, runConstants } from './constants.js';
import { run, toGround, worldX, worldY, worldZ } from './kernel.js';
import { turfOf } from './presets.js';
import { CONTACT_SIZE, NODE_SIZE, newRunRecord } from './record.js';
import type { Bounce, Run } from './run.js';
import { newRunState, TIME, VX, VY, VZ, WX, X } from './state.js';
import type { TurfName } from './turf-name.js';

/** What a run needs to know of the scene. @internal */
export interface RunGround {
  readonly turf: Turf | TurfName;
  readonly ball: Ball;
  readonly air: Pick<Air, 'density'>;
  readonly slope: number;
  readonly crossSlope: number;
}

/** Scratch, made once: a run calls nobody back, so no second run can begin while one is in it. */
const record = newRunRecord();

/**
 * Bounces and rolls a ball that has just landed, until it rests; what `runOut` does with inputs already read.
 * @param elevation - of the ground plane [m]; by default it goes through the landing
 * @throws FairflightError `invalid-input` for a spin axis of no length
 * @internal
 */
export function runFrom(landing: LandingBall, ground: RunGround, timeLimit: number, elevation?: number): Run {
  const { turf, ball, air, slope, crossSlope } = ground;
  const c = runConstants(turfOf(turf), ball, air, slope, crossSlope, timeLimit);
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
  toGround(c, velocity.x, velocity.y, velocity.z, s, VX);
  toGround(c, spin * axis.x, spin * axis.y, spin * axis.z, s, WX);
  const warnings = landingWarnings(c.law, s[VX] as number, s[VY] as number, s[VZ] as number);
  record.contactsUsed = 0;
  record.nodesUsed = 0;
  const rests = run(c, s, record);

  const from: From = {
    c,
    x: position.x,
    z: position.z,
    elevation: elevation ?? position.y - c.slopeX * position.x - c.slopeZ * position.z,
  };
  const restsAt = place(from, s, X);
  const dx = restsAt.x - position.x;
  const dz = restsAt.z - position.z;
  const along = Math.hypot(velocity.x, velocity.z);
  const hx = along > STRAIGHT_DOWN ? velocity.x / along : 1;
  const hz = along > STRAIGHT_DOWN ? velocity.z / along : 0;
  const distance = dx * hx + dz * hz;
  const spread = c.law.band * Math.abs(distance);
  return {
    bounces: bouncesOf(from),
    distance: si(distance),
    side: si(dz * hx - dx * hz),
    duration: si(s[TIME] as number),
    restsAt,
    ended: rests ? 'at-rest' : 'still-rolling',
    band: { low: si(distance - spread), high: si(distance + spread) },
    track: trackOf(from),
    warnings,
  };
}

/** Where the frame of the ground has its origin, and the elevation of its plane under the origin of the world. */
interface From {
  readonly c: RunConstants;
  readonly x: number;
  readonly z: number;
  readonly elevation: number;
}

/** World position of a place in the frame of the ground; a ball on the plane is on it to the last bit. */
function place({ c, x: x0, z: z0, elevation }: From, s: ArrayLike<number>, at: number): Vector3 {
  const along = s[at] as number;
  const normal = s[at + 1] as number;
  const across = s[at + 2] as number;
  const x = x0 + worldX(c, along, normal, across);
  const z = z0 + worldZ(c, normal, across);
  return { x, y: elevation + c.slopeX * x + c.slopeZ * z + normal / c.normalY, z };
}

/** The nodes of the last run in the world frame. */
function trackOf({ c, x: x0, z: z0, elevation }: From): Track {
  const { nodes, nodesUsed } = record;
  const count = nodesUsed / NODE_SIZE;
  const time = new Array<number>(count);
  const state = new Array<number>(7 * count);
  const acceleration = new Array<number>(3 * count);
  for (let n = 0; n < count; n++) {
    const at = NODE_SIZE * n;
    const to = 7 * n;
    time[n] = nodes[at] as number;
    turn(c, nodes, at + 1, state, to);
    const x = x0 + (state[to] as number);
    const z = z0 + (state[to + 2] as number);
    state[to] = x;
    state[to + 1] = elevation + c.slopeX * x + c.slopeZ * z + (nodes[at + 2] as number) / c.normalY;
    state[to + 2] = z;
    turn(c, nodes, at + 4, state, to + 3);
    state[to + 6] = nodes[at + 7] as number;
    turn(c, nodes, at + 8, acceleration, 3 * n);
  }
  return { time, state, acceleration };
}

/** Turns a vector from the frame of the ground into the world. */
function turn(c: RunConstants, vectors: Float64Array, at: number, out: number[], to: number): void {
  const along = vectors[at] as number;
  const normal = vectors[at + 1] as number;
  const across = vectors[at + 2] as number;
  out[to] = worldX(c, along, normal, across);
  out[to + 1] = worldY(c, along, normal, across);
  out[to + 2] = worldZ(c, normal, across);
}

function bouncesOf(from: From): Bounce[] {
  const { contacts, contactsUsed } = record;
  const bounces: Bounce[] = [];
  for (let i = 0; i < contactsUsed; i += CONTACT_SIZE) {
    bounces.push({
      position: place(from, contacts, i),
      time: si<Duration>(contacts[i + 3] as number),
      speedBefore: si<Speed>(contacts[i + 4] as number),
      descentAngle: si<Angle>(contacts[i + 5] as number),
      speedAfter: si<Speed>(contacts[i + 6] as number),
      backspinAfter: si<AngularSpeed>(contacts[i + 7] as number),
      hopHeight: si(contacts[i + 8] as number),
    });
  }
  return bounces;
}

/** Says where a landing, in the frame of the ground, lies outside what the bounce was measured on. @internal */
export function landingWarnings(
  { id, tested }: BounceLaw,
  along: number,
  normal: number,
  across: number,
): ModelWarning[] {
  const speed = Math.hypot(along, normal, across);
  const descent = Math.atan2(-normal, Math.hypot(along, across));
  return [
    outsideRange('landing-speed-outside-data', id, 'landingSpeed', tested.speed, speed),
    outsideRange('descent-outside-data', id, 'descentAngle', tested.descent, descent),
  ].filter((warning) => warning !== undefined);
}
