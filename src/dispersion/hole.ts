import { FairflightError, requireOneOf, requireRecord, requireWithin } from '../errors.js';
import type { Angle, Length } from '../units/index.js';
import type { Lie } from './strokes-baseline.js';

/** A strip of mown grass along the centre line of a hole. */
export interface Fairway {
  /** Width [m], across the centre line. */
  readonly width: Length;
  /** Distance from the tee along the centre line at which it begins [m]; default 0. */
  readonly from?: Length;
  /** Distance at which it ends [m]; default never. */
  readonly to?: Length;
  /** Where the centre line turns, and by how much, + to the right; default it is straight. */
  readonly bend?: { readonly at: Length; readonly angle: Angle };
}

/**
 * A strip along the hole, for example a stream, trees or the boundary. Its ends along the hole are measured from the
 * tee on the centre line, its sides across it, + right; an end left out has no limit.
 */
export interface Hazard {
  /** What lies there. `trees` leave a recovery shot. */
  readonly kind: 'sand' | 'trees' | 'penalty-area' | 'out-of-bounds';
  /** Nearest distance along the hole [m]. */
  readonly alongFrom?: Length;
  /** Furthest distance along the hole [m]. */
  readonly alongTo?: Length;
  /** Left side [m], + right of the centre line. */
  readonly acrossFrom?: Length;
  /** Right side [m]. */
  readonly acrossTo?: Length;
}

/** A hole as a tee shot sees it. What is neither fairway, green nor hazard is rough. */
export interface Hole {
  /** Length from tee to hole along the centre line [m], 50 to 700 yards. */
  readonly length: Length;
  /** The fairway. */
  readonly fairway: Fairway;
  /** Strips with trouble; where two overlap the worse counts. */
  readonly hazards?: readonly Hazard[];
  /** Radius of the green about the hole [m]; default 10 yards. */
  readonly greenRadius?: Length;
}

/** A point in the plane: along the target line and to the right of it [m]. */
export interface GroundPoint {
  /** Along the target line [m]. */
  readonly x: number;
  /** To the right of it [m]. */
  readonly z: number;
}

/** A point seen from the centre line of a hole [m]: how far along, and how far to the right. @internal */
export interface HolePosition {
  readonly along: number;
  readonly across: number;
}

const DEFAULT_GREEN_RADIUS = 9.144;

/** @throws FairflightError when a field is unknown, not finite or out of range @internal */
export function requireFairway(field: string, fairway: Fairway): Fairway {
  requireRecord(field, fairway, ['width', 'from', 'to', 'bend']);
  requireWithin(`${field}.width`, fairway.width, 0.1, 500, 'm');
  if (fairway.from !== undefined) requireWithin(`${field}.from`, fairway.from, 0, 1000, 'm');
  if (fairway.to !== undefined) requireWithin(`${field}.to`, fairway.to, fairway.from ?? 0, 1000, 'm');
  if (fairway.bend !== undefined) {
    requireRecord(`${field}.bend`, fairway.bend, ['at', 'angle']);
    requireWithin(`${field}.bend.at`, fairway.bend.at, 0, 1000, 'm');
    requireWithin(`${field}.bend.angle`, fairway.bend.angle, -2, 2, 'rad');
  }
  return fairway;
}

/** @throws FairflightError when a field is unknown, not finite or out of range @internal */
export function requireHole(hole: Hole): Hole {
  requireRecord('hole', hole, ['length', 'fairway', 'hazards', 'greenRadius']);
  requireWithin('hole.length', hole.length, 45, 640.08, 'm');
  requireFairway('hole.fairway', hole.fairway);
  if (hole.greenRadius !== undefined) requireWithin('hole.greenRadius', hole.greenRadius, 0, 50, 'm');
  hole.hazards?.forEach((hazard, i) => {
    const field = `hole.hazards[${i}]`;
    requireRecord(field, hazard, ['kind', 'alongFrom', 'alongTo', 'acrossFrom', 'acrossTo']);
    requireOneOf(`${field}.kind`, hazard.kind, ['sand', 'trees', 'penalty-area', 'out-of-bounds'] as const);
    for (const end of ['alongFrom', 'alongTo', 'acrossFrom', 'acrossTo'] as const) {
      const value = hazard[end];
      if (value !== undefined) requireWithin(`${field}.${end}`, value, -1000, 1000, 'm');
    }
    const along = (hazard.alongTo ?? Infinity) > (hazard.alongFrom ?? -Infinity);
    const across = (hazard.acrossTo ?? Infinity) > (hazard.acrossFrom ?? -Infinity);
    if (!along || !across) {
      throw new FairflightError('invalid-input', `${field} must end beyond where it begins`, {
        field,
        value: hazard,
      });
    }
  });
  return hole;
}

/** Where a point lies seen from the nearest point of the centre line. @internal */
export function positionOnHole(point: GroundPoint, bend: Fairway['bend']): HolePosition {
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
  // At the outer side of the corner both legs end in the same point, and the side is that of the first leg.
  return a <= b
    ? { along: first.along, across: Math.sign(first.across || 1) * a }
    : { along: second.along, across: Math.sign(second.across || 1) * b };
}

/** The point on the ground at a position of the hole. @internal */
export function pointOnHole(position: HolePosition, bend: Fairway['bend']): GroundPoint {
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
export function onFairway(position: HolePosition, fairway: Fairway): boolean {
  return (
    Math.abs(position.across) <= fairway.width / 2 &&
    position.along >= (fairway.from ?? 0) &&
    position.along <= (fairway.to ?? Infinity)
  );
}

/** @internal */
export function inHazard(position: HolePosition, hazard: Hazard): boolean {
  return (
    position.along >= (hazard.alongFrom ?? -Infinity) &&
    position.along <= (hazard.alongTo ?? Infinity) &&
    position.across >= (hazard.acrossFrom ?? -Infinity) &&
    position.across <= (hazard.acrossTo ?? Infinity)
  );
}

/** Lie of a ball at rest outside penalty areas and within bounds. @internal */
export function lieAt(point: GroundPoint, hole: Hole): Lie {
  const position = positionOnHole(point, hole.fairway.bend);
  const kinds = (hole.hazards ?? [])
    .filter((hazard) => inHazard(position, hazard))
    .map((hazard) => hazard.kind);
  if (distanceToHole(point, hole) <= (hole.greenRadius ?? DEFAULT_GREEN_RADIUS)) return 'green';
  if (kinds.includes('trees')) return 'recovery';
  if (kinds.includes('sand')) return 'sand';
  return onFairway(position, hole.fairway) ? 'fairway' : 'rough';
}
