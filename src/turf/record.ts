import { STRAIGHT_DOWN } from './bounce.js';
import { norm } from './norm.js';
import { type RunState, TIME, VX, VY, VZ, WX, WY, WZ, X, Y, Z } from './state.js';

/** Numbers a contact: position (3), time, speed and descent before, speed, backspin and height of hop after. @internal */
export const CONTACT_SIZE = 9;
/** Numbers a node: time, position (3), velocity (3), spin rate, acceleration (3). @internal */
export const NODE_SIZE = 11;

/**
 * What happened in a run, in the frame of the ground: contacts, and nodes of the path between them. A record is used for
 * one run after another, since to grow arrays anew would take longer than the run.
 * @internal
 */
export interface RunRecord {
  contacts: Float64Array;
  nodes: Float64Array;
  /** Numbers in use. */
  contactsUsed: number;
  nodesUsed: number;
}

/** An empty record. @internal */
export function newRunRecord(): RunRecord {
  return {
    contacts: new Float64Array(32 * CONTACT_SIZE),
    nodes: new Float64Array(64 * NODE_SIZE),
    contactsUsed: 0,
    nodesUsed: 0,
  };
}

function withRoom(array: Float64Array, used: number, size: number): Float64Array {
  if (used + size <= array.length) return array;
  const longer = new Float64Array(2 * array.length);
  longer.set(array);
  return longer;
}

/** Notes a ball at height `y` above the plane, with its spin rate and acceleration. @internal */
export function noteNode(
  record: RunRecord,
  time: number,
  x: number,
  y: number,
  z: number,
  vx: number,
  vy: number,
  vz: number,
  spin: number,
  ax: number,
  ay: number,
  az: number,
): void {
  const at = record.nodesUsed;
  record.nodes = withRoom(record.nodes, at, NODE_SIZE);
  record.nodesUsed = at + NODE_SIZE;
  const { nodes } = record;
  nodes[at] = time;
  nodes[at + 1] = x;
  nodes[at + 2] = y;
  nodes[at + 3] = z;
  nodes[at + 4] = vx;
  nodes[at + 5] = vy;
  nodes[at + 6] = vz;
  nodes[at + 7] = spin;
  nodes[at + 8] = ax;
  nodes[at + 9] = ay;
  nodes[at + 10] = az;
}

/** Rate of the whole spin [rad/s]. @internal */
export function spinRate(s: RunState): number {
  const [x, y, z] = [s[WX] as number, s[WY] as number, s[WZ] as number];
  return Math.sqrt(x * x + y * y + z * z);
}

/** Notes a contact from the velocity before it and the state after it. @internal */
export function noteContact(
  record: RunRecord,
  vx: number,
  vy: number,
  vz: number,
  s: RunState,
  hopHeight: number,
): void {
  const along = norm(vx, vz);
  const hx = along > STRAIGHT_DOWN ? vx / along : 1;
  const hz = along > STRAIGHT_DOWN ? vz / along : 0;
  const at = record.contactsUsed;
  record.contacts = withRoom(record.contacts, at, CONTACT_SIZE);
  record.contactsUsed = at + CONTACT_SIZE;
  const { contacts } = record;
  contacts[at] = s[X] as number;
  contacts[at + 1] = s[Y] as number;
  contacts[at + 2] = s[Z] as number;
  contacts[at + 3] = s[TIME] as number;
  contacts[at + 4] = norm(along, vy);
  contacts[at + 5] = Math.atan2(-vy, along);
  contacts[at + 6] = norm(norm(s[VX] as number, s[VY] as number), s[VZ] as number);
  contacts[at + 7] = (s[WZ] as number) * hx - (s[WX] as number) * hz;
  contacts[at + 8] = hopHeight;
}

/**
 * Spreads evenly over a hop what the turf took from it: a deceleration along and across the plane [m/s²] for the nodes
 * from index `first` on, the last of which is where the hop ended, to the last bit, with the spin after it.
 * @internal
 */
export function spreadOver(
  { nodes, nodesUsed }: RunRecord,
  first: number,
  dx: number,
  dz: number,
  end: RunState,
): void {
  const start = nodes[first] as number;
  for (let i = first; i < nodesUsed; i += NODE_SIZE) {
    const t = (nodes[i] as number) - start;
    nodes[i + 1] = (nodes[i + 1] as number) - (dx * t * t) / 2;
    nodes[i + 3] = (nodes[i + 3] as number) - (dz * t * t) / 2;
    nodes[i + 4] = (nodes[i + 4] as number) - dx * t;
    nodes[i + 6] = (nodes[i + 6] as number) - dz * t;
    nodes[i + 8] = (nodes[i + 8] as number) - dx;
    nodes[i + 10] = (nodes[i + 10] as number) - dz;
  }
  const last = nodesUsed - NODE_SIZE;
  nodes[last + 1] = end[X] as number;
  nodes[last + 3] = end[Z] as number;
  nodes[last + 7] = spinRate(end);
}
