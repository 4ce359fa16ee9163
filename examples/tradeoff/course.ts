import { type Length, mph, type Speed, yards } from 'fairflight/units';

/** Driving holes of an invented course of 18, from the tees for 95 mph of club speed [yd]. */
const DRIVING_HOLES = [410, 395, 520, 430, 360, 445, 400, 380, 540, 415, 425, 370, 440, 480];
const SPEED_OF_TEES = mph(95);
/** Tees lie no farther back than this. */
const BACK_TEES = 1.2;

/** How far trees stand from the middle of a fairway where nothing else is said. */
export const USUAL_TREES: Length = yards(30);

/** Holes in proportion to club speed, as tees are set for players of different length, to the nearest 5 yd. */
export function holesFor(now: Speed): readonly Length[] {
  const share = Math.min(BACK_TEES, now / SPEED_OF_TEES);
  return DRIVING_HOLES.map((length) => yards(5 * Math.round((share * length) / 5)));
}
