import { type AerodynamicModel, resolveModel } from '../aerodynamics/index.js';
import { defaultAir, type WindProfile } from '../air/index.js';
import { FASTEST_WIND, requireWind } from '../air/require-wind.js';
import { type Ball, conformingBall } from '../ball/index.js';
import { isWithin, requireRecord, requireWithin } from '../errors.js';
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

const GROUND_FIELDS = ['elevation', 'slope', 'crossSlope'];
const SCENE_FIELDS = ['air', 'wind', 'ground', 'turf', 'ball', 'aerodynamics'];
const DEGREES_HINT = 'angles are in radians; if that was degrees, pass degrees(…)';

/** Largest ball speed [m/s] the library computes. */
export const MAX_BALL_SPEED = 110;
/** Largest spin rate [rad/s] the library computes: about 20,000 rpm. */
export const MAX_SPIN_RATE = 2100;

type AllowedRange = readonly [min: number, max: number, unit: string];

/** Allowed range and unit of every launch field. @internal */
export const LAUNCH_RANGES: Readonly<
  Record<
    'ballSpeed' | 'launchAngle' | 'launchDirection' | 'spinRate' | 'spinAxisTilt' | 'rifleSpin',
    AllowedRange
  >
> = {
  ballSpeed: [1, MAX_BALL_SPEED, 'm/s'],
  launchAngle: [-Math.PI / 2, Math.PI / 2, 'rad'],
  launchDirection: [-Math.PI, Math.PI, 'rad'],
  spinRate: [0, MAX_SPIN_RATE, 'rad/s'],
  spinAxisTilt: [-Math.PI, Math.PI, 'rad'],
  rifleSpin: [-MAX_SPIN_RATE, MAX_SPIN_RATE, 'rad/s'],
};

/** Allowed range and unit of the scene's numbers. @internal */
export const SCENE_RANGES: Readonly<
  Record<
    'airDensity' | 'airViscosity' | 'windAlong' | 'windAcross' | 'elevation' | 'slope' | 'crossSlope',
    AllowedRange
  >
> = {
  airDensity: [0, 3, 'kg/m³'],
  airViscosity: [1e-6, 1e-4, 'Pa s'],
  windAlong: [-FASTEST_WIND, FASTEST_WIND, 'm/s'],
  windAcross: [-FASTEST_WIND, FASTEST_WIND, 'm/s'],
  elevation: [-1000, 1000, 'm'],
  slope: [-0.6, 0.6, 'rad'],
  crossSlope: [-0.6, 0.6, 'rad'],
};

type LaunchField = keyof typeof LAUNCH_RANGES;
const LAUNCH_FIELDS = Object.keys(LAUNCH_RANGES) as LaunchField[];
const REQUIRED_FIELDS: ReadonlySet<LaunchField> = new Set(['ballSpeed', 'launchAngle', 'spinRate']);

function launchHint(field: LaunchField, value: unknown): string | undefined {
  if (field === 'ballSpeed') return `if that was mph, pass mph(${String(value)})`;
  if (field === 'spinRate') return `if that was rpm, pass rpm(${String(value)})`;
  return field === 'rifleSpin' ? undefined : DEGREES_HINT;
}

/** Checks a launch field by field. @throws FairflightError @internal */
export function checkLaunch(launch: Launch): void {
  requireRecord('launch', launch, LAUNCH_FIELDS);
  if (isLaunch(launch)) return;
  for (const field of LAUNCH_FIELDS) {
    const value = launch[field];
    if (value === undefined && !REQUIRED_FIELDS.has(field)) continue;
    requireWithin(`launch.${field}`, value, ...LAUNCH_RANGES[field], launchHint(field, value));
  }
}

/** Written out, since to reach fields by name takes longer than all the rest of a check. */
function isLaunch(launch: Launch): boolean {
  const { ballSpeed, launchAngle, launchDirection, spinRate, spinAxisTilt, rifleSpin } = launch;
  return (
    isIn(ballSpeed, LAUNCH_RANGES.ballSpeed) &&
    isIn(launchAngle, LAUNCH_RANGES.launchAngle) &&
    isIn(spinRate, LAUNCH_RANGES.spinRate) &&
    (launchDirection === undefined || isIn(launchDirection, LAUNCH_RANGES.launchDirection)) &&
    (spinAxisTilt === undefined || isIn(spinAxisTilt, LAUNCH_RANGES.spinAxisTilt)) &&
    (rifleSpin === undefined || isIn(rifleSpin, LAUNCH_RANGES.rifleSpin))
  );
}

function isIn(value: unknown, range: AllowedRange): boolean {
  return isWithin(value, range[0], range[1]);
}

/** `requireWithin`, without the cost of spreading a range where the value is fine, as nearly every value is. */
function requireInRange(field: string, value: unknown, range: AllowedRange, hint?: string): void {
  if (!isIn(value, range)) requireWithin(field, value, ...range, hint);
}

