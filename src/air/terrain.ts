import { frozen } from '../inputs/frozen.js';
import type { Source } from '../source.js';
import type { Length } from '../units/index.js';
import { metres } from '../units/index.js';

/** Names of the terrain classes, smoothest first. */
export type TerrainName =
  | 'open-water'
  | 'smooth'
  | 'open-grass'
  | 'low-crops'
  | 'high-crops'
  | 'parkland'
  | 'suburb'
  | 'city'
  | 'links-course'
  | 'heath-course'
  | 'tree-lined-course';

/** What the wind blows over for a kilometre or so before it reaches the shot. */
export interface Terrain {
  /** Roughness length z0 of the logarithmic law [m]. */
  readonly roughness: Length;
  /** What it looks like. */
  readonly description: string;
  /** Where the number comes from. */
  readonly source: Source;
}

const classes: Source = {
  authors: 'World Meteorological Organization, after A. G. Davenport and J. Wieringa',
  year: 2008,
  work: 'WMO-No. 8, Guide to Meteorological Instruments and Methods of Observation',
  locus: 'part I, chapter 5, roughness classes',
  confidence: 'published',
  note: 'The same values stand in the US EPA guidance on meteorological monitoring (2000), table 6-10.',
};

const courses: Source = {
  authors: 'fairflight contributors',
  year: 2026,
  work: 'Golf courses placed among the roughness classes',
  confidence: 'assumption',
  note: 'Mown turf itself, about 0.005 m, matters less than what surrounds it.',
};

function terrain(roughness: number, description: string, source: Source): Terrain {
  return { roughness: metres(roughness), description, source };
}

/** Roughness lengths by terrain, for {@link windFrom} and the logarithmic {@link WindProfile}. */
export const terrains: Readonly<Record<TerrainName, Terrain>> = /* @__PURE__ */ frozen(() => ({
  'open-water': terrain(0.0002, 'Open sea or lake', classes),
  smooth: terrain(0.005, 'Mud flats, snow; no vegetation, no obstacles', classes),
  'open-grass': terrain(0.03, 'Open flat grass, few isolated obstacles', classes),
  'low-crops': terrain(0.1, 'Low crops, occasional large obstacles', classes),
  'high-crops': terrain(0.25, 'High crops, scattered obstacles', classes),
  parkland: terrain(0.5, 'Parkland, bushes, many obstacles', classes),
  suburb: terrain(1, 'Suburb or forest, regular large obstacles', classes),
  city: terrain(2, 'City centre with high and low buildings', classes),
  'links-course': terrain(0.03, 'Links or open course', courses),
  'heath-course': terrain(0.07, 'Heath and rough, 0.05 to 0.10', courses),
  'tree-lined-course': terrain(0.35, 'Tree-lined parkland course, 0.25 to 0.5', courses),
}));
