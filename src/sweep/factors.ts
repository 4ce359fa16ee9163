import { FASTEST_WIND } from '../air/require-wind.js';
import { MAX_BALL_SPEED, MAX_SPIN_RATE } from '../flight/index.js';
import type {
  Angle,
  AngularSpeed,
  Density,
  DynamicViscosity,
  Length,
  Mass,
  MomentOfInertia,
  Pressure,
  Speed,
  Temperature,
} from '../units/index.js';
import { refusal } from './checks.js';

/** Every input a sweep can vary or fix, by dotted name, with the unit of its value. */
export interface FactorValues {
  /** Speed of the head before contact. */
  readonly 'delivery.clubSpeed': Speed;
  /** Vertical direction of head travel, + up. */
  readonly 'delivery.attackAngle': Angle;
  /** Horizontal direction of head travel, + right. */
  readonly 'delivery.clubPath': Angle;
  /** Horizontal direction of the face, + right. */
  readonly 'delivery.faceAngle': Angle;
  /** Vertical direction of the face, + up. */
  readonly 'delivery.dynamicLoft': Angle;
  /** Strike toward the toe. */
  readonly 'delivery.strikeOffset.toe': Length;
  /** Strike up the face. */
  readonly 'delivery.strikeOffset.high': Length;
  /** Rate at which the face closes. */
  readonly 'delivery.closureRate': AngularSpeed;
  /** Mass of the head. */
  readonly 'clubhead.mass': Mass;
  /** Mass of shaft that takes part in the impact. */
  readonly 'clubhead.shaftMass': Mass;
  /** Moment of inertia about the face normal. */
  readonly 'clubhead.inertia.faceNormal': MomentOfInertia;
  /** Moment of inertia about the up-face axis. */
  readonly 'clubhead.inertia.vertical': MomentOfInertia;
  /** Moment of inertia about the heel–toe axis. */
  readonly 'clubhead.inertia.heelToe': MomentOfInertia;
  /** Depth of the centre of gravity behind the face. */
  readonly 'clubhead.centreOfGravity.depth': Length;
  /** Height of the centre of gravity over the normal of the face centre. */
  readonly 'clubhead.centreOfGravity.high': Length;
  /** Centre of gravity toward the toe from that normal. */
  readonly 'clubhead.centreOfGravity.toe': Length;
  /** Horizontal radius of the face. */
  readonly 'clubhead.bulge': Length;
  /** Vertical radius of the face. */
  readonly 'clubhead.roll': Length;
  /** Restitution of a centred strike at the reference speed. */
  readonly 'clubhead.restitution.atReference': number;
  /** Normal approach speed that restitution belongs to. */
  readonly 'clubhead.restitution.referenceSpeed': Speed;
  /** Fall of restitution with speed [s/m]. */
  readonly 'clubhead.restitution.slope': number;
  /** Restitution at and beyond the edge distance. */
  readonly 'clubhead.restitution.atEdge': number;
  /** Distance from the face centre without spring effect. */
  readonly 'clubhead.restitution.edgeDistance': Length;
  /** Tangential restitution of a head with a constant law. */
  readonly 'clubhead.tangentialRestitution.value': number;
  /** Limit of the oblique law. */
  readonly 'clubhead.tangentialRestitution.limit': number;
  /** Onset of the oblique law. */
  readonly 'clubhead.tangentialRestitution.onset': Angle;
  /** Scale of the oblique law. */
  readonly 'clubhead.tangentialRestitution.scale': Angle;
  /** Friction of ball on face. */
  readonly 'clubhead.friction': number;
  /** Ball speed. */
  readonly 'launch.ballSpeed': Speed;
  /** Vertical launch angle. */
  readonly 'launch.launchAngle': Angle;
  /** Horizontal launch direction, + right. */
  readonly 'launch.launchDirection': Angle;
  /** Spin rate. */
  readonly 'launch.spinRate': AngularSpeed;
  /** Tilt of the spin axis, + right. */
  readonly 'launch.spinAxisTilt': Angle;
  /** Rifle spin. */
  readonly 'launch.rifleSpin': AngularSpeed;
  /** Air temperature. What is neither varied nor fixed beside it is 1013.25 hPa and 50 %. */
  readonly 'air.temperature': Temperature;
  /** Pressure at the place itself. */
  readonly 'air.pressure': Pressure;
  /** Relative humidity, 0 to 1. */
  readonly 'air.relativeHumidity': number;
  /** Height above sea level, which sets the pressure, and the temperature when that is not given. */
  readonly 'air.altitude': Length;
  /** Density, instead of temperature, pressure and humidity. */
  readonly 'air.density': Density;
  /** Viscosity, instead of temperature. */
  readonly 'air.viscosity': DynamicViscosity;
  /** Wind down the target line, + tailwind. */
  readonly 'wind.along': Speed;
  /** Wind across the target line, + toward the right. */
  readonly 'wind.across': Speed;
  /** Wind speed, with `wind.from` instead of the two components. */
  readonly 'wind.speed': Speed;
  /** Direction the wind comes from seen from the ball: 0 from the target, + from the right. */
  readonly 'wind.from': Angle;
  /** Roughness length of the logarithmic profile. */
  readonly 'wind.profile.roughness': Length;
  /** Displacement height of the logarithmic profile. */
  readonly 'wind.profile.displacement': Length;
  /** Exponent of the power profile. */
  readonly 'wind.profile.exponent': number;
  /** Height at which the wind was measured. */
  readonly 'wind.profile.referenceHeight': Length;
  /** Scale on the tilt of the crater wall. */
  readonly 'turf.tiltScale': number;
  /** Largest tilt of the crater wall. */
  readonly 'turf.tiltCap': Angle;
  /** Scale on the restitution of the turf. */
  readonly 'turf.restitutionScale': number;
  /** Friction of ball on turf. */
  readonly 'turf.friction': number;
  /** Rolling resistance. */
  readonly 'turf.rollingResistance': number;
  /** Height of the ground plane under the ball's start. */
  readonly 'ground.elevation': Length;
  /** Slope down the target line, + uphill. */
  readonly 'ground.slope': Angle;
  /** Slope across, + rising to the right. */
  readonly 'ground.crossSlope': Angle;
  /** Mass of the ball. */
  readonly 'ball.mass': Mass;
  /** Radius of the ball. */
  readonly 'ball.radius': Length;
  /** Moment of inertia of the ball. */
  readonly 'ball.inertia': MomentOfInertia;
}

