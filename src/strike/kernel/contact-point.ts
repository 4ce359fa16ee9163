import type { StrikeInput } from '../impact.js';
import type { ImpactConstants } from './constants.js';
import type { Contact } from './contact.js';

/**
 * Where and how ball and face meet. Bulge and roll turn the normal at the contact, n = unit(n0 + (high/roll) t1 +
 * (toe/bulge) t2), and recess the point; the ball, at rest, meets it with the relative velocity u = −(v + w × r).
 *
 * Relative velocity at the point of contact: Stronge, Impact Mechanics (2000), ch. 8.
 * @internal
 */
export function contactPoint(c: ImpactConstants, input: Readonly<StrikeInput>, contact: Contact): void {
  const { toe, high } = input;
  const { v0, v1, v2, w0, w1 } = contact;
  const tiltUp = high * c.roll;
  const tiltToe = toe * c.bulge;
  const length = Math.sqrt(1 + tiltUp * tiltUp + tiltToe * tiltToe);
  const n0 = 1 / length;
  const n1 = tiltUp / length;
  const n2 = tiltToe / length;
  const r0 = c.depth - 0.5 * (toe * tiltToe + high * tiltUp);
  const r1 = high - c.centreHigh;
  const r2 = toe - c.centreToe;
  const u0 = -(v0 + w1 * r2);
  const u1 = -(v1 - w0 * r2);
  const u2 = -(v2 + w0 * r1 - w1 * r0);

  const aLength = Math.sqrt(n0 * n0 + n1 * n1);
  const a0 = -n1 / aLength;
  const a1 = n0 / aLength;
  const b0 = -n2 * a1;
  const b1 = n2 * a0;
  const b2 = n0 * a1 - n1 * a0;
  const ua = u0 * a0 + u1 * a1;
  const ub = u0 * b0 + u1 * b1 + u2 * b2;

  contact.n0 = n0;
  contact.n1 = n1;
  contact.n2 = n2;
  contact.a0 = a0;
  contact.a1 = a1;
  contact.b0 = b0;
  contact.b1 = b1;
  contact.b2 = b2;
  contact.r0 = r0;
  contact.r1 = r1;
  contact.r2 = r2;
  contact.un = u0 * n0 + u1 * n1 + u2 * n2;
  contact.ua = ua;
  contact.ub = ub;
  contact.slip = Math.sqrt(ua * ua + ub * ub);
}
