import { type NamedField, named } from '../inputs/field.js';
import { frozen } from '../inputs/frozen.js';
import { turfFields } from '../inputs/turf.js';

const NAMES = [
  'baked',
  'firm',
  'normal',
  'soft',
  'wet',
  'artificial',
  'drainedGreen',
  'pennerBaked',
  'pennerFirm',
  'pennerNormal',
  'pennerSoft',
  'pennerWet',
] as const;

/** Names of the turf presets. */
export type TurfName = (typeof NAMES)[number];

/**
 * The turf of a scene as an input. Reading leaves a preset's name as it stands: a flight has no use for turf, and need
 * not carry the presets.
 * @internal
 */
export const sceneTurfField: NamedField = /* @__PURE__ */ frozen(() =>
  named(Object.fromEntries(NAMES.map((name) => [name, name])), turfFields, 'turf'),
);
