import type { Angle, AngularSpeed, Speed } from '../units/index.js';
import { DEGREES, MPH, RPM } from '../units/unit.js';
import { type Declared, optional, quantity } from './field.js';
import { frozen } from './frozen.js';
import { allows, readRecord, requireKnown } from './read.js';

/** How the ball leaves. */
export interface Launch {
  /** Ball speed [m/s], 1 to 110. */
  readonly ballSpeed: Speed;
  /** Vertical launch angle [rad], + up, −π/2 to π/2. */
  readonly launchAngle: Angle;
  /** Horizontal launch direction [rad], + right of the target line, −π to π; default 0. */
  readonly launchDirection?: Angle;
  /** Rate of the spin across the launch direction, backspin and sidespin together [rad/s], 0 to 2,100. */
  readonly spinRate: AngularSpeed;
  /**
   * Tilt of the spin axis about the launch direction [rad], + right (curves right), −π to π; default 0. Backspin is
   * spinRate cos(tilt), sidespin spinRate sin(tilt); beyond ±π/2 the ball has topspin.
   */
  readonly spinAxisTilt?: Angle;
  /** Rifle spin, the component along the launch direction [rad/s], right-handed, −2,100 to 2,100; default 0. */
  readonly rifleSpin?: AngularSpeed;
}

/** Declaration of {@link Launch}. @internal */
export const launchFields: Declared<Launch> = /* @__PURE__ */ frozen(() => ({
  ballSpeed: quantity(MPH, 1, 110, 67, 'ball speed'),
  launchAngle: quantity(DEGREES, -Math.PI / 2, Math.PI / 2, 0.21, 'launch angle'),
  launchDirection: optional(quantity(DEGREES, -Math.PI, Math.PI, 0.02, 'launch direction')),
  spinRate: quantity(RPM, 0, 2100, 272, 'spin rate'),
  spinAxisTilt: optional(quantity(DEGREES, -Math.PI, Math.PI, 0.05, 'spin axis tilt')),
  rifleSpin: optional(quantity(RPM, -2100, 2100, 0, 'rifle spin')),
}));

/** What there is no launch without. @internal */
export type LaunchNeed = 'ballSpeed' | 'launchAngle' | 'spinRate';

/** The fields of a launch that may not be left out. @internal */
export const LAUNCH_NEEDS: readonly LaunchNeed[] = /* @__PURE__ */ frozen(
  () =>
    Object.entries(launchFields).flatMap(([name, field]) =>
      'optional' in field ? [] : [name],
    ) as LaunchNeed[],
);

/** Reads a launch. @throws FairflightError naming the field @internal */
export function readLaunch(value: unknown, path = 'launch'): Launch {
  const launch = requireKnown(launchFields, value, path) as unknown as Launch;
  // Written out: to reach fields by name takes longer than all the rest of a check.
  const { ballSpeed, launchAngle, launchDirection, spinRate, spinAxisTilt, rifleSpin } = launch;
  const fine =
    allows(launchFields.ballSpeed, ballSpeed) &&
    allows(launchFields.launchAngle, launchAngle) &&
    allows(launchFields.spinRate, spinRate) &&
    (launchDirection === undefined || allows(launchFields.launchDirection, launchDirection)) &&
    (spinAxisTilt === undefined || allows(launchFields.spinAxisTilt, spinAxisTilt)) &&
    (rifleSpin === undefined || allows(launchFields.rifleSpin, rifleSpin));
  if (!fine) {
    const copy = { ballSpeed, launchAngle, launchDirection, spinRate, spinAxisTilt, rifleSpin };
    return readRecord(launchFields, copy, path);
  }
  return {
    ballSpeed,
    launchAngle,
    spinRate,
    ...(launchDirection !== undefined && { launchDirection }),
    ...(spinAxisTilt !== undefined && { spinAxisTilt }),
    ...(rifleSpin !== undefined && { rifleSpin }),
  };
}
