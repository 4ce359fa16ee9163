import { mode } from 'd3-array';
import { type Clubhead, clubheads } from 'fairflight';
import type { ShotTable } from 'fairflight/schema';
import type { Angle } from 'fairflight/units';
import { typedAngle } from './quantities.js';

/** The generic driver with the loft typed, else the one most shots of the file name, else its own. */
export function driverFor(table: ShotTable, typed: string | undefined): Clubhead {
  const usual = mode(table.shots, ({ nominalLoft }) => nominalLoft) as Angle | undefined;
  const loft = typed === undefined ? usual : typedAngle('loft', typed);
  return loft === undefined ? clubheads.driver : { ...clubheads.driver, staticLoft: loft };
}
