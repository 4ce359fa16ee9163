import type { Launch } from '../../src/scene/index.js';
import type { Delivery, PlayerHand } from '../../src/strike/index.js';
import { degrees, degreesPerSecond, millimetres, mph, rpm } from '../../src/units/index.js';

/** A delivery in mph, degrees, millimetres and degrees per second; level, square and centred where nothing is said. */
export interface Swing {
  readonly speed: number;
  readonly loft: number;
  readonly attack?: number;
  readonly path?: number;
  readonly face?: number;
  readonly toe?: number;
  readonly high?: number;
  readonly closure?: number;
  readonly hand?: PlayerHand;
}

/** The delivery of a swing. */
export function delivery(s: Swing): Delivery {
  return {
    clubSpeed: mph(s.speed),
    attackAngle: degrees(s.attack ?? 0),
    clubPath: degrees(s.path ?? 0),
    faceAngle: degrees(s.face ?? 0),
    dynamicLoft: degrees(s.loft),
    strikeOffset: { toe: millimetres(s.toe ?? 0), high: millimetres(s.high ?? 0) },
    closureRate: degreesPerSecond(s.closure ?? 0),
    hand: s.hand ?? 'right',
  };
}

/** Speed in mph, angle in degrees, spin in rpm; then direction and tilt in degrees, rifle spin in rpm. */
export type BallLeaves = readonly [
  speed: number,
  angle: number,
  spin: number,
  direction?: number,
  tilt?: number,
  rifle?: number,
];

/** The launch of a ball. */
export function launch([speed, angle, spin, direction = 0, tilt = 0, rifle = 0]: BallLeaves): Launch {
  return {
    ballSpeed: mph(speed),
    launchAngle: degrees(angle),
    launchDirection: degrees(direction),
    spinRate: rpm(spin),
    spinAxisTilt: degrees(tilt),
    rifleSpin: rpm(rifle),
  };
}

/** A number between −1 and 1 that looks like chance and is the same everywhere. */
export function wobble(i: number, of: number): number {
  return Math.sin(1.7 * i * i + 2.3 * i * of + of);
}
