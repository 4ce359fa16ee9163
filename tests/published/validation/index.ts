import { flightGroups } from './flight.js';
import { optimumGroups } from './optimum.js';
import type { Group } from './row.js';
import { strikeGroups } from './strike.js';
import { turfGroups } from './turf.js';

export { renderPage, type Validation, validate } from './page.js';

/** Every comparison with the outside, in the order of the page. */
export const groups: readonly Group[] = [...flightGroups, ...strikeGroups, ...turfGroups, ...optimumGroups];
