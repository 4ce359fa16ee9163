import { type Air, defaultAir } from '../air/index.js';
import type { Ball } from '../ball/index.js';
import { conformingBall } from '../ball/index.js';
import { FairflightError, requireRecord, requireWithin } from '../errors.js';
import type { ModelWarning, Range } from '../source.js';
import type { Track } from '../track.js';
import { type Angle, type AngularSpeed, type Duration, type Speed, si } from '../units/index.js';
import type { Vector3 } from '../vector.js';
import { STRAIGHT_DOWN } from './bounce.js';
import { type RunConstants, runConstants } from './constants.js';
import { run, toGround, worldX, worldY, worldZ } from './kernel.js';
import { resolveTurf } from './presets.js';
import { CONTACT_SIZE, NODE_SIZE, newRunRecord } from './record.js';
import type { Bounce, Run } from './run.js';
import { newRunState, TIME, VX, VY, VZ, WX, X } from './state.js';
import type { Turf, TurfName } from './turf.js';

/** A ball that meets the turf. The landing of a flight is one. */
export interface LandingBall {
  /** Where it meets the ground [m]. */
  readonly position: Vector3;
  /** Velocity [m/s], up to 150. */
  readonly velocity: Vector3;
  /** Total spin rate [rad/s], up to 3,000. */
  readonly spinRate: AngularSpeed;
  /** Spin axis, backspin along +z. Any length from 1e-6 to 1e6. */
  readonly spinAxis: Vector3;
}

/** Options of {@link runOut}. */
export interface RunOptions {
  /** Slope of the ground down the target line [rad], + uphill, −0.8 to 0.8; default 0. */
  readonly slope?: Angle;
  /** Slope of the ground across the target line [rad], + rising to the right, −0.8 to 0.8; default 0. */
  readonly crossSlope?: Angle;
  /** Ball; default the conforming ball. */
  readonly ball?: Ball;
  /** Air, of which only the density is used; default {@link defaultAir}. */
  readonly air?: Pick<Air, 'density'>;
  /** Longest run computed [s], up to 600; default 60. */
  readonly timeLimit?: Duration;
}

/** Where the bounce model was tested: greens, 15 to 30 m/s at 35° to 60°. */
const TESTED_SPEED: Range = { min: 15, max: 30 };
const TESTED_DESCENT: Range = { min: (35 * Math.PI) / 180, max: (60 * Math.PI) / 180 };
/** Id of the bounce model. @internal */
export const RUN_MODEL = 'crater-bounce';
/** Relative half-width of the band of the run. */
const BAND = 0.3;
/** Scratch, made once: a run calls nobody back, so no second run can begin while one is in it. */
const record = newRunRecord();

/**
 * Bounces and rolls a ball that has just landed, until it rests.
 *
 * Bounce: a rigid sphere on turf that gives way as a tilted crater wall (Penner 2002, Can. J. Phys. 80, 931, with the
 * constants from memory), in three dimensions with the whole spin vector, so that sidespin kicks the ball; two guards
 * keep grazing balls sane. Hops fly with drag only (CD 0.30). Then skid, and rolling with turf and air drag. On a
 * slope the whole is done in the frame of the ground plane.
 *
 * The model was tested on greens, at 15–30 m/s and 35–60° of descent; elsewhere it is extrapolated and warns. No bounce
 * model is better than ±30 %: read `band`. The sideways kick follows from the model's mechanics and has no measurement
 * behind it.
 * @param landing - the ball as it meets the ground, for example `flight.landing`
 * @param turf - firmness preset, its name, or your own; default normal
 * @returns contacts, run, resting place and band
 * @throws FairflightError `invalid-input` or `outside-range`
 */
export function runOut(landing: LandingBall, turf?: Turf | TurfName, options: RunOptions = {}): Run {
  return runOnGround(landing, turf, options, undefined);
}

