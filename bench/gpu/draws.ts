import { type ConditionColumns, degrees, type LaunchColumns, rpm } from '../../src/index.js';
import { sobol } from '../../src/numerics/sobol.js';

/** Fastest ball that is also struck high, and how much lower and with how much less spin the fastest of all leave. */
const [LOFTED, FASTEST] = [45, 85];
const TOP = [degrees(45), degrees(20)] as const;
const MOST_SPIN = [rpm(11_000), rpm(5500)] as const;

/**
 * Launches as people hit them and then some, spread evenly: from pitches to the fastest drives. A club that gives a fast ball
 * gives a low one with less spin; `freely` leaves that out, and nobody hits those.
 */
export function drawLaunches(
  count: number,
  freely = false,
): LaunchColumns & { readonly ballSpeed: Float64Array } {
  const between = columnsOf(count);
  const ballSpeed = between(0, 20, FASTEST);
  const upTo = (column: Float64Array, low: number, [slow, fast]: readonly [number, number]): Float64Array =>
    column.map((share, i) => {
      const past = freely ? 0 : Math.max(0, ((ballSpeed[i] as number) - LOFTED) / (FASTEST - LOFTED));
      return low + share * (slow + past * (fast - slow) - low);
    });
  return {
    ballSpeed,
    launchAngle: upTo(between(1, 0, 1), degrees(4), TOP),
    spinRate: upTo(between(2, 0, 1), rpm(1000), MOST_SPIN),
    launchDirection: between(3, degrees(-6), degrees(6)),
    spinAxisTilt: between(4, degrees(-30), degrees(30)),
  };
}

/** Conditions beside those launches: wind, air from sea level to the mountains, greens above and below. */
export function drawConditions(count: number): ConditionColumns {
  const between = columnsOf(count);
  return {
    windAlong: between(5, -10, 10),
    windAcross: between(6, -10, 10),
    airDensity: between(7, 0.95, 1.3),
    elevation: between(8, -10, 10),
  };
}

function columnsOf(count: number): (dimension: number, from: number, to: number) => Float64Array {
  const points = sobol(DIMENSIONS, { scramble: 'owen', seed: 1 });
  const drawn = new Float64Array(DIMENSIONS * count);
  for (let i = 0; i < count; i++) points.point(i, drawn.subarray(DIMENSIONS * i, DIMENSIONS * (i + 1)));
  return (dimension, from, to) =>
    Float64Array.from(
      { length: count },
      (_, i) => from + (drawn[DIMENSIONS * i + dimension] as number) * (to - from),
    );
}

const DIMENSIONS = 9;

/** The same in words, for reports. */
export const DRAWN =
  'ball speed 20–85 m/s, launch from 4° to 45° (20° for the fastest), spin from 1,000 to 11,000 rpm (5,500), direction ±6°, spin axis ±30°';
export const DRAWN_CONDITIONS =
  'wind ±10 m/s along and across, air 0.95–1.3 kg/m³, ground 10 m below to 10 m above';
