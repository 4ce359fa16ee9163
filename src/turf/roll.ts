import type { RunConstants } from './constants.js';
import { norm } from './norm.js';
import { noteNode, type RunRecord } from './record.js';
import { newRunState, type RunState, TIME, VX, VY, VZ, WX, WY, WZ, X, Z } from './state.js';

/** Below this speed a ball on turf that can hold it is at rest [m/s]: it would stop within 0.1 mm. */
const REST_SPEED = 0.01;
/** Share of its speed that drag may take between two nodes of a level roll: the quintic is good to 0.1 mm (tests/shot). */
const DRAG_BETWEEN_NODES = 0.25;
/** Longest and shortest step on a slope [s]. */
const LONGEST_STEP = 0.1;
const SHORTEST_STEP = 1e-3;

/**
 * Rolls the ball, in place, from the last contact to rest or to the time limit: first it skids until the slip of its
 * contact point is gone, then it rolls without slipping.
 *
 * Rolling begins at v − β S, where S is the slip and β = I/(I + m r²): (5 v + 2 r ω)/7 for a uniform sphere. It
 * decelerates by (5/7) ρ g plus air drag (Penner 2002, Can. J. Phys. 80, 83, from memory), and on a slope accelerates
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

function skid(c: RunConstants, s: RunState, record: RunRecord | undefined): void {
  const vx = s[VX] as number;
  const vz = s[VZ] as number;
  const slipX = vx + c.radius * (s[WZ] as number);
  const slipZ = vz - c.radius * (s[WX] as number);
  const slip = norm(slipX, slipZ);
  if (slip < 1e-9) return;
  const grip = c.friction * c.gravityInto;
  const needed = (c.gripShare * slip) / grip;
  const left = c.timeLimit - (s[TIME] as number);
  const time = Math.min(needed, left);
  const part = time / needed;
  // Friction along the slip stays put; air drag is taken at the middle of the skid.
  const fx = (-grip * slipX) / slip;
  const fz = (-grip * slipZ) / slip;
  const mx = vx + (fx * time) / 2;
  const mz = vz + (fz * time) / 2;
  const drag = c.skidDrag * norm(mx, mz);
  // Over a long skid the drag of the first moment must not turn the ball round.
  const slow = Math.min(drag, 1 / (time + 1e-9));
  const ax = c.gravityAlong - slow * mx;
  const az = c.gravityAcross - slow * mz;
  if (record !== undefined && time > 0) noteSkid(c, s, record, time, part, [fx, fz], [ax, az]);
  s[X] = (s[X] as number) + vx * time + ((fx + ax) * time * time) / 2;
  s[Z] = (s[Z] as number) + vz * time + ((fz + az) * time * time) / 2;
  const free = 1 - c.gripShare;
  s[VX] = vx - c.gripShare * slipX * part + free * ax * time;
  s[VZ] = vz - c.gripShare * slipZ * part + free * az * time;
  s[TIME] = (s[TIME] as number) + time;
}

/**
 * Notes a skid: the cubic with the model's place and velocity at both ends. It differs from a parabola, since air and slope
 * take part of their share through the spin. The spin runs evenly to that of rolling, its twist about the normal gone by
 * then; a node stands where it is least, so that it may be interpolated.
 */
function noteSkid(
  c: RunConstants,
  s: RunState,
  record: RunRecord,
  time: number,
  part: number,
  f: readonly [x: number, z: number],
  a: readonly [x: number, z: number],
): void {
  const share = c.gripShare;
  const [bx, bz] = [f[0] + (1 + 2 * share) * a[0], f[1] + (1 + 2 * share) * a[1]];
  const [jx, jz] = [(-6 * share * a[0]) / time, (-6 * share * a[1]) / time];
  const [vx, vz] = [s[VX] as number, s[VZ] as number];
  const rollX = (vz + (f[1] + (1 - share) * a[1]) * time) / c.radius;
  const rollZ = -(vx + (f[0] + (1 - share) * a[0]) * time) / c.radius;
  const [wx, wy, wz] = [s[WX] as number, s[WY] as number, s[WZ] as number];
  const [dx, dy, dz] = [part * (rollX - wx), -part * wy, part * (rollZ - wz)];
  const least = -(wx * dx + wy * dy + wz * dz) / (dx * dx + dy * dy + dz * dz);
  const note = (u: number): void => {
    const t = u * time;
    const [x, y, z] = [wx + u * dx, wy + u * dy, wz + u * dz];
    noteNode(
      record,
      (s[TIME] as number) + t,
      (s[X] as number) + t * (vx + t * (bx / 2 + (t * jx) / 6)),
      0,
      (s[Z] as number) + t * (vz + t * (bz / 2 + (t * jz) / 6)),
      vx + t * (bx + (t * jx) / 2),
      0,
      vz + t * (bz + (t * jz) / 2),
      Math.sqrt(x * x + y * y + z * z),
      bx + t * jx,
      0,
      bz + t * jz,
    );
  };
  note(0);
  if (least > 0 && least < 1) note(least);
  note(1);
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
