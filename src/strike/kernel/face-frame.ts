import type { StrikeInput } from '../impact.js';
import type { Contact } from './contact.js';

/**
 * The motion of the head, turned from the world into the face frame: its velocity from speed, attack angle and path,
 * and its closing, which is about the world's vertical, (sin loft, cos loft, 0) in the face frame.
 * @internal
 */
export function faceFrame(input: Readonly<StrikeInput>, contact: Contact): void {
  const { clubSpeed, attackAngle, dynamicLoft, closureRate, mirror } = input;
  const path = mirror * input.clubPath;
  const face = mirror * input.faceAngle;
  const sinLoft = Math.sin(dynamicLoft);
  const cosLoft = Math.cos(dynamicLoft);
  const sinFace = Math.sin(face);
  const cosFace = Math.cos(face);
  const level = clubSpeed * Math.cos(attackAngle);
  const vx = level * Math.cos(path);
  const vy = clubSpeed * Math.sin(attackAngle);
  const vz = level * Math.sin(path);
  const forward = vx * cosFace + vz * sinFace;

  contact.sinLoft = sinLoft;
  contact.cosLoft = cosLoft;
  contact.sinFace = sinFace;
  contact.cosFace = cosFace;
  contact.worldVx = vx;
  contact.worldVy = vy;
  contact.worldVz = vz;
  contact.v0 = cosLoft * forward + sinLoft * vy;
  contact.v1 = cosLoft * vy - sinLoft * forward;
  contact.v2 = vz * cosFace - vx * sinFace;
  contact.w0 = closureRate * sinLoft;
  contact.w1 = closureRate * cosLoft;
}
