import type { StrikeInput } from '../impact.js';
import type { ImpactConstants } from './constants.js';
import type { Contact } from './contact.js';

/**
 * Normal and tangential restitution of this contact, by the laws of the head (`RestitutionLaw`,
 * `TangentialRestitution`): e falls with the normal speed and off centre, as far as the edge; e_t is constant, or sets
 * in with the obliquity of the impact, the angle between approach and normal, or falls with the club speed. A warm ball
 * takes more from the normal ({@link warmth}).
 *
 * Tangential restitution as a property of the contact: Cross 2002, Am. J. Phys. 70, 1093.
 * @returns False when e leaves 0 to 1.
 * @internal
 */
export function restitutions(c: ImpactConstants, input: Readonly<StrikeInput>, contact: Contact): boolean {
  const { toe, high } = input;
  const approach = -contact.un;
  const offCentre = (toe * toe + high * high) * c.inverseEdgeSquared;
  const e =
    c.restitution - c.restitutionSlope * (approach - c.referenceSpeed) - c.edgeLoss * Math.min(1, offCentre);
  contact.e = c.ballWarmth === 1 ? e : (1 + e) * c.ballWarmth - 1;
  if (c.gripLaw === 'constant') {
    contact.et = c.grip;
  } else if (c.gripLaw === 'by-speed') {
    contact.et = c.grip - c.gripReach * Math.tanh(c.gripSteepness * (input.clubSpeed - c.gripReferenceSpeed));
  } else {
    const obliquity = Math.atan2(contact.slip, approach);
    contact.et =
      obliquity > c.gripOnset ? c.grip * (1 - Math.exp((c.gripOnset - obliquity) * c.inverseGripScale)) : 0;
  }
  return contact.e >= 0 && contact.e <= 1;
}
