import { si } from '../../units/index.js';
import type { StrikeInput, StrikeResult } from '../impact.js';
import type { ImpactConstants } from './constants.js';
import type { Contact } from './contact.js';

/** A record while the kernel fills it. */
type Filled<T> = { -readonly [K in keyof T]: T[K] };
/** The result of a strike while the kernel fills it. @internal */
export type FilledResult = Filled<Omit<StrikeResult, 'launch'>> & {
  readonly launch: Filled<StrikeResult['launch']>;
};

/**
 * How the ball leaves, back in the world: velocity J/m and spin r_b × J / I_b with r_b = −R n, then the angles of the
 * two. A reflection in the vertical plane turns the z of vectors and the x and y of spins, which is what a left-handed
 * strike comes back by. The head goes on with V − J/M.
 * @internal
 */
export function toWorld(
  c: ImpactConstants,
  { mirror, clubPath }: Readonly<StrikeInput>,
  contact: Contact,
  result: FilledResult,
): void {
  const { sinLoft, cosLoft, sinFace, cosFace, n0, n1, n2, a0, a1, b0, b1, b2, jn, ja, jb } = contact;
  const j0 = jn * n0 + ja * a0 + jb * b0;
  const j1 = jn * n1 + ja * a1 + jb * b1;
  const j2 = jn * n2 + jb * b2;
  const spin = -c.ballRadius / c.ballInertia;
  const s0 = spin * (n1 * j2 - n2 * j1);
  const s1 = spin * (n2 * j0 - n0 * j2);
  const s2 = spin * (n0 * j1 - n1 * j0);

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

  // Backspin turns about the level axis to the right of the launch direction, sidespin about the axis below it that
  // is square to both, rifle spin about the launch direction itself.
  const across = Math.sqrt(bx * bx + bz * bz);
  const ballSpeed = Math.sqrt(across * across + by * by);
  const cosAzimuth = across > 0 ? bx / across : 1;
  const sinAzimuth = across > 0 ? bz / across : 0;
  const sinElevation = by / ballSpeed;
  const cosElevation = across / ballSpeed;
  const along = sx * cosAzimuth + sz * sinAzimuth;
  const backspin = sz * cosAzimuth - sx * sinAzimuth;
  const sidespin = sinElevation * along - cosElevation * sy;
  const { launch } = result;
  launch.ballSpeed = si(ballSpeed);
  launch.launchAngle = si(Math.atan2(by, across));
  launch.launchDirection = si(Math.atan2(sinAzimuth, cosAzimuth));
  launch.spinRate = si(Math.sqrt(backspin * backspin + sidespin * sidespin));
  launch.spinAxisTilt = si(Math.atan2(sidespin, backspin));
  launch.rifleSpin = si(cosElevation * along + sinElevation * sy);
  result.backspin = backspin;
  result.sidespin = sidespin;

  // Angles between the head's travel and the face where it met the ball.
  const { v0, v1, v2 } = contact;
  const travelN = v0 * n0 + v1 * n1 + v2 * n2;
  const travelA = v1 * a1 + v0 * a0;
  const travelB = v0 * b0 + v1 * b1 + v2 * b2;
  const nx = n0 * cc - n1 * sc - n2 * sinFace;
  const nz = mirror * (n0 * cs - n1 * ss + n2 * cosFace);
  result.spinLoft = Math.atan2(Math.sqrt(travelA * travelA + travelB * travelB), travelN);
  result.faceToPath = Math.atan2(nz, nx) - clubPath;

  const ratio = c.ballMass / c.headMass;
  const hx = contact.worldVx - ratio * bx;
  const hy = contact.worldVy - ratio * by;
  const hz = mirror * contact.worldVz - ratio * bz;
  result.clubSpeedAfter = Math.sqrt(hx * hx + hy * hy + hz * hz);
  result.restitution = contact.e;
  result.tangentialRestitution = contact.et;
  result.slid = contact.slid;
  result.frictionUsed = contact.frictionUsed;
}
