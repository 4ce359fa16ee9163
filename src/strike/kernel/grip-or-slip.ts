import type { ImpactConstants } from './constants.js';
import type { Contact } from './contact.js';

/** Share of the impulse's work that rounding may add where nothing is lost, both restitutions 1. @internal */
export const ROUNDING = 1e-9;

/**
 * The impulse on the ball. If the face grips, both restitutions hold:
 *
 *     Wnn Jn + Wnt Jt = −(1 + e) un,   Wnt' Jn + Wtt Jt = −(1 + et) ut.
 *
 * A gear elasticity e_g other than 0 scales Wnt' by 1 + e_g.
 *
 * Should that take more than friction gives, |Jt| > μ Jn, the ball slides along the face throughout: Jt = μ Jn g with
 * the direction g of the grip, and the first equation alone sets Jn. That never jams: the grip satisfies the first
 * equation, so Wnn + μ Wnt g = Wnn (1 − μ Jn/|Jt|) − μ (1 + e) un/|Jt| with the Jn and Jt of the grip, and both terms
 * are positive where the ball slides.
 *
 * Impulse of two rigid bodies at a point: Stronge, Impact Mechanics (2000), ch. 8, with restitution of velocity in
 * both directions (Cross 2002, Am. J. Phys. 70, 1093), applied to a clubhead as in Winfield and Tan 1994, Comput.
 * Struct. 53, 19, and McNally et al. 2020, Proceedings (ISEA) 49(1), 47. Restitution of velocity may make energy where
 * the arm couples normal and tangential motion strongly and friction grips a face that hardly stops the slip (Stronge
 * 1990, Rigid body collisions with friction, Proc. R. Soc. Lond. A 431, 169); such impulses are refused.
 * @returns False when the impulse would make energy.
 * @internal
 */
export function gripOrSlip(c: ImpactConstants, contact: Contact): boolean {
  const { un, ua, ub, slip, wnn, wna, wnb, waa, wab, wbb, e, et } = contact;
  const rn = -(1 + e) * un;
  const ra = -(1 + et) * ua;
  const rb = -(1 + et) * ub;

  // Grip: the tangential rows give Jt = base − Jn tilt, which the normal row is then solved with.
  const det = waa * wbb - wab * wab;
  const g = 1 + c.couplingElasticity;
  const baseA = (wbb * ra - wab * rb) / det;
  const baseB = (waa * rb - wab * ra) / det;
  const tiltA = (g * (wbb * wna - wab * wnb)) / det;
  const tiltB = (g * (waa * wnb - wab * wna)) / det;
  let jn = (rn - wna * baseA - wnb * baseB) / (wnn - wna * tiltA - wnb * tiltB);
  let ja = baseA - jn * tiltA;
  let jb = baseB - jn * tiltB;
  const tangential = Math.sqrt(ja * ja + jb * jb);
  const slid = tangential > c.friction * jn;
  if (slid) {
    const ga = ja / tangential;
    const gb = jb / tangential;
    jn = rn / (wnn + c.friction * (wna * ga + wnb * gb));
    ja = c.friction * jn * ga;
    jb = c.friction * jn * gb;
  }

  // Work of the impulse, twice: J · (u before + u after), with u after = u before + W J.
  const work =
    jn * (2 * un + wnn * jn + 2 * (wna * ja + wnb * jb)) +
    ja * (2 * ua + waa * ja + 2 * wab * jb) +
    jb * (2 * ub + wbb * jb);
  if (!(work <= ROUNDING * jn * (slip - un))) return false;

  contact.jn = jn;
  contact.ja = ja;
  contact.jb = jb;
  contact.slid = slid;
  contact.frictionUsed = slid ? c.friction : tangential / jn;
  return true;
}
