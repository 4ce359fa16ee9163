import { frozen } from '../inputs/frozen.js';
import type { Source } from '../source.js';
import { type Angle, degrees, type Length, yards } from '../units/index.js';

/** Long tee shots of a group of golfers. */
export interface PublishedScatter {
  /** Group, by score for 18 holes. */
  readonly group: string;
  /** Lowest and highest score of the group. */
  readonly score: { readonly from: number; readonly to: number };
  /** Three of four tee shots are shorter than this [m], total distance. */
  readonly distance75: Length;
  /** Standard deviation of direction [rad]. */
  readonly direction: Angle;
  /** Where the figures come from. */
  readonly source: Source;
}

const SOURCE: Source = {
  authors: 'Broadie M',
  year: 2008,
  work: 'Science and Golf V, 253–262',
  locus: 'table 1',
  confidence: 'second-hand',
  note: 'Text extracted from the paper by a third party. Groups are by score, not by handicap index.',
};

/** Distance and direction of long tee shots by skill. */
export const publishedScatter: readonly PublishedScatter[] = /* @__PURE__ */ frozen(() => [
  group('professionals', 64, 79, 297, 4),
  group('amateurs 70 to 83', 70, 83, 248, 5.4),
  group('amateurs 84 to 97', 84, 97, 237, 6.4),
  group('amateurs 97 to 120', 97, 120, 216, 8.1),
]);

function group(
  name: string,
  from: number,
  to: number,
  distance: number,
  direction: number,
): PublishedScatter {
  return {
    group: name,
    score: { from, to },
    distance75: yards(distance),
    direction: degrees(direction),
    source: SOURCE,
  };
}
