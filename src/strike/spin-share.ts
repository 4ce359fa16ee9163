import type { Clubhead } from '../clubhead/index.js';

/** What a law by club speed, fitted without a row, misses that row's spin by, root mean square (`npm run refit:grip`). */
const OF_FITTED_LAW = 0.13;
/** For any other law of grip. Assumption: a change of 0.1 in tangential restitution is 12 %, and height of strike adds. */
const OF_ANY_LAW = 0.2;

/** Standard error of the spin that a head gives a delivery, as a share of it. @internal */
export function spinShare({ tangentialRestitution }: Clubhead): number {
  return tangentialRestitution.kind === 'by-speed' ? OF_FITTED_LAW : OF_ANY_LAW;
}
