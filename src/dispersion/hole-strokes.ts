import { type StrokesSettings, strokesFrom } from './expected-strokes.js';
import { type Bend, type Hole, sidesOf } from './hole.js';
import { distanceToHole, pointOnHole } from './hole-position.js';
import { type GroundPoint, lastCrossing } from './polygon.js';
import { lieOf, type ShotLie, type WetBall, wetBall } from './shot-lie.js';

/** What one tee shot comes to. @internal */
export interface TeeShotScore {
  readonly ending: ShotLie;
  /** Strokes on the hole, the tee shot counted. */
  readonly strokes: number;
}

const DEFAULT_GREEN_RADIUS = 9.144;

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
  const far = distanceToHole(rest, hole);
  const ending = lieOf(landing, rest, hole, far <= (hole.greenRadius ?? DEFAULT_GREEN_RADIUS));
  switch (ending) {
    case 'out-of-bounds':
      return { ending, strokes: 2 + strokesFrom('tee', hole.length, settings) };
    case 'penalty-area': {
      const wet = wetBall(landing, rest, hole);
      const drop = wet === undefined ? rest : dropFor(wet, hole.fairway.bend);
      return { ending, strokes: 2 + strokesFrom('rough', distanceToHole(drop, hole), settings) };
    }
    default:
      return { ending, strokes: 1 + strokesFrom(ending, far, settings) };
  }
}

/**
 * Where the ball went in: over the outline of a polygon, in a straight line from the tee or from where it came down;
 * at the side of a strip beside the fairway, the near end of one across it.
 */
function dropFor({ hazard, at, from }: WetBall, bend: Bend | undefined): GroundPoint {
  if (hazard.polygon !== undefined) return lastCrossing(from, at, hazard.polygon);
  const { alongFrom, acrossFrom, acrossTo } = sidesOf(hazard);
  if (acrossFrom > 0) return pointOnHole({ along: at.along, across: acrossFrom }, bend);
  if (acrossTo < 0) return pointOnHole({ along: at.along, across: acrossTo }, bend);
  const near = Math.max(0, alongFrom);
  return pointOnHole({ along: near, across: at.along > 0 ? (at.across * near) / at.along : 0 }, bend);
}
