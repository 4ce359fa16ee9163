import {
  choice,
  type Declared,
  optional,
  type QuantityField,
  quantity,
  type RecordField,
  record,
} from '../inputs/field.js';
import { frozen } from '../inputs/frozen.js';
import { refusal } from '../inputs/refuse.js';
import type { Angle, Length } from '../units/index.js';
import { DEGREES, YARDS } from '../units/unit.js';
import type { Lie } from './strokes-baseline.js';

/** A strip of mown grass along the centre line of a hole. */
export interface Fairway {
  /** Width across the centre line [m], 0.1 to 500. */
  readonly width: Length;
  /** Distance from the tee along the centre line at which it begins [m], 0 to 1,000; default 0. */
  readonly from?: Length;
  /** Distance at which it ends [m], 0 to 1,000; default never. */
  readonly to?: Length;
  /** Turn of the centre line; default it is straight. */
  readonly bend?: {
    /** Distance from the tee at which it turns [m], 0 to 1,000. */
    readonly at: Length;
    /** By how much [rad], + to the right, −2 to 2. */
    readonly angle: Angle;
  };
}

/**
 * A strip along the hole, for example a stream, trees or the boundary. Its ends along the hole are measured from the
 * tee on the centre line, its sides across it, + right; an end left out has no limit.
 */
export interface Hazard {
  /** What lies there. `trees` leave a recovery shot. */
  readonly kind: 'sand' | 'trees' | 'penalty-area' | 'out-of-bounds';
  /** Nearest distance along the hole [m], −1,000 to 1,000. */
  readonly alongFrom?: Length;
  /** Furthest distance along the hole [m], −1,000 to 1,000. */
  readonly alongTo?: Length;
  /** Left side [m], + right of the centre line, −1,000 to 1,000. */
  readonly acrossFrom?: Length;
  /** Right side [m], −1,000 to 1,000. */
  readonly acrossTo?: Length;
}

/** A hole as a tee shot sees it. What is neither fairway, green nor hazard is rough. */
export interface Hole {
  /** Length from tee to hole along the centre line [m], 45 to 640.08 (700 yards). */
  readonly length: Length;
  /** The fairway. */
  readonly fairway: Fairway;
  /** Strips with trouble; where two overlap the worse counts. */
  readonly hazards?: readonly Hazard[];
  /** Radius of the green about the hole [m], 0 to 50; default 10 yards. */
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

/** Declaration of {@link Fairway}. @internal */
export const fairwayField: RecordField = /* @__PURE__ */ frozen(() => {
  const bend: Declared<NonNullable<Fairway['bend']>> = {
    at: quantity(YARDS, 0, 1000, 210, 'distance of the bend'),
    angle: quantity(DEGREES, -2, 2, 0.3, 'turn of the fairway'),
  };
  const fields: Declared<Fairway> = {
    width: quantity(YARDS, 0.1, 500, 30, 'width of the fairway'),
    from: optional(quantity(YARDS, 0, 1000, 150, 'beginning of the fairway')),
    to: optional(quantity(YARDS, 0, 1000, 350, 'end of the fairway')),
    bend: optional(record(bend, 'bend')),
  };
  return record(fields, 'fairway', ({ from = 0, to = Infinity }: { from?: number; to?: number }, path) => {
    if (to < from) {
      throw refusal(`${path}.to`, `${path}.to must not lie before ${path}.from`, { value: to });
    }
  });
});

/** Declaration of {@link Hazard}. @internal */
export const hazardField: RecordField = /* @__PURE__ */ frozen(() => {
  const end = (label: string): QuantityField<'m'> & { readonly optional: true } =>
    optional(quantity(YARDS, -1000, 1000, 30, label));
  const fields: Declared<Hazard> = {
    kind: choice<Hazard['kind']>(['sand', 'trees', 'penalty-area', 'out-of-bounds'], 'hazard'),
    alongFrom: end('near end of the hazard'),
    alongTo: end('far end of the hazard'),
    acrossFrom: end('left side of the hazard'),
    acrossTo: end('right side of the hazard'),
  };
  return record(fields, 'hazard', (hazard: Hazard, path) => {
    const { alongFrom, alongTo, acrossFrom, acrossTo } = sidesOf(hazard);
    if (!(alongTo > alongFrom && acrossTo > acrossFrom)) {
      throw refusal(path, `${path} must end beyond where it begins`);
    }
  });
});

/** Declaration of {@link Hole.greenRadius}. @internal */
export const greenRadiusField: QuantityField<'m'> & { readonly optional: true } = /* @__PURE__ */ frozen(() =>
  optional(quantity(YARDS, 0, 50, 9, 'radius of the green')),
);

/** Declaration of {@link Hole}. @internal */
export const holeField: RecordField = /* @__PURE__ */ frozen(() => {
  const fields: Declared<Hole> = {
    length: quantity(YARDS, 45, 640.08, 380, 'length of the hole'),
    fairway: fairwayField,
    hazards: optional({ kind: 'list', of: hazardField, least: 0, most: 1000, label: 'hazards' }),
    greenRadius: greenRadiusField,
  };
  return record(fields, 'hole');
});

const DEFAULT_GREEN_RADIUS = 9.144;

/** The sides of a hazard; one that was left out has no limit. @internal */
export function sidesOf({
  alongFrom = -Infinity,
  alongTo = Infinity,
  acrossFrom = -Infinity,
  acrossTo = Infinity,
}: { readonly [Side in Exclude<keyof Hazard, 'kind'>]?: number }): Record<
  Exclude<keyof Hazard, 'kind'>,
  number
> {
  return { alongFrom, alongTo, acrossFrom, acrossTo };
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
export function inHazard({ along, across }: HolePosition, hazard: Hazard): boolean {
  const { alongFrom, alongTo, acrossFrom, acrossTo } = sidesOf(hazard);
  return along >= alongFrom && along <= alongTo && across >= acrossFrom && across <= acrossTo;
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
