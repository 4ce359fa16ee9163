import { type Clubhead, clubheads } from 'fairflight';
import type { ShotTable } from 'fairflight/schema';
import type { Angle } from 'fairflight/units';
import { typedAngle } from './quantities.js';

/** The generic driver with the loft typed, else the one most shots of the file name, else its own. */
export function driverFor(table: ShotTable, typed: string | undefined): Clubhead {
  const lofts = table.shots.flatMap(({ nominalLoft }) => nominalLoft ?? []).sort((a, b) => a - b);
  const usual = lofts[Math.floor(lofts.length / 2)];
  const loft: Angle | undefined = typed === undefined ? usual : typedAngle('loft', typed);
  return loft === undefined ? clubheads.driver : { ...clubheads.driver, staticLoft: loft };
}
