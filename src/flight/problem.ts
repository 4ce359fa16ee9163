import { type AerodynamicModel, aerodynamicModel } from '../aerodynamics/index.js';
import { defaultAir, type WindProfile, windRatio } from '../air/index.js';
import { type Ball, conformingBall } from '../ball/index.js';
import { requireRecord, requireWithin } from '../errors.js';
import type { Ground, Launch, Scene } from '../scene/index.js';

/** Standard gravity [m/s²], exact (3rd CGPM 1901; BIPM SI Brochure, 9th ed. 2019). */
export const STANDARD_GRAVITY = 9.80665;

/** Density the spin decay constants refer to [kg/m³]. */
const SPIN_DECAY_DENSITY = 1.225;

/** One flight as plain numbers: what the equations of motion and the engines read. @internal */
export interface FlightProblem {
  readonly model: AerodynamicModel;
  /** Initial velocity [m/s]. */
  readonly vx: number;
  readonly vy: number;
  readonly vz: number;
  /** Initial total spin rate [rad/s]. */
  readonly spin: number;
  /** Unit spin axis, fixed in space. */
  readonly nx: number;
  readonly ny: number;
  readonly nz: number;
  /** Wind at the reference height [m/s]. */
  readonly windAlong: number;
  readonly windAcross: number;
  /** Change of wind with height; undefined for none. */
  readonly profile: WindProfile | undefined;
  /** ρ π r² / 2m [1/m]. */
  readonly forceFactor: number;
  /** ρ 2r / μ [s/m]: Reynolds number per m/s. */
  readonly reynoldsPerSpeed: number;
  /** Ball radius [m]. */
  readonly radius: number;
  /** Spin decay per metre of air passed [1/m]. */
  readonly decay: number;
  /** Ground plane y = elevation + slopeX x + slopeZ z. */
  readonly elevation: number;
  readonly slopeX: number;
  readonly slopeZ: number;
}

const LAUNCH_FIELDS = [
  'ballSpeed',
  'launchAngle',
  'launchDirection',
  'spinRate',
  'spinAxisTilt',
  'rifleSpin',
];
const SCENE_FIELDS = ['air', 'wind', 'ground', 'turf', 'ball', 'aerodynamics'];
const DEGREES_HINT = 'angles are in radians; if that was degrees, pass degrees(…)';

/** Largest ball speed [m/s] and spin rate [rad/s] the library computes. */
export const MAX_BALL_SPEED = 110;
/** Largest spin rate [rad/s] the library computes: about 20,000 rpm. */
export const MAX_SPIN_RATE = 2100;

/** Checks a launch field by field. @throws FairflightError @internal */
export function checkLaunch(launch: Launch): void {
  requireRecord('launch', launch, LAUNCH_FIELDS);
  const hint = `if that was mph, pass mph(${String(launch.ballSpeed)})`;
  requireWithin('launch.ballSpeed', launch.ballSpeed, 1, MAX_BALL_SPEED, 'm/s', hint);
  requireWithin('launch.launchAngle', launch.launchAngle, -Math.PI / 2, Math.PI / 2, 'rad', DEGREES_HINT);
  requireWithin(
    'launch.launchDirection',
    launch.launchDirection ?? 0,
    -Math.PI,
    Math.PI,
    'rad',
    DEGREES_HINT,
  );
  const spinHint = `if that was rpm, pass rpm(${String(launch.spinRate)})`;
  requireWithin('launch.spinRate', launch.spinRate, 0, MAX_SPIN_RATE, 'rad/s', spinHint);
  requireWithin('launch.spinAxisTilt', launch.spinAxisTilt ?? 0, -Math.PI, Math.PI, 'rad', DEGREES_HINT);
  requireWithin('launch.rifleSpin', launch.rifleSpin ?? 0, -MAX_SPIN_RATE, MAX_SPIN_RATE, 'rad/s');
}

/** Checks a ground plane. @throws FairflightError @internal */
export function checkGround(ground: Ground): void {
  requireRecord('scene.ground', ground, ['elevation', 'slope', 'crossSlope']);
  requireWithin('scene.ground.elevation', ground.elevation ?? 0, -1000, 1000, 'm');
  requireWithin('scene.ground.slope', ground.slope ?? 0, -0.6, 0.6, 'rad', DEGREES_HINT);
  requireWithin('scene.ground.crossSlope', ground.crossSlope ?? 0, -0.6, 0.6, 'rad', DEGREES_HINT);
}

