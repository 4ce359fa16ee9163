import type { RunConstants } from './constants.js';
import { norm } from './norm.js';
import { type RunState, TIME, VX, VY, VZ, WX, WZ, X, Z } from './state.js';

/** Below this speed a ball on turf that can hold it is at rest [m/s]: it would stop within 0.1 mm. */
const REST_SPEED = 0.01;
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
 * @returns true when the ball came to rest
 * @internal
 */
export function roll(c: RunConstants, s: RunState): boolean {
  s[VY] = 0;
  skid(c, s);
  if ((s[TIME] as number) >= c.timeLimit) return false;
  return c.gravityAlong === 0 && c.gravityAcross === 0 ? rollLevel(c, s) : rollOnSlope(c, s);
}

function skid(c: RunConstants, s: RunState): void {
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
  s[X] = (s[X] as number) + vx * time + ((fx + ax) * time * time) / 2;
  s[Z] = (s[Z] as number) + vz * time + ((fz + az) * time * time) / 2;
  const free = 1 - c.gripShare;
  s[VX] = vx - c.gripShare * slipX * part + free * ax * time;
  s[VZ] = vz - c.gripShare * slipZ * part + free * az * time;
  s[TIME] = (s[TIME] as number) + time;
}

/** Closed form: dv/dt = −a − k v². */
function rollLevel(c: RunConstants, s: RunState): boolean {
  const speed = norm(s[VX] as number, s[VZ] as number);
  if (speed === 0) return true;
  const a = c.rollDeceleration;
  const k = (1 - c.gripShare) * c.skidDrag;
  const left = c.timeLimit - (s[TIME] as number);
  const x = (k * speed * speed) / a;
  // Without air, or nearly so, the logarithm and the arc tangent lose their figures.
  const thin = x < 1e-9;
  const root = Math.sqrt(a * k);
  const phase = Math.atan(Math.sqrt(x));
  const stop = thin ? speed / a : phase / root;
  const rests = stop <= left;
  let distance: number;
  let after = 0;
  if (rests) distance = thin ? (speed * speed) / (2 * a) : Math.log1p(x) / (2 * k);
  else if (thin) {
    distance = speed * left - (a * left * left) / 2;
    after = speed - a * left;
  } else {
    const then = phase - root * left;
    distance = Math.log(Math.cos(then) / Math.cos(phase)) / k;
    after = Math.sqrt(a / k) * Math.tan(then);
  }
  const ux = (s[VX] as number) / speed;
  const uz = (s[VZ] as number) / speed;
  s[X] = (s[X] as number) + ux * distance;
  s[Z] = (s[Z] as number) + uz * distance;
  s[VX] = ux * after;
  s[VZ] = uz * after;
  s[TIME] = (s[TIME] as number) + Math.min(stop, left);
  return rests;
}

/** Midpoint steps, each a small part of the time to stop. */
function rollOnSlope(c: RunConstants, s: RunState): boolean {
  const free = 1 - c.gripShare;
  const k = free * c.skidDrag;
  const gx = free * c.gravityAlong;
  const gz = free * c.gravityAcross;
  const pull = norm(gx, gz);
  const holds = c.rollDeceleration >= pull;
  let vx = s[VX] as number;
  let vz = s[VZ] as number;
  for (;;) {
    const speed = norm(vx, vz);
    if (speed < REST_SPEED && holds) {
      s[VX] = 0;
      s[VZ] = 0;
      return true;
    }
    const left = c.timeLimit - (s[TIME] as number);
    if (left <= 1e-12) {
      s[VX] = vx;
      s[VZ] = vz;
      return false;
    }
    const most = c.rollDeceleration + k * speed * speed + pull;
    const dt = Math.min(left, LONGEST_STEP, Math.max(SHORTEST_STEP, (0.1 * speed) / most));
    const d = resistance(c.rollDeceleration, k, speed, dt);
    const hx = vx + (dt / 2) * (gx - d * vx);
    const hz = vz + (dt / 2) * (gz - d * vz);
    const e = resistance(c.rollDeceleration, k, norm(hx, hz), dt);
    s[X] = (s[X] as number) + dt * hx;
    s[Z] = (s[Z] as number) + dt * hz;
    vx += dt * (gx - e * hx);
    vz += dt * (gz - e * hz);
    s[TIME] = (s[TIME] as number) + dt;
  }
}

/** Resistance over speed [1/s]; turf can stop a ball within a step but not turn it back. */
function resistance(deceleration: number, k: number, speed: number, dt: number): number {
  return deceleration / Math.max(speed, deceleration * dt) + k * speed;
}
