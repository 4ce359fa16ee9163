import type { RunConstants } from './constants.js';
import { norm } from './norm.js';
import { noteNode, type RunRecord, spinRate, spreadOver } from './record.js';
import { type RunState, TIME, VX, VY, VZ, WX, WZ, X, Y, Z } from './state.js';

/** Longest step of a hop [s]; the drag on a hop is gentle, so fourth order leaves under 0.1 mm, at 25 m/s under 0.01. */
const STEP = 0.2;
/** Time over which a parabola is as good as a step [s]: it errs by 1e-12 m there. */
const SHORT = 1e-4;
/** Time between two nodes of a record, but for a step [s]: the quintic through them is good to 1 mm (tests/shot). */
const BETWEEN_NODES = 0.6;
/** Height of a hop at which rolling takes over [m]: 5 mm (Penner 2002, from memory). @internal */
export const ROLL_HEIGHT = 0.005;

/**
 * Share of the rolling resistance that a hop meets: none above 7.5 mm, all of it at 2.5 mm, where the ball no longer
 * leaves the blades. This spreads the published switch at 5 mm, so that the run has no steps of a whole hop.
 * @param height - height of the hop [m]
 * @internal
 */
export function brushing(height: number): number {
  const x = Math.min(1, Math.max(0, (height - ROLL_HEIGHT / 2) / ROLL_HEIGHT));
  return 1 - x * x * (3 - 2 * x);
}

/** Height of the hop that starts with the given normal speed [m]. @internal */
export function hopHeight(c: RunConstants, normalSpeed: number): number {
  return (normalSpeed * normalSpeed) / (2 * c.gravityInto);
}

/** True when the hop is too low to be one. @internal */
export function isRolling(height: number): boolean {
  return height < ROLL_HEIGHT / 2;
}

/**
 * Flies the ball, in place, from the plane back to the plane, or to the time limit: gravity and drag with a coefficient
 * of 0.30; lift, wind and spin decay are left out, as hops are low and slow.
 * @param record - takes the nodes of the hop
 * @returns false when the time limit came first
 * @internal
 */
export function hop(c: RunConstants, s: RunState, record?: RunRecord): boolean {
  const first = record?.nodesUsed ?? 0;
  const start = s[TIME] as number;
  const rise = s[VY] as number;
  const brush = brushing(hopHeight(c, rise));
  // Time aloft to first order in drag; where it is wrong, the steps go on until the ball is down.
  const drag = c.hopDrag * Math.sqrt(rise * rise + along2(s));
  const aloft = ((2 * rise) / c.gravityInto) * Math.max(0.2, 1 - (drag * rise) / (3 * c.gravityInto));
  let dt = Math.max(SHORT, aloft / Math.max(1, Math.ceil(aloft / STEP)));
  let x = 0;
  let y = 0;
  let z = 0;
  let vx = 0;
  let vy = 0;
  let vz = 0;
  let t = start;
  let early = 0;
  let noted = Number.NEGATIVE_INFINITY;
  do {
    x = s[X] as number;
    y = s[Y] as number;
    z = s[Z] as number;
    vx = s[VX] as number;
    vy = s[VY] as number;
    vz = s[VZ] as number;
    t = s[TIME] as number;
    const over = t >= c.timeLimit;
    if (record !== undefined && (over || t - noted > BETWEEN_NODES)) {
      noteAloft(c, s, record);
      noted = t;
    }
    if (over) return false;
    flyFor(c, s, dt);
    early = untilDown(s);
  } while (early > dt / 2);
  // Land by Newton's method on the length of that step; what is left at the end is too short to need a step.
  for (let i = 0; i < 8 && Math.abs(early) > SHORT && early < Number.POSITIVE_INFINITY; i++) {
    dt += early;
    s[X] = x;
    s[Y] = y;
    s[Z] = z;
    s[VX] = vx;
    s[VY] = vy;
    s[VZ] = vz;
    s[TIME] = t;
    flyFor(c, s, dt);
    early = untilDown(s);
  }
  if (early < Number.POSITIVE_INFINITY) drift(c, s, early);
  s[Y] = 0;
  if (record !== undefined) noteAloft(c, s, record);
  resist(c, s, brush, (s[TIME] as number) - start, record, first);
  return (s[TIME] as number) < c.timeLimit;
}

function noteAloft(c: RunConstants, s: RunState, record: RunRecord): void {
  const vx = s[VX] as number;
  const vy = s[VY] as number;
  const vz = s[VZ] as number;
  const d = c.hopDrag * Math.sqrt(vx * vx + vy * vy + vz * vz);
  noteNode(
    record,
    s[TIME] as number,
    s[X] as number,
    s[Y] as number,
    s[Z] as number,
    vx,
    vy,
    vz,
    spinRate(s),
    c.gravityAlong - d * vx,
    -c.gravityInto - d * vy,
    c.gravityAcross - d * vz,
  );
}

function along2(s: RunState): number {
  return (s[VX] as number) * (s[VX] as number) + (s[VZ] as number) * (s[VZ] as number);
}

