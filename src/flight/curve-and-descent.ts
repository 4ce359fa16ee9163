/**
 * Steepness of a path below the horizontal [rad], from the velocity [m/s].
 * @internal
 */
export function descentAngle(vx: number, vy: number, vz: number): number {
  return Math.atan2(-vy, Math.sqrt(vx * vx + vz * vz));
}

/**
 * Sideways distance from the initial launch line [m], + right.
 * @param direction - launch direction [rad], + right
 * @internal
 */
export function curve(x: number, z: number, direction: number): number {
  return direction === 0 ? z : z * Math.cos(direction) - x * Math.sin(direction);
}
