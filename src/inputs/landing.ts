import type { Angle, AngularSpeed, Duration, Speed } from '../units/index.js';
import { DEGREES, METRES, METRES_PER_SECOND, RATIO, RPM, SECONDS, type Unit } from '../units/unit.js';
import type { Vector3 } from '../vector.js';
import { type Declared, optional, quantity, record } from './field.js';
import { frozen } from './frozen.js';

/** A ball as it meets the ground; `flight.landing` is one. */
export interface LandingBall {
  /** Where [m], world frame, −100,000 to 100,000 each way. */
  readonly position: Vector3;
  /** Velocity [m/s], −150 to 150 each way. */
  readonly velocity: Vector3;
  /** Total spin rate [rad/s], 0 to 3,000. */
  readonly spinRate: AngularSpeed;
  /** Spin axis, of any length but 0, −1,000,000 to 1,000,000 each way; backspin is along +z. */
  readonly spinAxis: Vector3;
  /** Time since launch [s], 0 to 600; plays no part. */
  readonly time?: Duration;
  /** Speed [m/s], 0 to 300; plays no part, `velocity` has it. */
  readonly speed?: Speed;
  /** Descent angle [rad], −π/2 to π/2; plays no part, `velocity` has it. */
  readonly descentAngle?: Angle;
}

function vectorFields(unit: Unit, most: number, label: string): Declared<Vector3> {
  const part = quantity(unit, -most, most, 1, label);
  return { x: part, y: part, z: part };
}

/** Declaration of {@link LandingBall}. @internal */
export const landingFields: Declared<LandingBall> = /* @__PURE__ */ frozen(() => ({
  position: record(vectorFields(METRES, 1e5, 'position'), 'position'),
  velocity: record(vectorFields(METRES_PER_SECOND, 150, 'velocity'), 'velocity'),
  spinRate: quantity(RPM, 0, 3000, 250, 'spin rate'),
  spinAxis: record(vectorFields(RATIO, 1e6, 'spin axis'), 'spin axis'),
  time: optional(quantity(SECONDS, 0, 600, 6, 'time')),
  speed: optional(quantity(METRES_PER_SECOND, 0, 300, 28, 'speed')),
  descentAngle: optional(quantity(DEGREES, -Math.PI / 2, Math.PI / 2, 0.65, 'descent angle')),
}));
