import { quinticHermite, quinticRoot, quinticValue } from '../numerics/quintic-hermite.js';
import type { FlightProblem } from './problem.js';

/** A step: its length, height above the plane, state and derivative at both ends. */
type Step = [
  h: number,
  height: number,
  newHeight: number,
  y: Float64Array,
  f: Float64Array,
  yNew: Float64Array,
  fNew: Float64Array,
];

/** The ground as an event function of the flight: height above it, rate of climb from it, and the landing in a step. @internal */
export interface GroundPlane {
  /** Height above the plane [m]. */
  readonly height: (state: ArrayLike<number>) => number;
  /** Rate of change of that height [m/s]. */
  readonly climb: (state: ArrayLike<number>) => number;
  /** Second derivative of that height [m/s²], from the derivative of the state. */
  readonly climbRate: (derivative: ArrayLike<number>) => number;
  /**
   * Where in a step, as a fraction, the ball first comes down through the plane; −1 when it does not. A ball that has
   * not been above the plane must come above it first.
   */
  readonly landing: (above: boolean, ...step: Step) => number;
  /**
   * Where in a step, as a fraction, a ball that has not come above the plane was nearest to it before falling away; −1
   * when it came above or is still nearing.
   */
  readonly summit: (...step: Step) => number;
}

/** Height of the ground under a point [m]: elevation plus rise, in this order, so that all who ask get the same bits. @internal */
export function groundAt(elevation: number, slopeX: number, slopeZ: number, x: number, z: number): number {
  return elevation + slopeX * x + slopeZ * z;
}

/** Makes the event function of a problem's ground. @internal */
export function groundPlane(problem: FlightProblem): GroundPlane {
  const { elevation, slopeX, slopeZ } = problem;
  const quintic = new Float64Array(6);
  const at = (s: ArrayLike<number>, i: number): number => s[i] as number;
  const height = (s: ArrayLike<number>): number =>
    at(s, 1) - elevation - slopeX * at(s, 0) - slopeZ * at(s, 2);
  const climb = (s: ArrayLike<number>): number => at(s, 4) - slopeX * at(s, 3) - slopeZ * at(s, 5);
  return {
    height,
    climb,
    climbRate: climb,
    landing: (above, h, height0, height1, y, f, yNew, fNew) => {
      const climb0 = climb(y);
      const climb1 = climb(yNew);
      if (!above && (climb0 <= 0 || climb1 >= 0)) return -1;
      const dips = height1 >= 0 && climb0 < 0 && climb1 > 0;
      if (height1 >= 0 && !dips) return -1;
      quinticHermite(h, height0, climb0, climb(f), height1, climb1, climb(fNew), quintic);
      if (dips) {
        const low = quinticRoot(quintic, true, 0, 1);
        return quinticValue(quintic, low) < 0 ? quinticRoot(quintic, false, 0, low) : -1;
      }
      if (above && height0 > 0) return quinticRoot(quintic, false, 0, 1);
      // Leaving the ground and meeting it again within one step: the bracket starts at the top of the arc.
      const top = quinticRoot(quintic, true, 0, 1);
      if (quinticValue(quintic, top) > 0) return quinticRoot(quintic, false, top, 1);
      return above ? top : -1;
    },
    summit: (h, height0, height1, y, f, yNew, fNew) => {
      const climb1 = climb(yNew);
      if (height1 > 0 || climb1 > 0) return -1;
      quinticHermite(h, height0, climb(y), climb(f), height1, climb1, climb(fNew), quintic);
      return quinticRoot(quintic, true, 0, 1);
    },
  };
}
