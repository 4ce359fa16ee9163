import type { Bend, Fairway, Hazard, Hole } from './hole.js';
import { type GroundPoint, isInside } from './polygon.js';

/** A point seen from the centre line of a hole [m]: how far along, and how far to the right. @internal */
export interface HolePosition {
  readonly along: number;
  readonly across: number;
}

/** A point on the ground, and where it lies seen from the centre line. @internal */
export interface Spot extends GroundPoint, HolePosition {}

/** @internal */
export function spotAt(point: GroundPoint, bend: Bend | undefined): Spot {
  const { x, z } = point;
  const { along, across } = positionOnHole(point, bend);
  return { x, z, along, across };
}

/** Where a point lies seen from the nearest point of the centre line. */
function positionOnHole(point: GroundPoint, bend: Bend | undefined): HolePosition {
  if (bend === undefined) return { along: point.x, across: point.z };
  const dx = point.x - bend.at;
  const [c, s] = [Math.cos(bend.angle), Math.sin(bend.angle)];
  const beyond = dx * c + point.z * s;
  const first = { along: Math.min(point.x, bend.at), across: point.z, gap: Math.max(0, dx) };
  const second = {
    along: bend.at + Math.max(0, beyond),
    across: -dx * s + point.z * c,
    gap: Math.min(0, beyond),
  };
  const [a, b] = [Math.hypot(first.across, first.gap), Math.hypot(second.across, second.gap)];
  // At the outer side of the corner both legs end in the same point, and the side is that of the first leg; straight
  // on, it is the side away from the turn.
  return a <= b
    ? { along: first.along, across: Math.sign(first.across || -bend.angle) * a }
    : { along: second.along, across: Math.sign(second.across || 1) * b };
}

/** The point on the ground at a position of the hole. @internal */
export function pointOnHole(position: HolePosition, bend: Bend | undefined): GroundPoint {
  if (bend === undefined || position.along <= bend.at) return { x: position.along, z: position.across };
  const [c, s] = [Math.cos(bend.angle), Math.sin(bend.angle)];
  const beyond = position.along - bend.at;
  return { x: bend.at + beyond * c - position.across * s, z: beyond * s + position.across * c };
}

/** Distance of a point from the hole [m]. @internal */
export function distanceToHole(point: GroundPoint, hole: Hole): number {
  const flag = pointOnHole({ along: hole.length, across: 0 }, hole.fairway.bend);
  return Math.hypot(flag.x - point.x, flag.z - point.z);
}

/** @internal */
export function isOnFairway(spot: Spot, fairway: Fairway): boolean {
  if (fairway.polygon !== undefined) return isInside(spot, fairway.polygon);
  const { width, from = 0, to = Infinity } = fairway;
  return Math.abs(spot.across) <= width / 2 && spot.along >= from && spot.along <= to;
}

/** @internal */
export function isInHazard(spot: Spot, hazard: Hazard): boolean {
  if (hazard.polygon !== undefined) return isInside(spot, hazard.polygon);
  const { alongFrom = -Infinity, alongTo = Infinity, acrossFrom = -Infinity, acrossTo = Infinity } = hazard;
  const { along, across } = spot;
  return along >= alongFrom && along <= alongTo && across >= acrossFrom && across <= acrossTo;
}
