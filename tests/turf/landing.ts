import type { LandingBall } from '../../src/index.js';
import { degrees, rpm } from '../../src/index.js';

/** A ball that lands heading `heading` degrees right of the target, its spin axis tilted about that heading. */
export function landingBall(
  speed: number,
  descent: number,
  backspin: number,
  { heading = 0, tilt = 0 }: { heading?: number; tilt?: number } = {},
): LandingBall {
  const d = degrees(descent);
  const h = degrees(heading);
  const t = degrees(tilt);
  const along = speed * Math.cos(d);
  return {
    position: { x: 0, y: 0, z: 0 },
    velocity: { x: along * Math.cos(h), y: -speed * Math.sin(d), z: along * Math.sin(h) },
    spinRate: rpm(backspin),
    spinAxis: { x: -Math.cos(t) * Math.sin(h), y: -Math.sin(t), z: Math.cos(t) * Math.cos(h) },
  };
}
