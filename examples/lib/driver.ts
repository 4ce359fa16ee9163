import { mode } from 'd3-array';
import { type Clubhead, clubheads } from 'fairflight';
import type { ShotTable } from 'fairflight/schema';
import type { Angle } from 'fairflight/units';
import type { Option } from './command.js';
import { typedAngle } from './quantities.js';

/** Option of examples about a driver. */
export const LOFT_OPTION: Option = {
  type: 'string',
  value: '10.5deg',
  help: 'nominal loft of the driver (default from the file, else 10.5deg)',
};

/** The generic driver with the loft that was typed, or else that of most shots in the file, or else its own. */
export function driverFor(table: ShotTable, typed: string | undefined): Clubhead {
  const usual = mode(table.shots, ({ nominalLoft }) => nominalLoft) as Angle | undefined;
  const loft = typed === undefined ? usual : typedAngle('loft', typed);
  return loft === undefined ? clubheads.driver : { ...clubheads.driver, staticLoft: loft };
}
