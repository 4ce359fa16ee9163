import { type StrokesSettings, strokesFrom } from './expected-strokes.js';
import {
  distanceToHole,
  type GroundPoint,
  type Hazard,
  type Hole,
  type HolePosition,
  inHazard,
  lieAt,
  pointOnHole,
  positionOnHole,
  sidesOf,
} from './hole.js';
import type { Lie } from './strokes-baseline.js';

/** Where a tee shot ended, for the score. */
export type Ending = 'fairway' | 'rough' | 'sand' | 'recovery' | 'green' | 'penalty-area' | 'out-of-bounds';

/** All endings, best first. @internal */
export const ENDINGS: readonly Ending[] = [
  'green',
  'fairway',
  'rough',
  'sand',
  'recovery',
  'penalty-area',
  'out-of-bounds',
];

/** What one tee shot comes to. @internal */
export interface TeeShotScore {
  readonly ending: Ending;
  /** Strokes on the hole, the tee shot counted. */
  readonly strokes: number;
}

/**
 * Score of one tee shot: 1 stroke and what the lie still needs. A ball in a penalty area, where it came down or where
 * it would have come to rest, costs a stroke and is dropped in the rough where it went in. Out of bounds costs stroke
 * and distance: 2 strokes and the tee again.
 * @internal
 */
export function scoreOf(
  landing: GroundPoint,
  rest: GroundPoint,
  hole: Hole,
  settings: StrokesSettings,
): TeeShotScore {
  const bend = hole.fairway.bend;
  const end = positionOnHole(rest, bend);
  const down = positionOnHole(landing, bend);
  const hazards = hole.hazards ?? [];
  if (hazards.some((hazard) => hazard.kind === 'out-of-bounds' && inHazard(end, hazard))) {
    return { ending: 'out-of-bounds', strokes: 2 + strokesFrom('tee', hole.length, settings) };
  }
  const water = hazards.filter((hazard) => hazard.kind === 'penalty-area');
  const wet = [down, end].flatMap((position) =>
    water.filter((hazard) => inHazard(position, hazard)).map((hazard) => ({ position, hazard })),
  )[0];
  if (wet !== undefined) {
    const drop = pointOnHole(dropFor(wet.position, wet.hazard), bend);
    return { ending: 'penalty-area', strokes: 2 + from('rough', drop, hole, settings) };
  }
  const lie = lieAt(rest, hole);
  return { ending: lie === 'tee' ? 'rough' : lie, strokes: 1 + from(lie, rest, hole, settings) };
}

function from(lie: Lie, point: GroundPoint, hole: Hole, settings: StrokesSettings): number {
  return strokesFrom(lie, distanceToHole(point, hole), settings);
}

/** The edge where the ball went in: the side of a strip beside the fairway, the near end of one across it. */
function dropFor(position: HolePosition, hazard: Hazard): HolePosition {
  const { alongFrom, acrossFrom, acrossTo } = sidesOf(hazard);
  if (acrossFrom > 0) return { along: position.along, across: acrossFrom };
  if (acrossTo < 0) return { along: position.along, across: acrossTo };
  const near = Math.max(0, alongFrom);
  return { along: near, across: position.along > 0 ? (position.across * near) / position.along : 0 };
}
