import { type NamedField, named } from '../inputs/field.js';
import { frozen } from '../inputs/frozen.js';
import { type Turf, turfFields } from '../inputs/turf.js';
import type { Source } from '../source.js';
import { degrees } from '../units/index.js';

/** Names of the firmness presets, from hardest to softest. */
export type TurfName = 'baked' | 'firm' | 'normal' | 'soft' | 'wet';

const SOURCE: Source = {
  authors: 'fairflight',
  year: 2026,
  work: 'Calibration of the bounce of Penner 2002 with a fade and a cap on the tilt of the crater wall',
  confidence: 'assumption',
  note:
    'Not measured. Firm, normal and soft were set so that a tour drive differs by about -5 and -11 yd from firm, ' +
    'against -4.49 and -9.80 yd of medium and soft fairways against firm (USGA and R&A 2023, second-hand). ' +
    'Friction 0.40 is that of Penner 2002, from memory.',
};

function preset(
  name: TurfName,
  tiltScale: number,
  tiltCap: number,
  restitutionScale: number,
  rollingResistance: number,
): Turf {
  return {
    name,
    tiltScale,
    tiltCap: degrees(tiltCap),
    restitutionScale,
    friction: 0.4,
    rollingResistance,
    source: SOURCE,
  };
}

/**
 * Firmness presets, from hardest to softest: links in drought, a firm, a normal and a soft fairway, a wet winter one.
 * They are a calibration, not a measurement: see `source` of each.
 */
export const turfs: Readonly<Record<TurfName, Turf>> = /* @__PURE__ */ frozen(() => ({
  baked: preset('baked', 0.75, 28, 1.1, 0.15),
  firm: preset('firm', 0.92, 31, 1.05, 0.2),
  normal: preset('normal', 1, 32, 1, 0.22),
  soft: preset('soft', 1.08, 34, 0.92, 0.28),
  wet: preset('wet', 1.25, 40, 0.8, 0.4),
}));

/** A turf as an input. @internal */
export const turfField: NamedField = /* @__PURE__ */ frozen(() => named(turfs, turfFields, 'turf'));
