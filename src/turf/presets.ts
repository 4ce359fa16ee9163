import { FairflightError, requireOneOf, requireRecord, requireWithin } from '../errors.js';
import type { Source } from '../source.js';
import { degrees } from '../units/index.js';
import type { Turf, TurfName } from './turf.js';

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

const NAMES: readonly TurfName[] = ['baked', 'firm', 'normal', 'soft', 'wet'];

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
export const turfs: Readonly<Record<TurfName, Turf>> = {
  baked: preset('baked', 0.75, 28, 1.1, 0.15),
  firm: preset('firm', 0.92, 31, 1.05, 0.2),
  normal: preset('normal', 1, 32, 1, 0.22),
  soft: preset('soft', 1.08, 34, 0.92, 0.28),
  wet: preset('wet', 1.25, 40, 0.8, 0.4),
};

const FIELDS = [
  'name',
  'tiltScale',
  'tiltCap',
  'restitutionScale',
  'friction',
  'rollingResistance',
  'source',
] as const;

/**
 * The turf meant by a preset's name or a record; `normal` when left out. A record is checked.
 * @throws FairflightError `invalid-input` or `outside-range`
 * @internal
 */
export function resolveTurf(turf: Turf | TurfName | undefined): Turf {
  if (turf === undefined) return turfs.normal;
  if (typeof turf === 'string') return turfs[requireOneOf('turf', turf, NAMES)];
  requireRecord('turf', turf, FIELDS);
  if (typeof turf.name !== 'string') {
    throw new FairflightError('invalid-input', 'turf.name must be a text', {
      field: 'turf.name',
      value: turf.name,
    });
  }
  requireWithin('turf.tiltScale', turf.tiltScale, 0, 3, '');
  requireWithin('turf.tiltCap', turf.tiltCap, 0, 1, 'rad', 'if that was degrees, pass degrees(x)');
  requireWithin('turf.restitutionScale', turf.restitutionScale, 0, 1.9, '');
  requireWithin('turf.friction', turf.friction, 0.01, 2, '');
  requireWithin('turf.rollingResistance', turf.rollingResistance, 0.005, 2, '');
  return turf;
}