/** As {@link runOut}, on a ground of known elevation [m]; by default the plane through the landing. @internal */
export function runOnGround(
  landing: LandingBall,
  turf: Turf | TurfName | undefined,
  options: RunOptions,
  elevation: number | undefined,
): Run {
  requireRecord('options', options, ['slope', 'crossSlope', 'ball', 'air', 'timeLimit']);
  const slope = requireWithin('options.slope', options.slope ?? 0, -0.8, 0.8, 'rad');
  const crossSlope = requireWithin('options.crossSlope', options.crossSlope ?? 0, -0.8, 0.8, 'rad');
  const timeLimit = requireWithin('options.timeLimit', options.timeLimit ?? 60, 0, 600, 's');
  const density = requireWithin(
    'options.air.density',
    options.air?.density ?? defaultAir.density,
    0,
    5,
    'kg/m³',
  );
  const ball = requireBall(options.ball ?? conformingBall);
  const c = runConstants(resolveTurf(turf), ball, { density: si(density) }, slope, crossSlope, timeLimit);

  const position = requireVector('landing.position', landing.position, 1e5, 'm');
  const velocity = requireVector('landing.velocity', landing.velocity, 150, 'm/s');
  const axis = requireVector('landing.spinAxis', landing.spinAxis, 1e6, '');
  const rate = requireWithin('landing.spinRate', landing.spinRate, 0, 3000, 'rad/s');
  const length = requireWithin('landing.spinAxis length', Math.hypot(axis.x, axis.y, axis.z), 1e-6, 1e6, '');
  const spin = rate / length;

  // The frame of the ground has its origin where the ball landed.
  const s = newRunState();
  toGround(c, velocity.x, velocity.y, velocity.z, s, VX);
  toGround(c, spin * axis.x, spin * axis.y, spin * axis.z, s, WX);
  const warnings = warningsFor(s[VX] as number, s[VY] as number, s[VZ] as number);
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
  const spread = BAND * Math.abs(distance);
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

function warningsFor(along: number, normal: number, across: number): ModelWarning[] {
  const warnings: ModelWarning[] = [];
  const speed = Math.hypot(along, normal, across);
  const descent = Math.atan2(-normal, Math.hypot(along, across));
  const degree = 180 / Math.PI;
  if (speed < TESTED_SPEED.min || speed > TESTED_SPEED.max) {
    warnings.push({
      model: RUN_MODEL,
      quantity: 'landingSpeed',
      range: TESTED_SPEED,
      value: speed,
      message: `The ball lands at ${speed.toFixed(1)} m/s; the bounce was tested from 15 to 30 m/s, so its run is extrapolated.`,
    });
  }
  if (descent < TESTED_DESCENT.min || descent > TESTED_DESCENT.max) {
    warnings.push({
      model: RUN_MODEL,
      quantity: 'descentAngle',
      range: TESTED_DESCENT,
      value: descent,
      message: `The ball comes in at ${(descent * degree).toFixed(1)}° to the ground; the bounce was tested from 35° to 60°, so its run is extrapolated.`,
    });
  }
  return warnings;
}

function requireVector(field: string, value: Vector3, most: number, unit: string): Vector3 {
  if (typeof value !== 'object' || value === null) {
    throw new FairflightError('invalid-input', `${field} must be an object with x, y and z`, {
      field,
      value,
    });
  }
  requireWithin(`${field}.x`, value.x, -most, most, unit);
  requireWithin(`${field}.y`, value.y, -most, most, unit);
  requireWithin(`${field}.z`, value.z, -most, most, unit);
  return value;
}

function requireBall(ball: Ball): Ball {
  requireWithin('options.ball.mass', ball.mass, 0.001, 1, 'kg');
  requireWithin('options.ball.radius', ball.radius, 0.005, 0.1, 'm');
  requireWithin('options.ball.inertia', ball.inertia, 1e-8, 1e-2, 'kg m²');
  return ball;
}
