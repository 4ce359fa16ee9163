import type { RunConstants } from './constants.js';
import { norm } from './norm.js';
import { noteNode, type RunRecord } from './record.js';
import { newRunState, type RunState, TIME, VX, VZ, WX, WY, WZ, X, Z } from './state.js';

/** Longest step of a skid [s]: air drag changes gently, so fourth order leaves under 0.1 mm at 45 m/s (tests/turf). */
const LONGEST_STEP = 0.2;
/** Share of the time left to rolling that a step takes at most: friction turns round where the slip ends. */
const SHARE = 0.5;
/** Slip that is gone before anything else changes: the rest of the skid is a parabola [m/s]. */
const LAST_SLIP = 1e-4;
/** Slip that is none [m/s], and time that is none [s]: less might be lost in rounding. */
const NO_SLIP = 1e-9;
const NO_TIME = 1e-12;

/**
 * Skids the ball, in place, until it rolls or the time limit comes. Friction μ g acts against the slip S of the contact
 * point and takes S away at μ g/β, β = I/(I + m r²): 7 μ g/2 for a uniform sphere (Penner 2002, Can. J. Phys. 80, 83, from
 * memory; any mechanics text). Air drag and the pull of a slope act on the velocity alone and so change the slip too. The
 * motion is integrated by Runge and Kutta's fourth-order method.
 * @internal
 */
export function skid(c: RunConstants, s: RunState, record?: RunRecord): void {
  const start = slipOf(c, s);
  if (start < NO_SLIP) return;
  const note = record === undefined ? undefined : notes(c, record, s[WY] as number, start);
  for (;;) {
    const slip = slipOf(c, s);
    const left = c.timeLimit - (s[TIME] as number);
    if (!(slip >= NO_SLIP && left > NO_TIME)) break;
    // How fast the slip falls: on a steep slope, or with little friction, not at all.
    const rate = slipRate(c, s, slip);
    const needed = rate > 0 ? slip / rate : Number.POSITIVE_INFINITY;
    const last = slip < LAST_SLIP && needed <= left;
    const dt = last ? needed : Math.min(left, LONGEST_STEP, SHARE * needed);
    note?.(s, dt);
    if (last) {
      endSkid(c, s, dt);
      break;
    }
    skidFor(c, s, dt);
  }
  note?.(s, 0);
}

function slipAlong(c: RunConstants, s: RunState): number {
  return (s[VX] as number) + c.radius * (s[WZ] as number);
}

function slipAcross(c: RunConstants, s: RunState): number {
  return (s[VZ] as number) - c.radius * (s[WX] as number);
}

function slipOf(c: RunConstants, s: RunState): number {
  return norm(slipAlong(c, s), slipAcross(c, s));
}

function slipRate(c: RunConstants, s: RunState, slip: number): number {
  const drag = c.skidDrag * norm(s[VX] as number, s[VZ] as number);
  const ax = c.gravityAlong - drag * (s[VX] as number);
  const az = c.gravityAcross - drag * (s[VZ] as number);
  const more = (ax * slipAlong(c, s) + az * slipAcross(c, s)) / slip;
  return (c.law.friction * c.gravityInto) / c.gripShare - more;
}

/** The last of a skid, too short for its forces to change: the velocity goes to that of rolling. */
function endSkid(c: RunConstants, s: RunState, dt: number): void {
  const [vx, vz] = [s[VX] as number, s[VZ] as number];
  const drag = c.skidDrag * norm(vx, vz);
  const free = (1 - c.gripShare) * dt;
  const endX = vx - c.gripShare * slipAlong(c, s) + free * (c.gravityAlong - drag * vx);
  const endZ = vz - c.gripShare * slipAcross(c, s) + free * (c.gravityAcross - drag * vz);
  s[X] = (s[X] as number) + (dt / 2) * (vx + endX);
  s[Z] = (s[Z] as number) + (dt / 2) * (vz + endZ);
  s[VX] = endX;
  s[VZ] = endZ;
  s[WX] = endZ / c.radius;
  s[WZ] = -endX / c.radius;
  s[TIME] = (s[TIME] as number) + dt;
}

