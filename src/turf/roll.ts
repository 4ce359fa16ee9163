import type { RunConstants } from './constants.js';
import { norm } from './norm.js';
import { noteNode, type RunRecord } from './record.js';
import { skid } from './skid.js';
import { newRunState, type RunState, TIME, VX, VY, VZ, X, Z } from './state.js';

/** Below this speed a ball on turf that can hold it is at rest [m/s]: it would stop within 0.1 mm. @internal */
export const REST_SPEED = 0.01;
/** Share of its speed that drag may take between two nodes of a level roll: the quintic is good to 0.1 mm (tests/shot). */
const DRAG_BETWEEN_NODES = 0.25;
/** Longest and shortest step on a slope [s]. */
const LONGEST_STEP = 0.1;
const SHORTEST_STEP = 1e-3;

/**
 * Rolls the ball, in place, from the last contact to rest or to the time limit: first it skids until the slip of its
 * contact point is gone, then it rolls without slipping.
 *
 * Without air, rolling begins at v − β S, where S is the slip and β = I/(I + m r²): (5 v + 2 r ω)/7 for a uniform sphere.
 * It decelerates by (5/7) (ρ g + air drag) (Penner 2002, Can. J. Phys. 80, 83, from memory), and on a slope accelerates
 * by (5/7) of the pull along it.
 * @param record - takes the nodes of the path
 * @returns true when the ball came to rest
 * @internal
 */
export function roll(c: RunConstants, s: RunState, record?: RunRecord): boolean {
  s[VY] = 0;
  skid(c, s, record);
  if ((s[TIME] as number) >= c.timeLimit) return false;
  return c.gravityAlong === 0 && c.gravityAcross === 0 ? rollLevel(c, s, record) : rollOnSlope(c, s, record);
}

/** Notes a ball that rolls, with its acceleration. */
function noteRolling(c: RunConstants, s: RunState, record: RunRecord, ax: number, az: number): void {
  const vx = s[VX] as number;
  const vz = s[VZ] as number;
  const spin = norm(vx, vz) / c.radius;
  noteNode(record, s[TIME] as number, s[X] as number, 0, s[Z] as number, vx, 0, vz, spin, ax, 0, az);
}

/** Closed form: dv/dt = −a − k v². */
function rollLevel(c: RunConstants, s: RunState, record: RunRecord | undefined): boolean {
  const speed = norm(s[VX] as number, s[VZ] as number);
  const ux = speed > 0 ? (s[VX] as number) / speed : 0;
  const uz = speed > 0 ? (s[VZ] as number) / speed : 0;
  const [x0, z0, t0] = [s[X] as number, s[Z] as number, s[TIME] as number];
  const a = c.rollDeceleration;
  const k = (1 - c.gripShare) * c.skidDrag;
  const left = c.timeLimit - t0;
  const x = (k * speed * speed) / a;
  // Without air, or nearly so, the logarithm and the arc tangent lose their figures.
  const thin = x < 1e-9;
  const root = Math.sqrt(a * k);
  const phase = Math.atan(Math.sqrt(x));
  const distanceAt = (t: number): number =>
    thin ? speed * t - (a * t * t) / 2 : Math.log(Math.cos(phase - root * t) / Math.cos(phase)) / k;
  const speedAt = (t: number): number =>
    thin ? speed - a * t : Math.sqrt(a / k) * Math.tan(phase - root * t);
  const moveTo = (t: number, distance: number, v: number): void => {
    s[X] = x0 + ux * distance;
    s[Z] = z0 + uz * distance;
    s[VX] = ux * v;
    s[VZ] = uz * v;
    s[TIME] = t0 + t;
    if (record !== undefined) noteRolling(c, s, record, -ux * (a + k * v * v), -uz * (a + k * v * v));
  };

  const stop = thin ? speed / a : phase / root;
  if (record !== undefined) {
    const step = (t: number): number => DRAG_BETWEEN_NODES / (root + k * speedAt(t));
    for (let t = 0; t < Math.min(stop, left); t += step(t)) moveTo(t, distanceAt(t), speedAt(t));
  }
  if (stop <= left) moveTo(stop, thin ? (speed * speed) / (2 * a) : Math.log1p(x) / (2 * k), 0);
  else moveTo(left, distanceAt(left), speedAt(left));
  return stop <= left;
}

/** Midpoint steps, each a small part of the time to stop. */
function rollOnSlope(c: RunConstants, s: RunState, record: RunRecord | undefined): boolean {
  const free = 1 - c.gripShare;
  const k = free * c.skidDrag;
  const gx = free * c.gravityAlong;
  const gz = free * c.gravityAcross;
  const pull = norm(gx, gz);
  const holds = c.rollDeceleration >= pull;
  const note = record === undefined ? undefined : sparing(c, record);
  for (;;) {
    const vx = s[VX] as number;
    const vz = s[VZ] as number;
    const speed = norm(vx, vz);
    const left = c.timeLimit - (s[TIME] as number);
    const most = c.rollDeceleration + k * speed * speed + pull;
    const dt = Math.min(left, LONGEST_STEP, Math.max(SHORTEST_STEP, (0.1 * speed) / most));
    const rests = speed < REST_SPEED && holds;
    const over = left <= 1e-12;
    const d = resistance(c.rollDeceleration, k, speed, over ? SHORTEST_STEP : dt);
    if (rests) {
      s[VX] = 0;
      s[VZ] = 0;
    }
    note?.(s, gx - d * vx, gz - d * vz, rests || over);
    if (rests || over) return rests;
    const hx = vx + (dt / 2) * (gx - d * vx);
    const hz = vz + (dt / 2) * (gz - d * vz);
    const e = resistance(c.rollDeceleration, k, norm(hx, hz), dt);
    s[X] = (s[X] as number) + dt * hx;
    s[Z] = (s[Z] as number) + dt * hz;
    s[VX] = vx + dt * (gx - e * hx);
    s[VZ] = vz + dt * (gz - e * hz);
    s[TIME] = (s[TIME] as number) + dt;
  }
}

/** How far off the path may be for want of a node on a slope, but for a factor of some 50 [m]. */
const SPARED = 0.002;

/**
 * Notes only the nodes that a quintic through them needs: it knows the acceleration at its ends and takes it as even in
 * between, so that a change of acceleration over the square of the time since the last node bounds its error. Where the
 * ball turns back the acceleration jumps; then the node before the jump is noted too.
 */
function sparing(
  c: RunConstants,
  record: RunRecord,
): (s: RunState, ax: number, az: number, last: boolean) => void {
  const from = { t: Number.NEGATIVE_INFINITY, ax: 0, az: 0 };
  const before = newRunState();
  let [beforeX, beforeZ] = [0, 0];
  const noteAt = (s: RunState, ax: number, az: number): void => {
    from.t = s[TIME] as number;
    from.ax = ax;
    from.az = az;
    noteRolling(c, s, record, ax, az);
  };
  return (s, ax, az, last) => {
    const since = (s[TIME] as number) - from.t;
    if (since === Number.POSITIVE_INFINITY) noteAt(s, ax, az);
    else if (norm(ax - from.ax, az - from.az) * since * since > SPARED && (before[TIME] as number) > from.t)
      noteAt(before, beforeX, beforeZ);
    if (last && (s[TIME] as number) > from.t) noteAt(s, ax, az);
    before.set(s);
    [beforeX, beforeZ] = [ax, az];
  };
}

/** Resistance over speed [1/s]; turf can stop a ball within a step but not turn it back. */
function resistance(deceleration: number, k: number, speed: number, dt: number): number {
  return deceleration / Math.max(speed, deceleration * dt) + k * speed;
}
