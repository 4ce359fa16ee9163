import type { Hazard, HazardKind, Hole } from './hole.js';
import { isInHazard, isOnFairway, type Spot, spotAt } from './hole-position.js';
import type { GroundPoint } from './polygon.js';

/** Where a tee shot ends. `recovery`: among trees, the way to the hole blocked. */
export type ShotLie = 'fairway' | 'rough' | 'sand' | 'recovery' | 'green' | 'penalty-area' | 'out-of-bounds';

/** All lies, best first. @internal */
export const SHOT_LIES: readonly ShotLie[] = [
  'green',
  'fairway',
  'rough',
  'sand',
  'recovery',
  'penalty-area',
  'out-of-bounds',
];

/** A ball in a penalty area. @internal */
export interface WetBall {
  readonly hazard: Hazard;
  /** Where it lies in the hazard. */
  readonly at: Spot;
  /** Where it was before, in a straight line. */
  readonly from: GroundPoint;
}

const TEE: GroundPoint = { x: 0, z: 0 };

/**
 * The penalty area a ball is in: where it came down, or where it would have come to rest. Undefined for none.
 * @internal
 */
export function wetBall(
  landing: GroundPoint,
  rest: GroundPoint,
  { fairway, hazards = [] }: Pick<Hole, 'fairway' | 'hazards'>,
): WetBall | undefined {
  const water = hazards.filter((hazard) => hazard.kind === 'penalty-area');
  if (water.length === 0) return undefined;
  for (const [point, from] of [
    [landing, TEE],
    [rest, landing],
  ] as const) {
    const at = spotAt(point, fairway.bend);
    const hazard = water.find((each) => isInHazard(at, each));
    if (hazard !== undefined) return { hazard, at, from };
  }
  return undefined;
}

/** Lie of a shot that comes down and rests as told, on a green or not. @internal */
export function lieOf(
  landing: GroundPoint,
  rest: GroundPoint,
  hole: Pick<Hole, 'fairway' | 'hazards'>,
  onGreen: boolean,
): ShotLie {
  const spot = spotAt(rest, hole.fairway.bend);
  const isIn = (kind: HazardKind): boolean =>
    hole.hazards?.some((hazard) => hazard.kind === kind && isInHazard(spot, hazard)) === true;
  if (isIn('out-of-bounds')) return 'out-of-bounds';
  if (wetBall(landing, rest, hole) !== undefined) return 'penalty-area';
  if (onGreen) return 'green';
  if (isIn('trees')) return 'recovery';
  if (isIn('sand')) return 'sand';
  return isOnFairway(spot, hole.fairway) ? 'fairway' : 'rough';
}