/** Dotted name of a factor. */
export type FactorName = keyof FactorValues;

/** Unit and allowed range of a factor, both ends included. */
export interface FactorSpec {
  /** SI unit; empty for a ratio. */
  readonly unit: string;
  /** Smallest value. */
  readonly min: number;
  /** Largest value. */
  readonly max: number;
}

function spec(unit: string, min: number, max: number): FactorSpec {
  return { unit, min, max };
}

const HALF_TURN = Math.PI;
const INERTIA = spec('kg m²', 1e-5, 5e-3);

/**
 * Every factor with its unit and allowed range. The ranges are those of strike, fly and runOut, the narrowest where
 * two of them read the same input.
 */
export const sweepFactors: { readonly [Name in FactorName]: FactorSpec } = {
  'delivery.clubSpeed': spec('m/s', 1, 90),
  'delivery.attackAngle': spec('rad', -0.6, 0.6),
  'delivery.clubPath': spec('rad', -0.8, 0.8),
  'delivery.faceAngle': spec('rad', -0.8, 0.8),
  'delivery.dynamicLoft': spec('rad', -0.4, 1.4),
  'delivery.strikeOffset.toe': spec('m', -0.06, 0.06),
  'delivery.strikeOffset.high': spec('m', -0.04, 0.04),
  'delivery.closureRate': spec('rad/s', -200, 200),
  'clubhead.mass': spec('kg', 0.1, 0.6),
  'clubhead.shaftMass': spec('kg', 0, 0.1),
  'clubhead.inertia.faceNormal': INERTIA,
  'clubhead.inertia.vertical': INERTIA,
  'clubhead.inertia.heelToe': INERTIA,
  'clubhead.centreOfGravity.depth': spec('m', -0.02, 0.08),
  'clubhead.centreOfGravity.high': spec('m', -0.03, 0.03),
  'clubhead.centreOfGravity.toe': spec('m', -0.03, 0.03),
  'clubhead.bulge': spec('m', 0.1, 1e6),
  'clubhead.roll': spec('m', 0.1, 1e6),
  'clubhead.restitution.atReference': spec('', 0, 1),
  'clubhead.restitution.referenceSpeed': spec('m/s', 0, 100),
  'clubhead.restitution.slope': spec('s/m', -0.02, 0.02),
  'clubhead.restitution.atEdge': spec('', 0, 1),
  'clubhead.restitution.edgeDistance': spec('m', 0.001, 1),
  'clubhead.tangentialRestitution.value': spec('', -1, 1),
  'clubhead.tangentialRestitution.limit': spec('', -1, 1),
  'clubhead.tangentialRestitution.onset': spec('rad', 0, 1.5),
  'clubhead.tangentialRestitution.scale': spec('rad', 1e-3, 3),
  'clubhead.friction': spec('', 0, 2),
  'launch.ballSpeed': spec('m/s', 1, MAX_BALL_SPEED),
  'launch.launchAngle': spec('rad', -HALF_TURN / 2, HALF_TURN / 2),
  'launch.launchDirection': spec('rad', -HALF_TURN, HALF_TURN),
  'launch.spinRate': spec('rad/s', 0, MAX_SPIN_RATE),
  'launch.spinAxisTilt': spec('rad', -HALF_TURN, HALF_TURN),
  'launch.rifleSpin': spec('rad/s', -MAX_SPIN_RATE, MAX_SPIN_RATE),
  'air.temperature': spec('K', 223.15, 333.15),
  'air.pressure': spec('Pa', 30_000, 110_000),
  'air.relativeHumidity': spec('', 0, 1),
  'air.altitude': spec('m', -500, 5000),
  'air.density': spec('kg/m³', 0, 3),
  'air.viscosity': spec('Pa s', 1e-6, 1e-4),
  'wind.along': spec('m/s', -FASTEST_WIND, FASTEST_WIND),
  'wind.across': spec('m/s', -FASTEST_WIND, FASTEST_WIND),
  'wind.speed': spec('m/s', 0, FASTEST_WIND),
  'wind.from': spec('rad', -2 * HALF_TURN, 2 * HALF_TURN),
  'wind.profile.roughness': spec('m', 1e-5, 5),
  'wind.profile.displacement': spec('m', 0, 50),
  'wind.profile.exponent': spec('', 0, 1),
  'wind.profile.referenceHeight': spec('m', 0.5, 200),
  'turf.tiltScale': spec('', 0, 3),
  'turf.tiltCap': spec('rad', 0, 1),
  'turf.restitutionScale': spec('', 0, 1.9),
  'turf.friction': spec('', 0.01, 2),
  'turf.rollingResistance': spec('', 0.005, 2),
  'ground.elevation': spec('m', -1000, 1000),
  'ground.slope': spec('rad', -0.6, 0.6),
  'ground.crossSlope': spec('rad', -0.6, 0.6),
  'ball.mass': spec('kg', 0.01, 0.1),
  'ball.radius': spec('m', 0.01, 0.04),
  'ball.inertia': spec('kg m²', 1e-7, 1e-4),
};

/**
 * Returns the name when it is that of a factor.
 * @throws `FairflightError` `invalid-input` that lists the names of the same group, or all groups
 * @internal
 */
export function requireFactor(field: string, name: unknown): FactorName {
  if (typeof name === 'string' && Object.hasOwn(sweepFactors, name)) return name as FactorName;
  const names = Object.keys(sweepFactors);
  const group = typeof name === 'string' ? name.split('.')[0] : undefined;
  const near = names.filter((known) => known.split('.')[0] === group);
  const known = (near.length > 0 ? near : names).join(', ');
  throw refusal(
    field,
    `${field} must be the name of a factor, got ${JSON.stringify(name) ?? String(name)}; known${near.length > 0 ? ` in ${group}` : ''}: ${known}`,
    { value: name, hint: 'sweepFactors lists every name with unit and range' },
  );
}

/** True for a finite number in the range of the factor. @internal */
export function isWithin(name: FactorName, value: number): boolean {
  const { min, max } = sweepFactors[name];
  // False for NaN.
  return value >= min && value <= max;
}
