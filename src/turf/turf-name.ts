import { type NamedField, named } from '../inputs/field.js';
import { frozen } from '../inputs/frozen.js';
import { turfFields } from '../inputs/turf.js';

/** Names of the turf presets. */
export type TurfName =
  | 'baked'
  | 'firm'
  | 'normal'
  | 'soft'
  | 'wet'
  | 'artificial'
  | 'drainedGreen'
  | 'pennerBaked'
  | 'pennerFirm'
  | 'pennerNormal'
  | 'pennerSoft'
  | 'pennerWet';

/** Each name standing for itself. */
const NAMES: { readonly [Name in TurfName]: Name } = {
  baked: 'baked',
  firm: 'firm',
  normal: 'normal',
  soft: 'soft',
  wet: 'wet',
  artificial: 'artificial',
  drainedGreen: 'drainedGreen',
  pennerBaked: 'pennerBaked',
  pennerFirm: 'pennerFirm',
  pennerNormal: 'pennerNormal',
  pennerSoft: 'pennerSoft',
  pennerWet: 'pennerWet',
};

/**
 * The turf of a scene as an input. Reading leaves a preset's name as it stands: a flight has no use for turf, and need
 * not carry the presets.
 * @internal
 */
export const sceneTurfField: NamedField = /* @__PURE__ */ frozen(() => named(NAMES, turfFields, 'turf'));
