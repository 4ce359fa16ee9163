import { frozen } from '../inputs/frozen.js';
import type { ReadingErrors } from '../inputs/readings.js';
import { degrees } from '../units/index.js';

/**
 * Reading errors assumed when none are given: club speed 1.5 % (two definitions of it differ by that much), ball speed
 * 0.5 %, spin 3 %, attack, path, face and loft 1°, launch angle and direction 0.3°, tilt 2°. Engineering assumptions,
 * no published values; replace them with your device's.
 */
export const defaultReadingErrors: ReadingErrors = /* @__PURE__ */ frozen(() => ({
  clubSpeed: 0.015,
  attackAngle: degrees(1),
  clubPath: degrees(1),
  faceAngle: degrees(1),
  dynamicLoft: degrees(1),
  ballSpeed: 0.005,
  launchAngle: degrees(0.3),
  launchDirection: degrees(0.3),
  spinRate: 0.03,
  spinAxisTilt: degrees(2),
}));