function checkBall(ball: Ball): void {
  requireWithin('scene.ball.mass', ball.mass, 0.001, 1, 'kg', 'a conforming ball is grams(45.93)');
  requireWithin(
    'scene.ball.radius',
    ball.radius,
    0.005,
    0.1,
    'm',
    'a conforming ball is millimetres(21.335)',
  );
  requireWithin('scene.ball.inertia', ball.inertia, 1e-8, 1e-2, 'kg m²');
}

function checkProfile(profile: WindProfile): void {
  // Evaluated once at the reference height so that a bad profile fails here and not inside the integration.
  windRatio(profile, 10);
}

/** Resolves the scene's defaults and checks it. @throws FairflightError @internal */
export function resolveScene(scene: Scene): {
  readonly air: { readonly density: number; readonly viscosity: number };
  readonly ball: Ball;
  readonly model: AerodynamicModel;
  readonly windAlong: number;
  readonly windAcross: number;
  readonly profile: WindProfile | undefined;
  readonly ground: Ground;
} {
  requireRecord('scene', scene, SCENE_FIELDS);
  const air = scene.air ?? defaultAir;
  requireWithin('scene.air.density', air.density, 0, 3, 'kg/m³');
  requireWithin('scene.air.viscosity', air.viscosity, 1e-6, 1e-4, 'Pa s');
  const ball = scene.ball ?? conformingBall;
  checkBall(ball);
  const { along = 0, across = 0, profile = undefined } = scene.wind ?? {};
  requireWithin('scene.wind.along', along, -60, 60, 'm/s', 'if that was mph, pass mph(…)');
  requireWithin('scene.wind.across', across, -60, 60, 'm/s', 'if that was mph, pass mph(…)');
  if (profile !== undefined) checkProfile(profile);
  const ground = scene.ground ?? {};
  checkGround(ground);
  return {
    air,
    ball,
    model: aerodynamicModel(scene.aerodynamics),
    windAlong: along,
    windAcross: across,
    profile: profile?.kind === 'uniform' ? undefined : profile,
    ground,
  };
}

/** Turns a launch and a scene into plain numbers. @throws FairflightError @internal */
export function flightProblem(launch: Launch, scene: Scene): FlightProblem {
  checkLaunch(launch);
  const { air, ball, model, windAlong, windAcross, profile, ground } = resolveScene(scene);
  const direction = launch.launchDirection ?? 0;
  const cosA = Math.cos(launch.launchAngle);
  const sinA = Math.sin(launch.launchAngle);
  const cosD = Math.cos(direction);
  const sinD = Math.sin(direction);
  const tilt = launch.spinAxisTilt ?? 0;
  const back = launch.spinRate * Math.cos(tilt);
  const sideward = launch.spinRate * Math.sin(tilt);
  const rifle = launch.rifleSpin ?? 0;
  // Spin vector: backspin about k (horizontal, right of the launch direction), sidespin about −l with l = k × v,
  // rifle spin about the launch direction v itself.
  const wx = -back * sinD + sideward * sinA * cosD + rifle * cosA * cosD;
  const wy = -sideward * cosA + rifle * sinA;
  const wz = back * cosD + sideward * sinA * sinD + rifle * cosA * sinD;
  const spin = Math.hypot(wx, wy, wz);
  return {
    model,
    vx: launch.ballSpeed * cosA * cosD,
    vy: launch.ballSpeed * sinA,
    vz: launch.ballSpeed * cosA * sinD,
    spin,
    nx: spin > 0 ? wx / spin : 0,
    ny: spin > 0 ? wy / spin : 0,
    nz: spin > 0 ? wz / spin : 1,
    windAlong,
    windAcross,
    profile: windAlong === 0 && windAcross === 0 ? undefined : profile,
    forceFactor: (air.density * Math.PI * ball.radius * ball.radius) / (2 * ball.mass),
    reynoldsPerSpeed: (air.density * 2 * ball.radius) / air.viscosity,
    radius: ball.radius,
    decay: (model.spinDecay * (air.density / SPIN_DECAY_DENSITY)) / ball.radius,
    elevation: ground.elevation ?? 0,
    slopeX: Math.tan(ground.slope ?? 0),
    slopeZ: Math.tan(ground.crossSlope ?? 0),
  };
}
