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
}

/** Where {@link publishedScatter} comes from. */
export const publishedScatterSource: Source = {
  authors: 'Broadie M',
  year: 2008,
  work: 'Science and Golf V, 253–262',
  locus: 'table 1',
  confidence: 'second-hand',
  note: 'Text extracted from the paper by a third party. Groups are by score, not by handicap index.',
};

/** Distance and direction of long tee shots by skill. */
export const publishedScatter: readonly PublishedScatter[] = [
  { group: 'professionals', score: { from: 64, to: 79 }, distance75: yards(297), direction: degrees(4) },
  {
    group: 'amateurs 70 to 83',
    score: { from: 70, to: 83 },
    distance75: yards(248),
    direction: degrees(5.4),
  },
  {
    group: 'amateurs 84 to 97',
    score: { from: 84, to: 97 },
    distance75: yards(237),
    direction: degrees(6.4),
  },
  {
    group: 'amateurs 97 to 120',
    score: { from: 97, to: 120 },
    distance75: yards(216),
    direction: degrees(8.1),
  },
];
