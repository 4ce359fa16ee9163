import { type Declared, type ListField, quantity, record } from '../inputs/field.js';
import { frozen } from '../inputs/frozen.js';
import { YARDS } from '../units/unit.js';

/** A point in the plane: along the target line and to the right of it [m]. */
export interface GroundPoint {
  /** Along the target line [m]. */
  readonly x: number;
  /** To the right of it [m]. */
  readonly z: number;
}

/**
 * The corners of a piece of ground in turn, 3 to 10,000, each coordinate [m], −1,000 to 1,000 from the tee; the last is
 * joined to the first. Where the outline crosses itself the even-odd rule holds: a point lies inside when a line from
 * it to far away crosses the outline an odd number of times.
 */
export type Polygon = readonly GroundPoint[];

/** Declaration of {@link Polygon}. @internal */
export const polygonField: ListField = /* @__PURE__ */ frozen(() => {
  const corner: Declared<GroundPoint> = {
    x: quantity(YARDS, -1000, 1000, 200, 'corner along the target line'),
    z: quantity(YARDS, -1000, 1000, 20, 'corner to the right of the target line'),
  };
  return { kind: 'list', of: record(corner, 'corner'), least: 3, most: 10_000, label: 'outline' };
});

/** True for a point inside by the even-odd rule; on the outline itself it may count either way. @internal */
export function isInside({ x, z }: GroundPoint, polygon: Polygon): boolean {
  let inside = false;
  eachEdge(polygon, (a, b) => {
    // An edge counts its lower end and not its upper one, so that a corner is crossed once.
    if (a.z > z !== b.z > z && x < a.x + ((b.x - a.x) * (z - a.z)) / (b.z - a.z)) inside = !inside;
  });
  return inside;
}

/** The last point at which a way in a straight line crosses an outline; its start where it crosses none. @internal */
export function lastCrossing(from: GroundPoint, to: GroundPoint, polygon: Polygon): GroundPoint {
  const [dx, dz] = [to.x - from.x, to.z - from.z];
  let last = 0;
  eachEdge(polygon, (a, b) => {
    const [ex, ez] = [b.x - a.x, b.z - a.z];
    const [fx, fz] = [a.x - from.x, a.z - from.z];
    const area = dx * ez - dz * ex;
    const way = (fx * ez - fz * ex) / area;
    const edge = (fx * dz - fz * dx) / area;
    if (way > last && way <= 1 && edge >= 0 && edge <= 1) last = way;
  });
  return { x: from.x + last * dx, z: from.z + last * dz };
}

function eachEdge(polygon: Polygon, visit: (a: GroundPoint, b: GroundPoint) => void): void {
  let before = polygon.at(-1);
  for (const corner of polygon) {
    if (before !== undefined) visit(before, corner);
    before = corner;
  }
}
