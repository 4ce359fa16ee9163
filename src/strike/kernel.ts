import type { Ball } from '../ball/index.js';
import type { Clubhead } from '../clubhead/index.js';

/**
 * What a head and a ball bring to the impact, as plain SI numbers.
 * @internal
 */
export interface ImpactConstants {
  readonly ballMass: number;
  readonly ballRadius: number;
  readonly ballInertia: number;
  readonly headMass: number;
  /** Inverse moments of inertia about the face normal, the up-face axis and the heel-toe axis. */
  readonly inverseNormal: number;
  readonly inverseUp: number;
  readonly inverseToe: number;
  readonly depth: number;
  readonly centreHigh: number;
  readonly centreToe: number;
  /** Curvatures, 1 / radius; 0 for a flat face. */
  readonly bulge: number;
  readonly roll: number;
  readonly restitution: number;
  readonly referenceSpeed: number;
  readonly restitutionSlope: number;
  readonly edgeLoss: number;
  readonly inverseEdgeSquared: number;
  readonly constantGrip: boolean;
  readonly grip: number;
  readonly gripOnset: number;
  readonly inverseGripScale: number;
  readonly friction: number;
  /** 1; with 0 the head still turns but its turning does not couple normal impulse and slip: no gear effect. */
  readonly coupling: number;
  /** Extra elasticity of the coupling term, e_g. */
  readonly couplingElasticity: number;
}

/**
 * Constants of a head and a ball for {@link strikeKernel}; inputs are taken as checked.
 * @internal
 */
export function impactConstants(head: Clubhead, ball: Ball, couplingElasticity = 0): ImpactConstants {
  const law = head.restitution;
  const grip = head.tangentialRestitution;
  const oblique = grip.kind === 'oblique';
  return {
    ballMass: ball.mass,
    ballRadius: ball.radius,
    ballInertia: ball.inertia,
    headMass: head.mass + head.shaftMass,
    inverseNormal: 1 / head.inertia.faceNormal,
    inverseUp: 1 / head.inertia.vertical,
    inverseToe: 1 / head.inertia.heelToe,
    depth: head.centreOfGravity.depth,
    centreHigh: head.centreOfGravity.high,
    centreToe: head.centreOfGravity.toe,
    bulge: head.bulge === undefined ? 0 : 1 / head.bulge,
    roll: head.roll === undefined ? 0 : 1 / head.roll,
    restitution: law.atReference,
    referenceSpeed: law.referenceSpeed,
    restitutionSlope: law.slope,
    edgeLoss: law.atReference - law.atEdge,
    inverseEdgeSquared: 1 / (law.edgeDistance * law.edgeDistance),
    constantGrip: !oblique,
    grip: oblique ? grip.limit : grip.value,
    gripOnset: oblique ? grip.onset : 0,
    inverseGripScale: oblique ? 1 / grip.scale : 0,
    friction: head.friction,
    coupling: 1,
    couplingElasticity,
  };
}

/**
 * Where {@link strikeKernel} writes what. The first six are the launch; vectors are in the world frame.
 * @internal
 */
export const OUT = {
  ballSpeed: 0,
  launchAngle: 1,
  launchDirection: 2,
  spinRate: 3,
  spinAxisTilt: 4,
  rifleSpin: 5,
  backspin: 6,
  sidespin: 7,
  spinLoft: 8,
  faceToPath: 9,
  restitution: 10,
  tangentialRestitution: 11,
  slid: 12,
  frictionUsed: 13,
  clubSpeedAfter: 14,
  normalSpeed: 15,
  obliquity: 16,
  ballVelocity: 17,
  ballSpin: 20,
  headVelocity: 23,
  headSpin: 26,
  /** Contact point relative to the head's centre of gravity. */
  arm: 29,
  /** Face normal at the contact. */
  normal: 32,
} as const;

/** Length of the output of {@link strikeKernel}. @internal */
export const OUT_LENGTH = 35;

/** Share of the impulse's work that rounding may add where nothing is lost, both restitutions 1. */
const ROUNDING = 1e-9;

/** What {@link strikeKernel} returns. @internal */
export const STATUS = {
  ok: 0,
  /** The face moves away from the ball or along it. */
  noApproach: 1,
  /** The restitution law left 0 to 1. */
  restitution: 2,
  /** Head and friction together would jam the contact: no impulse satisfies the laws. */
  jammed: 3,
  /**
   * The impulse would give the two bodies energy. Restitution of velocity allows that where the arm couples normal and
   * tangential motion strongly and friction grips a face that hardly stops the slip (Stronge 1990, Rigid body
   * collisions with friction, Proc. R. Soc. Lond. A 431, 169).
   */
  makesEnergy: 4,
} as const;

/**
 * The impact as one rigid-body impulse with normal and tangential restitution and a friction cap, in plain SI numbers
 * and without allocation. Everything is solved in the face frame (normal, up the face, toward the toe), where the
 * inertia tensor is diagonal.
 *
 * Mechanics: impulse balance of two rigid bodies at a point, Stronge, Impact Mechanics (2000), ch. 8, with kinematic
 * restitution in both directions (Cross 2002, Am. J. Phys. 70, 1093); applied to a clubhead as in Winfield and Tan
 * 1994, Comput. Struct. 53, 19, and McNally et al. 2020, Proceedings (ISEA) 49(1), 47.
 *
 * @param mirror - 1 for a right-handed player, −1 for a left-handed one (angles stay in the world frame).
 * @returns One of {@link STATUS}; `out` is complete only when it is 0.
 * @internal
 */
