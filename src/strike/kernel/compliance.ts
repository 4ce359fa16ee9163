import type { ImpactConstants } from './constants.js';
import type { Contact } from './contact.js';

/**
 * How readily the contact gives way to an impulse: the change of relative velocity is W J with
 * W = (1/m + 1/M) 1 − S(r_b) I_b⁻¹ S(r_b) − S(r) I_h⁻¹ S(r), here in n, a and b. S is the matrix of the cross product,
 * r_b = −R n the contact seen from the ball, so its spin yields R²/I_b along the tangents and nothing along n; the
 * head yields K = −S(r) I_h⁻¹ S(r).
 *
 * Inverse inertia of a contact of two rigid bodies: Stronge, Impact Mechanics (2000), ch. 8; for a clubhead Winfield
 * and Tan 1994, Comput. Struct. 53, 19.
 * @internal
 */
export function compliance(c: ImpactConstants, contact: Contact): void {
  const { n0, n1, n2, a0, a1, b0, b1, b2, r0, r1, r2 } = contact;
  const k00 = c.inverseUp * r2 * r2 + c.inverseToe * r1 * r1;
  const k11 = c.inverseNormal * r2 * r2 + c.inverseToe * r0 * r0;
  const k22 = c.inverseNormal * r1 * r1 + c.inverseUp * r0 * r0;
  const k01 = -c.inverseToe * r0 * r1;
  const k02 = -c.inverseUp * r0 * r2;
  const k12 = -c.inverseNormal * r1 * r2;
  const kn0 = k00 * n0 + k01 * n1 + k02 * n2;
  const kn1 = k01 * n0 + k11 * n1 + k12 * n2;
  const kn2 = k02 * n0 + k12 * n1 + k22 * n2;
  const ka0 = k00 * a0 + k01 * a1;
  const ka1 = k01 * a0 + k11 * a1;
  const ka2 = k02 * a0 + k12 * a1;
  const kb0 = k00 * b0 + k01 * b1 + k02 * b2;
  const kb1 = k01 * b0 + k11 * b1 + k12 * b2;
  const kb2 = k02 * b0 + k12 * b1 + k22 * b2;
  const translation = 1 / c.ballMass + 1 / c.headMass;
  const rolling = translation + (c.ballRadius * c.ballRadius) / c.ballInertia;

  contact.wnn = translation + kn0 * n0 + kn1 * n1 + kn2 * n2;
  contact.wna = c.coupling * (kn0 * a0 + kn1 * a1);
  contact.wnb = c.coupling * (kn0 * b0 + kn1 * b1 + kn2 * b2);
  contact.waa = rolling + ka0 * a0 + ka1 * a1;
  contact.wab = ka0 * b0 + ka1 * b1 + ka2 * b2;
  contact.wbb = rolling + kb0 * b0 + kb1 * b1 + kb2 * b2;
}
