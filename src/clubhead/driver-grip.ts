import type { TangentialRestitution } from '../inputs/clubhead.js';
import { frozen } from '../inputs/frozen.js';
import { metresPerSecond } from '../units/index.js';

/**
 * Tangential restitution of the generic driver: a fitted law, not a published one. The faster the club, the less the
 * ball grips: 0.01 at 82 mph, −0.20 at 113 mph, −0.30 at 125 mph. Reference speed and slope are fitted to the spin of
 * six drives, as `npm run refit:grip` prints them; the limits, 0.05 and −0.40, are set where the rows end.
 *
 * The rows: two ball tests of the R&A and USGA (120 and 125 mph), a robot test (95 mph), the men's and women's tour
 * averages and a measured group (82 mph); attack angles of the tests assumed level, the last three from common practice.
 * It misses them by 8 % of spin, and one left out of the fit by 13 %, root mean square; a constant by 18 and 22 %. Why the
 * grip should fall is not established: strikes 4–6 mm low, or an attack 2–3° further down, would explain the slow rows
 * as well.
 * @internal
 */
export const DRIVER_GRIP: Extract<TangentialRestitution, { readonly kind: 'by-speed' }> =
  /* @__PURE__ */ frozen(() => ({
    kind: 'by-speed',
    atReference: -0.175,
    referenceSpeed: metresPerSecond(49.2),
    slope: 0.021,
    reach: 0.225,
  }));

/** Club speeds of the rows it is fitted to, 82 to 125 mph [m/s]. Beyond them it runs on to its limits. @internal */
export const DRIVER_GRIP_SPEEDS: { readonly min: number; readonly max: number } = { min: 36.7, max: 55.9 };
