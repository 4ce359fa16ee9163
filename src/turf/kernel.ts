import { bounce } from './bounce.js';
import type { RunConstants } from './constants.js';
import { hop, hopHeight, isRolling } from './hop.js';
import { noteContact, type RunRecord } from './record.js';
import { roll } from './roll.js';
import { type RunState, VX, VY, VZ } from './state.js';

/** Bounces after which the ball is taken to roll, so that no turf can keep it hopping for ever. @internal */
export const MOST_BOUNCES = 200;

/**
 * Bounces and rolls the ball, in place, until it rests or the time limit comes. Allocates nothing unless it records.
 * @param c - constants of the run
 * @param s - state at landing, in the frame of the ground; the state at the end afterwards
 * @param record - takes the contacts and the nodes of the path
 * @returns true when the ball came to rest
 * @internal
 */
export function run(c: RunConstants, s: RunState, record?: RunRecord): boolean {
  // A ball that starts away from the plane flies first.
  if ((s[VY] as number) > 0 && !hop(c, s, record)) return false;
  for (let count = 1; ; count++) {
    const vx = s[VX] as number;
    const vy = s[VY] as number;
    const vz = s[VZ] as number;
    bounce(c, s);
    const height = hopHeight(c, s[VY] as number);
    if (record !== undefined) noteContact(record, vx, vy, vz, s, height);
    if (isRolling(height) || count === MOST_BOUNCES) return roll(c, s, record);
    if (!hop(c, s, record)) return false;
  }
}

/** Turns a world vector into the frame of the ground. @internal */
export function toGround(c: RunConstants, x: number, y: number, z: number, s: RunState, at: number): void {
  s[at] = c.alongX * x + c.alongY * y;
  s[at + 1] = c.normalX * x + c.normalY * y + c.normalZ * z;
  s[at + 2] = acrossX(c) * x + acrossY(c) * y + acrossZ(c) * z;
}

/** World components of a vector in the frame of the ground. @internal */
export function worldX(c: RunConstants, along: number, normal: number, across: number): number {
  return c.alongX * along + c.normalX * normal + acrossX(c) * across;
}
/** @internal */
export function worldY(c: RunConstants, along: number, normal: number, across: number): number {
  return c.alongY * along + c.normalY * normal + acrossY(c) * across;
}
/** @internal */
export function worldZ(c: RunConstants, normal: number, across: number): number {
  return c.normalZ * normal + acrossZ(c) * across;
}

// across = along × normal
function acrossX(c: RunConstants): number {
  return c.alongY * c.normalZ;
}
function acrossY(c: RunConstants): number {
  return -c.alongX * c.normalZ;
}
function acrossZ(c: RunConstants): number {
  return c.alongX * c.normalY - c.alongY * c.normalX;
}