export function strikeKernel(
  c: ImpactConstants,
  clubSpeed: number,
  attack: number,
  path: number,
  face: number,
  loft: number,
  toe: number,
  high: number,
  closure: number,
  mirror: number,
  out: Float64Array,
): number {
  const p = mirror * path;
  const f = mirror * face;
  const sinLoft = Math.sin(loft);
  const cosLoft = Math.cos(loft);
  const sinFace = Math.sin(f);
  const cosFace = Math.cos(f);

  // Head velocity in the world, then in the face frame: n0 = (cl cf, sl, cl sf), t1 = (-sl cf, cl, -sl sf),
  // t2 = n0 x t1 = (-sf, 0, cf).
  const level = clubSpeed * Math.cos(attack);
  const vx = level * Math.cos(p);
  const vy = clubSpeed * Math.sin(attack);
  const vz = level * Math.sin(p);
  const forward = vx * cosFace + vz * sinFace;
  const vn = cosLoft * forward + sinLoft * vy;
  const v1 = cosLoft * vy - sinLoft * forward;
  const v2 = vz * cosFace - vx * sinFace;

  // Contact normal, and contact point seen from the centre of gravity; bulge and roll tilt and recess the face.
  const n1raw = high * c.roll;
  const n2raw = toe * c.bulge;
  const length = Math.sqrt(1 + n1raw * n1raw + n2raw * n2raw);
  const n0 = 1 / length;
  const n1 = n1raw / length;
  const n2 = n2raw / length;
  const r0 = c.depth - 0.5 * (toe * n2raw + high * n1raw);
  const r1 = high - c.centreHigh;
  const r2 = toe - c.centreToe;

  // The face closes about the world's vertical, which is (sin loft, cos loft, 0) in the face frame.
  const w0 = closure * sinLoft;
  const w1 = closure * cosLoft;
  const u0 = -(vn + w1 * r2);
  const u1 = -(v1 - w0 * r2);
  const u2 = -(v2 + w0 * r1 - w1 * r0);

  // Tangent pair at the contact: a leans up the face, b = n x a.
  const aLength = Math.sqrt(n0 * n0 + n1 * n1);
  const a0 = -n1 / aLength;
  const a1 = n0 / aLength;
  const b0 = -n2 * a1;
  const b1 = n2 * a0;
  const b2 = n0 * a1 - n1 * a0;
  const un = u0 * n0 + u1 * n1 + u2 * n2;
  const ua = u0 * a0 + u1 * a1;
  const ub = u0 * b0 + u1 * b1 + u2 * b2;
  const slip = Math.sqrt(ua * ua + ub * ub);
  if (!(un < 0)) return STATUS.noApproach;

  // Compliance of the head's rotation, K = S(r)ᵀ I⁻¹ S(r), symmetric.
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
  const wnn = translation + kn0 * n0 + kn1 * n1 + kn2 * n2;
  const wna = c.coupling * (kn0 * a0 + kn1 * a1);
  const wnb = c.coupling * (kn0 * b0 + kn1 * b1 + kn2 * b2);
  const waa = rolling + ka0 * a0 + ka1 * a1;
  const wab = ka0 * b0 + ka1 * b1 + ka2 * b2;
  const wbb = rolling + kb0 * b0 + kb1 * b1 + kb2 * b2;

  const offCentre = (toe * toe + high * high) * c.inverseEdgeSquared;
  const e =
    c.restitution - c.restitutionSlope * (-un - c.referenceSpeed) - c.edgeLoss * Math.min(1, offCentre);
  if (!(e >= 0 && e <= 1)) return STATUS.restitution;
  const obliquity = Math.atan2(slip, -un);
  const et = c.constantGrip
    ? c.grip
    : obliquity > c.gripOnset
      ? c.grip * (1 - Math.exp((c.gripOnset - obliquity) * c.inverseGripScale))
      : 0;

  // Grip: the normal rows are solved for J_n after the tangential rows have been eliminated.
  const rn = -(1 + e) * un;
  const ra = -(1 + et) * ua;
  const rb = -(1 + et) * ub;
  const det = waa * wbb - wab * wab;
  const g = 1 + c.couplingElasticity;
  // J_t = base − J_n tilt
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
  if (!(jn > 0 && jn < Number.POSITIVE_INFINITY)) return STATUS.jammed;
  // Work of the impulse, twice: J · (u before + u after), with u after = u before + W J.
  const work =
    jn * (2 * un + wnn * jn + 2 * (wna * ja + wnb * jb)) +
    ja * (2 * ua + waa * ja + 2 * wab * jb) +
    jb * (2 * ub + wbb * jb);
  if (work > ROUNDING * jn * (slip - un)) return STATUS.makesEnergy;

  // Impulse in the face frame; spin of the ball is r_b x J / I with r_b = −R n.
  const j0 = jn * n0 + ja * a0 + jb * b0;
  const j1 = jn * n1 + ja * a1 + jb * b1;
  const j2 = jn * n2 + jb * b2;
  const spin = -c.ballRadius / c.ballInertia;
  const s0 = spin * (n1 * j2 - n2 * j1);
  const s1 = spin * (n2 * j0 - n0 * j2);
  const s2 = spin * (n0 * j1 - n1 * j0);

  // To the world. A reflection in the vertical plane turns the z of vectors and the x and y of spins.
  const cc = cosLoft * cosFace;
  const sc = sinLoft * cosFace;
  const cs = cosLoft * sinFace;
  const ss = sinLoft * sinFace;
  const bx = (j0 * cc - j1 * sc - j2 * sinFace) / c.ballMass;
  const by = (j0 * sinLoft + j1 * cosLoft) / c.ballMass;
  const bz = (mirror * (j0 * cs - j1 * ss + j2 * cosFace)) / c.ballMass;
  const sx = mirror * (s0 * cc - s1 * sc - s2 * sinFace);
  const sy = mirror * (s0 * sinLoft + s1 * cosLoft);
  const sz = s0 * cs - s1 * ss + s2 * cosFace;
  const ratio = c.ballMass / c.headMass;
  const hx = vx - ratio * bx;
  const hy = vy - ratio * by;
  const hz = mirror * vz - ratio * bz;

  const across = Math.sqrt(bx * bx + bz * bz);
  const ballSpeed = Math.sqrt(across * across + by * by);
  const cosAzimuth = across > 0 ? bx / across : 1;
  const sinAzimuth = across > 0 ? bz / across : 0;
  const sinElevation = by / ballSpeed;
  const cosElevation = across / ballSpeed;
  const along = sx * cosAzimuth + sz * sinAzimuth;
  const backspin = sz * cosAzimuth - sx * sinAzimuth;
  const sidespin = sinElevation * along - cosElevation * sy;

  const nx = n0 * cc - n1 * sc - n2 * sinFace;
  const nz = mirror * (n0 * cs - n1 * ss + n2 * cosFace);
  const travel = vn * n0 + v1 * n1 + v2 * n2;
  const acrossA = v1 * a1 + vn * a0;
  const acrossB = vn * b0 + v1 * b1 + v2 * b2;

  out[OUT.ballSpeed] = ballSpeed;
  out[OUT.launchAngle] = Math.atan2(by, across);
  out[OUT.launchDirection] = Math.atan2(sinAzimuth, cosAzimuth);
  out[OUT.spinRate] = Math.sqrt(backspin * backspin + sidespin * sidespin);
  out[OUT.spinAxisTilt] = Math.atan2(sidespin, backspin);
  out[OUT.rifleSpin] = cosElevation * along + sinElevation * sy;
  out[OUT.backspin] = backspin;
  out[OUT.sidespin] = sidespin;
  out[OUT.spinLoft] = Math.atan2(Math.sqrt(acrossA * acrossA + acrossB * acrossB), travel);
  out[OUT.faceToPath] = Math.atan2(nz, nx) - path;
  out[OUT.restitution] = e;
  out[OUT.tangentialRestitution] = et;
  out[OUT.slid] = slid ? 1 : 0;
  out[OUT.frictionUsed] = slid ? c.friction : tangential / jn;
  out[OUT.clubSpeedAfter] = Math.sqrt(hx * hx + hy * hy + hz * hz);
  out[OUT.normalSpeed] = -un;
  out[OUT.obliquity] = obliquity;
  out[OUT.ballVelocity] = bx;
  out[OUT.ballVelocity + 1] = by;
  out[OUT.ballVelocity + 2] = bz;
  out[OUT.ballSpin] = sx;
  out[OUT.ballSpin + 1] = sy;
  out[OUT.ballSpin + 2] = sz;
  out[OUT.headVelocity] = hx;
  out[OUT.headVelocity + 1] = hy;
  out[OUT.headVelocity + 2] = hz;
  const q0 = w0 - c.inverseNormal * (r1 * j2 - r2 * j1);
  const q1 = w1 - c.inverseUp * (r2 * j0 - r0 * j2);
  const q2 = -c.inverseToe * (r0 * j1 - r1 * j0);
  out[OUT.headSpin] = mirror * (q0 * cc - q1 * sc - q2 * sinFace);
  out[OUT.headSpin + 1] = mirror * (q0 * sinLoft + q1 * cosLoft);
  out[OUT.headSpin + 2] = q0 * cs - q1 * ss + q2 * cosFace;
  out[OUT.arm] = r0 * cc - r1 * sc - r2 * sinFace;
  out[OUT.arm + 1] = r0 * sinLoft + r1 * cosLoft;
  out[OUT.arm + 2] = mirror * (r0 * cs - r1 * ss + r2 * cosFace);
  out[OUT.normal] = nx;
  out[OUT.normal + 1] = n0 * sinLoft + n1 * cosLoft;
  out[OUT.normal + 2] = nz;
  return STATUS.ok;
}