/** Time until the ball is down, by the tangent; infinite while it rises. */
function untilDown(s: RunState): number {
  const fall = -(s[VY] as number);
  return fall > 0 ? (s[Y] as number) / fall : Number.POSITIVE_INFINITY;
}

/** Moves the ball by a parabola. */
function drift(c: RunConstants, s: RunState, dt: number): void {
  const d = c.hopDrag * Math.sqrt(along2(s) + (s[VY] as number) * (s[VY] as number));
  const ax = c.gravityAlong - d * (s[VX] as number);
  const ay = -c.gravityInto - d * (s[VY] as number);
  const az = c.gravityAcross - d * (s[VZ] as number);
  s[X] = (s[X] as number) + dt * ((s[VX] as number) + (dt / 2) * ax);
  s[Z] = (s[Z] as number) + dt * ((s[VZ] as number) + (dt / 2) * az);
  s[VX] = (s[VX] as number) + dt * ax;
  s[VY] = (s[VY] as number) + dt * ay;
  s[VZ] = (s[VZ] as number) + dt * az;
  s[TIME] = (s[TIME] as number) + dt;
}

/**
 * Takes from a hop what the turf takes at its ends. A low hop loses the speed that rolling for as long would have lost,
 * and as much topspin; backspin is kept, since turf that slows a ball does not spin it up. A high one loses nothing on
 * level ground, where the crater accounts for the loss; down a slope the turf takes up the pull along the travel, as far
 * as its rolling resistance goes. Without that a ball would go on hopping down slopes that stop a rolling one. Assumption.
 */
function resist(
  c: RunConstants,
  s: RunState,
  brush: number,
  time: number,
  record: RunRecord | undefined,
  first: number,
): void {
  const speed = norm(s[VX] as number, s[VZ] as number);
  if (speed === 0) return;
  const ux = (s[VX] as number) / speed;
  const uz = (s[VZ] as number) / speed;
  const pull = Math.max(0, c.gravityAlong * ux + c.gravityAcross * uz);
  const held = Math.min(speed, (1 - brush) * Math.min(pull, c.rollDeceleration / (1 - c.gripShare)) * time);
  const rolled = Math.min(speed - held, brush * c.rollDeceleration * time);
  const lost = held + rolled;
  s[X] = (s[X] as number) - (ux * lost * time) / 2;
  s[Z] = (s[Z] as number) - (uz * lost * time) / 2;
  s[VX] = (s[VX] as number) - ux * lost;
  s[VZ] = (s[VZ] as number) - uz * lost;
  const topspin = (s[WX] as number) * uz - (s[WZ] as number) * ux;
  const taken = Math.min(Math.max(0, topspin), rolled / c.radius);
  s[WX] = (s[WX] as number) - taken * uz;
  s[WZ] = (s[WZ] as number) + taken * ux;
  if (record === undefined || lost === 0) return;
  spreadOver(record, first, (ux * lost) / time, (uz * lost) / time, s);
}

/** One step of the classical fourth-order Runge–Kutta method, in place. */
function flyFor(c: RunConstants, s: RunState, dt: number): void {
  const k = c.hopDrag;
  const gx = c.gravityAlong;
  const gy = -c.gravityInto;
  const gz = c.gravityAcross;
  const vx = s[VX] as number;
  const vy = s[VY] as number;
  const vz = s[VZ] as number;
  const half = dt / 2;

  let d = k * Math.sqrt(vx * vx + vy * vy + vz * vz);
  const ax1 = gx - d * vx;
  const ay1 = gy - d * vy;
  const az1 = gz - d * vz;
  let ux = vx + half * ax1;
  let uy = vy + half * ay1;
  let uz = vz + half * az1;
  d = k * Math.sqrt(ux * ux + uy * uy + uz * uz);
  const ax2 = gx - d * ux;
  const ay2 = gy - d * uy;
  const az2 = gz - d * uz;
  ux = vx + half * ax2;
  uy = vy + half * ay2;
  uz = vz + half * az2;
  d = k * Math.sqrt(ux * ux + uy * uy + uz * uz);
  const ax3 = gx - d * ux;
  const ay3 = gy - d * uy;
  const az3 = gz - d * uz;
  ux = vx + dt * ax3;
  uy = vy + dt * ay3;
  uz = vz + dt * az3;
  d = k * Math.sqrt(ux * ux + uy * uy + uz * uz);
  const ax4 = gx - d * ux;
  const ay4 = gy - d * uy;
  const az4 = gz - d * uz;

  const w = (dt * dt) / 6;
  s[X] = (s[X] as number) + dt * vx + w * (ax1 + ax2 + ax3);
  s[Y] = (s[Y] as number) + dt * vy + w * (ay1 + ay2 + ay3);
  s[Z] = (s[Z] as number) + dt * vz + w * (az1 + az2 + az3);
  s[VX] = vx + (dt / 6) * (ax1 + 2 * ax2 + 2 * ax3 + ax4);
  s[VY] = vy + (dt / 6) * (ay1 + 2 * ay2 + 2 * ay3 + ay4);
  s[VZ] = vz + (dt / 6) * (az1 + 2 * az2 + 2 * az3 + az4);
  s[TIME] = (s[TIME] as number) + dt;
}
