import { tangentialRestitutionValueField } from '../inputs/clubhead.js';
import { deliveryFields, strikeOffsetFields } from '../inputs/delivery.js';
import { type Declared, optional } from '../inputs/field.js';
import { frozen } from '../inputs/frozen.js';
import { type NormalPrior, priorField } from '../inputs/prior.js';

/** Priors of {@link locateStrike}; lengths in metres, angles in radians, speed in m/s. All defaults are assumptions. */
export interface StrikePriors {
  /** Toward the toe [m]; default 0 ± 15 mm. */
  readonly toe?: NormalPrior;
  /** Up the face [m]; default 0 ± 10 mm. */
  readonly high?: NormalPrior;
  /** Club speed [m/s] where not measured; default from ball speed, ±10 %. */
  readonly clubSpeed?: NormalPrior;
  /** Attack angle [rad] where not measured; default typical of the class ± 3.5°. */
  readonly attackAngle?: NormalPrior;
  /** Club path [rad] where not measured; default 0 ± 4°. */
  readonly clubPath?: NormalPrior;
  /** Face angle [rad] where not measured; default 0 ± 4°. */
  readonly faceAngle?: NormalPrior;
  /** Dynamic loft [rad] where not measured; default static loft +2° (woods) or −6° (irons), ± 4°. */
  readonly dynamicLoft?: NormalPrior;
  /** Tangential restitution (the limit of an oblique law, the value at the reference speed of a law by speed); default the head's ± 0.1. */
  readonly grip?: NormalPrior;
}

/** Widest standard deviation of a prior [SI]: as good as none. */
const WIDEST = 100;

/** Declaration of {@link StrikePriors}. @internal */
export const strikePriorFields: Declared<StrikePriors> = /* @__PURE__ */ frozen(() => ({
  toe: optional(priorField(strikeOffsetFields.toe, WIDEST)),
  high: optional(priorField(strikeOffsetFields.high, WIDEST)),
  clubSpeed: optional(priorField(deliveryFields.clubSpeed, WIDEST)),
  attackAngle: optional(priorField(deliveryFields.attackAngle, WIDEST)),
  clubPath: optional(priorField(deliveryFields.clubPath, WIDEST)),
  faceAngle: optional(priorField(deliveryFields.faceAngle, WIDEST)),
  dynamicLoft: optional(priorField(deliveryFields.dynamicLoft, WIDEST)),
  grip: optional(priorField(tangentialRestitutionValueField, WIDEST)),
}));
