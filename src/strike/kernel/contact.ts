/**
 * One contact on its way through the stages of the kernel, each of which reads what those before it wrote. It is made
 * once and filled anew by every strike, so that a strike allocates nothing. Stages take records only: a number handed
 * to a function that is not inlined is boxed on the way.
 *
 * Vectors and tensors are in the face frame unless they say world: 0 along the normal of the face centre, 1 up the
 * face, 2 toward the toe. There the head's inertia tensor is diagonal. A left-handed strike is computed as its mirror
 * image.
 * @internal
 */
export class Contact {
  // The frame: its directions in the world are n0 = (cosLoft cosFace, sinLoft, cosLoft sinFace),
  // t1 = (−sinLoft cosFace, cosLoft, −sinLoft sinFace), t2 = n0 × t1 = (−sinFace, 0, cosFace).
  sinLoft: number = Number.NaN;
  cosLoft: number = Number.NaN;
  sinFace: number = Number.NaN;
  cosFace: number = Number.NaN;

  /** Velocity of the head's centre of gravity, in the world and in the face frame. */
  worldVx: number = Number.NaN;
  worldVy: number = Number.NaN;
  worldVz: number = Number.NaN;
  v0: number = Number.NaN;
  v1: number = Number.NaN;
  v2: number = Number.NaN;
  /** Rotation of the head; none about the heel-toe axis. */
  w0: number = Number.NaN;
  w1: number = Number.NaN;

  /** Normal of the face at the point of contact. */
  n0: number = Number.NaN;
  n1: number = Number.NaN;
  n2: number = Number.NaN;
  /** Tangent that leans up the face; none toward the toe. */
  a0: number = Number.NaN;
  a1: number = Number.NaN;
  /** The other tangent, b = n × a. */
  b0: number = Number.NaN;
  b1: number = Number.NaN;
  b2: number = Number.NaN;
  /** Point of contact seen from the head's centre of gravity. */
  r0: number = Number.NaN;
  r1: number = Number.NaN;
  r2: number = Number.NaN;

  /** Velocity of the ball's point of contact less the head's along n, a and b, before the impact; slip is √(ua² + ub²). */
  un: number = Number.NaN;
  ua: number = Number.NaN;
  ub: number = Number.NaN;
  slip: number = Number.NaN;

  /** Compliance of the contact, its symmetric inverse effective mass, in n, a and b. */
  wnn: number = Number.NaN;
  wna: number = Number.NaN;
  wnb: number = Number.NaN;
  waa: number = Number.NaN;
  wab: number = Number.NaN;
  wbb: number = Number.NaN;

  /** Normal and tangential restitution of this contact. */
  e: number = Number.NaN;
  et: number = Number.NaN;

  /** Impulse on the ball along n, a and b. */
  jn: number = Number.NaN;
  ja: number = Number.NaN;
  jb: number = Number.NaN;
  /** Tangential over normal impulse. */
  frictionUsed: number = Number.NaN;
  slid: boolean = false;
}
