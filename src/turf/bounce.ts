import type { RunConstants } from './constants.js';
import { norm } from './norm.js';
import { type RunState, VX, VY, VZ, WX, WY, WZ } from './state.js';

/** Speed along the plane below which a ball has no direction of travel [m/s]. @internal */
export const STRAIGHT_DOWN = 1e-9;

/**
 * One contact with the turf, in place: a rigid sphere meets a wall tilted toward it, with restitution along the wall's
 * normal and Coulomb friction against the slip of the contact point, which stops it if it can (Penner 2002, Biber et al.
 * 2023; here with the whole spin vector, so that slip across the travel kicks the ball sideways). Tilt and restitution are
 * those of the law. The share of grip follows from the inertia: I/(I + m r²). Neither a reversal of slip nor twist
 * friction about the normal is modelled.
 * A ball that its backspin drives into the wall leaves along the plane.
 * @param s - state with the velocity into the plane; velocity and spin are replaced
 * @internal
 */
export function bounce(c: RunConstants, s: RunState): void {
  const vx = s[VX] as number;
  const into = -(s[VY] as number);
  const vz = s[VZ] as number;
  const along = norm(vx, vz);
  // Straight down, or as good as, any direction does.
  const hx = along > STRAIGHT_DOWN ? vx / along : 1;
  const hz = along > STRAIGHT_DOWN ? vz / along : 0;
  const tilt = c.law.tilt(norm(along, into), into, Math.atan2(into, along));
  const sin = Math.sin(tilt);
  const cos = Math.cos(tilt);

  const vn = into * cos + along * sin;
  const vt = along * cos - into * sin;
  const spinH = (s[WX] as number) * hx + (s[WZ] as number) * hz;
  const spinY = s[WY] as number;
  const spinT = spinH * cos + spinY * sin;
  const spinN = spinY * cos - spinH * sin;
  const spinS = (s[WZ] as number) * hx - (s[WX] as number) * hz;

  const slipT = vt + c.radius * spinS;
  const slipS = -c.radius * spinT;
  const slip = norm(slipT, slipS);
  const e = c.law.restitution(vn);
  const limit = c.law.friction * (1 + e) * vn;
  const share = c.gripShare * slip <= limit ? c.gripShare : limit / slip;
  const kickT = -share * slipT;
  const kickS = -share * slipS;

  // m r / I, which turns a change of velocity at the contact into one of spin.
  const leverage = (1 - c.gripShare) / (c.gripShare * c.radius);
  const t = vt + kickT;
  const n = e * vn;
  const newSpinT = spinT - leverage * kickS;
  const newSpinS = spinS + leverage * kickT;
  const h = t * cos - n * sin;
  const newSpinH = newSpinT * cos - spinN * sin;
  s[VX] = h * hx - kickS * hz;
  s[VY] = Math.max(0, n * cos + t * sin);
  s[VZ] = h * hz + kickS * hx;
  s[WX] = newSpinH * hx - newSpinS * hz;
  s[WY] = newSpinT * sin + spinN * cos;
  s[WZ] = newSpinH * hz + newSpinS * hx;
}
