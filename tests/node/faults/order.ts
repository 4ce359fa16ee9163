import type { FileOptions } from '../../../src/node/index.js';
import type { Design, SweepBase } from '../../../src/sweep/index.js';
import { degrees, mph, rpm } from '../../../src/units/index.js';
import type { DiskStep } from '../faulty-disk.js';

/** What a process is to do. */
export interface Order {
  readonly path: string;
  readonly seed: number;
  readonly how: Pick<FileOptions, 'resume' | 'overwrite'>;
  /** A step of the disk that fails from one call on. */
  readonly fault?: { readonly step: DiskStep; readonly calls: number; readonly code: string };
}

/** What came of it. `untyped`: it ended in an error that is not the library's, or in none of these ways. */
export type Outcome =
  | { readonly kind: 'done'; readonly resumedAt: number }
  | { readonly kind: 'refused'; readonly code: string; readonly message: string }
  | { readonly kind: 'killed' }
  | { readonly kind: 'untyped'; readonly message: string };

/** Five row groups. */
const ROWS = 5 * 8192;

/** The sweep that is written. */
export function study(seed: number): Design {
  return {
    kind: 'sobol',
    count: ROWS,
    seed,
    factors: [{ name: 'launch.ballSpeed', from: mph(20), to: mph(60) }],
  };
}

/** Its options. */
export const flown: SweepBase & { readonly workers: number } = {
  from: { ballSpeed: mph(40), launchAngle: degrees(8), spinRate: rpm(2000) },
  outputs: ['carry'],
  workers: 0,
};