/** One step of the classical fourth-order Runge–Kutta method, in place. */
function skidFor(c: RunConstants, s: RunState, dt: number): void {
  const [vx, vz] = [s[VX] as number, s[VZ] as number];
  const [slipX, slipZ] = [slipAlong(c, s), slipAcross(c, s)];
  const grip = c.law.friction * c.gravityInto;
  const perSlip = 1 / c.gripShare;
  let [fx, fz, ax, az] = [0, 0, 0, 0];
  let [sumFx, sumFz, sumAx, sumAz, placeX, placeZ] = [0, 0, 0, 0, 0, 0];
  for (let stage = 0; stage < 4; stage++) {
    const h = stage === 0 ? 0 : stage === 3 ? dt : dt / 2;
    const ux = vx + h * (fx + ax);
    const uz = vz + h * (fz + az);
    const px = slipX + h * (perSlip * fx + ax);
    const pz = slipZ + h * (perSlip * fz + az);
    const slip = Math.max(norm(px, pz), NO_SLIP);
    const drag = c.skidDrag * norm(ux, uz);
    fx = (-grip * px) / slip;
    fz = (-grip * pz) / slip;
    ax = c.gravityAlong - drag * ux;
    az = c.gravityAcross - drag * uz;
    const weight = stage === 0 || stage === 3 ? 1 : 2;
    sumFx += weight * fx;
    sumFz += weight * fz;
    sumAx += weight * ax;
    sumAz += weight * az;
    if (stage < 3) {
      placeX += fx + ax;
      placeZ += fz + az;
    }
  }
  s[X] = (s[X] as number) + dt * (vx + (dt / 6) * placeX);
  s[Z] = (s[Z] as number) + dt * (vz + (dt / 6) * placeZ);
  s[VX] = vx + (dt / 6) * (sumFx + sumAx);
  s[VZ] = vz + (dt / 6) * (sumFz + sumAz);
  const spin = ((perSlip - 1) * dt) / (6 * c.radius);
  s[WX] = (s[WX] as number) - spin * sumFz;
  s[WZ] = (s[WZ] as number) + spin * sumFx;
  s[TIME] = (s[TIME] as number) + dt;
}

/**
 * Notes the start of each step of a skid. The twist about the normal is taken to fade with the slip. Where backspin turns
 * to topspin within a step, a node stands where the spin is least, so that it may be interpolated.
 */
function notes(
  c: RunConstants,
  record: RunRecord,
  twist: number,
  firstSlip: number,
): (s: RunState, dt: number) => void {
  const ahead = newRunState();
  const note = (s: RunState): void => {
    const [vx, vz] = [s[VX] as number, s[VZ] as number];
    const slip = slipOf(c, s);
    const drag = c.skidDrag * norm(vx, vz);
    const grip = slip < NO_SLIP ? 0 : (c.law.friction * c.gravityInto) / slip;
    noteNode(
      record,
      s[TIME] as number,
      s[X] as number,
      0,
      s[Z] as number,
      vx,
      0,
      vz,
      norm(norm(s[WX] as number, s[WZ] as number), (twist * slip) / firstSlip),
      c.gravityAlong - drag * vx - grip * slipAlong(c, s),
      0,
      c.gravityAcross - drag * vz - grip * slipAcross(c, s),
    );
  };
  return (s, dt) => {
    note(s);
    if (dt === 0) return;
    ahead.set(s);
    skidFor(c, ahead, dt);
    const [wx, wz] = [s[WX] as number, s[WZ] as number];
    const dx = (ahead[WX] as number) - wx;
    const dz = (ahead[WZ] as number) - wz;
    const least = -(wx * dx + wz * dz) / (dx * dx + dz * dz);
    if (!(least > 0.01 && least < 0.99)) return;
    ahead.set(s);
    skidFor(c, ahead, least * dt);
    note(ahead);
  };
}