/** Checks a ground plane. @throws FairflightError @internal */
export function checkGround(ground: Ground): void {
  requireRecord('scene.ground', ground, GROUND_FIELDS);
  requireInRange('scene.ground.elevation', ground.elevation ?? 0, SCENE_RANGES.elevation);
  requireInRange('scene.ground.slope', ground.slope ?? 0, SCENE_RANGES.slope, DEGREES_HINT);
  requireInRange('scene.ground.crossSlope', ground.crossSlope ?? 0, SCENE_RANGES.crossSlope, DEGREES_HINT);
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
  requireInRange('scene.air.density', air.density, SCENE_RANGES.airDensity);
  requireInRange('scene.air.viscosity', air.viscosity, SCENE_RANGES.airViscosity);
  const ball = scene.ball ?? conformingBall;
  checkBall(ball);
  const {
    along = 0,
    across = 0,
    profile,
  } = scene.wind === undefined ? {} : requireWind('scene.wind', scene.wind);
  const ground = scene.ground ?? {};
  checkGround(ground);
  return {
    air,
    ball,
    model: resolveModel(scene.aerodynamics),
    windAlong: along,
    windAcross: across,
    profile: profile?.kind === 'uniform' ? undefined : profile,
    ground,
  };
}

/** A problem that can be written over, for engines that fly many launches through one scene. @internal */
export type WritableProblem = { -readonly [K in keyof FlightProblem]: FlightProblem[K] };

/** The scene's share of a problem, with a launch still to be written in. @throws FairflightError @internal */
export function sceneProblem(scene: Scene): WritableProblem {
  const { air, ball, model, windAlong, windAcross, profile, ground } = resolveScene(scene);
  const problem: WritableProblem = {
    model,
    vx: 0,
    vy: 0,
    vz: 0,
    spin: 0,
    nx: 0,
    ny: 0,
    nz: 1,
    windAlong,
    windAcross,
    profile: windAlong === 0 && windAcross === 0 ? undefined : profile,
    forceFactor: 0,
    reynoldsPerSpeed: 0,
    radius: ball.radius,
    decay: 0,
    elevation: ground.elevation ?? 0,
    slopeX: ground.slope ? Math.tan(ground.slope) : 0,
    slopeZ: ground.crossSlope ? Math.tan(ground.crossSlope) : 0,
  };
  setAir(problem, air.density, air.viscosity, ball);
  return problem;
}

/** Writes the constants that depend on the air. @internal */
export function setAir(problem: WritableProblem, density: number, viscosity: number, ball: Ball): void {
  problem.forceFactor = (density * Math.PI * ball.radius * ball.radius) / (2 * ball.mass);
  problem.reynoldsPerSpeed = (density * 2 * ball.radius) / viscosity;
  problem.decay = (problem.model.spinDecay * (density / SPIN_DECAY_DENSITY)) / ball.radius;
}

/**
 * Writes a launch into a problem. Spin vector: backspin about k (horizontal, right of the launch direction), sidespin
 * about −l with l = k × v, rifle spin about the launch direction v itself.
 * @internal
 */
export function setLaunch(
  problem: WritableProblem,
  ballSpeed: number,
  launchAngle: number,
  direction: number,
  spinRate: number,
  tilt: number,
  rifle: number,
): void {
  const cosA = Math.cos(launchAngle);
  const sinA = Math.sin(launchAngle);
  const cosD = direction === 0 ? 1 : Math.cos(direction);
  const sinD = direction === 0 ? 0 : Math.sin(direction);
  const back = spinRate * Math.cos(tilt);
  const sideward = spinRate * Math.sin(tilt);
  const wx = -back * sinD + sideward * sinA * cosD + rifle * cosA * cosD;
  const wy = -sideward * cosA + rifle * sinA;
  const wz = back * cosD + sideward * sinA * sinD + rifle * cosA * sinD;
  const spin = Math.sqrt(wx * wx + wy * wy + wz * wz);
  problem.vx = ballSpeed * cosA * cosD;
  problem.vy = ballSpeed * sinA;
  problem.vz = ballSpeed * cosA * sinD;
  problem.spin = spin;
  problem.nx = spin > 0 ? wx / spin : 0;
  problem.ny = spin > 0 ? wy / spin : 0;
  problem.nz = spin > 0 ? wz / spin : 1;
}

/** Turns a launch and a scene into plain numbers. @throws FairflightError @internal */
export function flightProblem(launch: Launch, scene: Scene): FlightProblem {
  checkLaunch(launch);
  const problem = sceneProblem(scene);
  setLaunch(
    problem,
    launch.ballSpeed,
    launch.launchAngle,
    launch.launchDirection ?? 0,
    launch.spinRate,
    launch.spinAxisTilt ?? 0,
    launch.rifleSpin ?? 0,
  );
  return problem;
}
