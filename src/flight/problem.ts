import type { CoefficientLaw } from '../aerodynamics/model.js';
import type { WindProfile } from '../air/index.js';
import type { Ball } from '../ball/index.js';
import type { Launch } from '../inputs/launch.js';
import type { ResolvedScene } from '../scene/scene.js';

/** Density the spin decay constants refer to [kg/m³]. @internal */
export const SPIN_DECAY_DENSITY = 1.225;

/** One flight as plain numbers: what the equations of motion and the engines read. @internal */
export interface FlightProblem {
  readonly model: CoefficientLaw;
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
  /** ρ π r² / 2m times a factor on the drag, and one on the lift [1/m]. */
  readonly dragFactor: number;
  readonly liftFactor: number;
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

/** A problem that can be written over, for engines that fly many launches through one scene. @internal */
export type WritableProblem = { -readonly [K in keyof FlightProblem]: FlightProblem[K] };

/** The scene's share of a problem, with a launch still to be written in. @internal */
export function sceneProblem(scene: ResolvedScene): WritableProblem {
  const { air, ball, model, windAlong, windAcross, profile, elevation, slope, crossSlope } = scene;
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
    dragFactor: 0,
    liftFactor: 0,
    reynoldsPerSpeed: 0,
    radius: ball.radius,
    decay: 0,
    elevation,
    slopeX: Math.tan(slope),
    slopeZ: Math.tan(crossSlope),
  };
  setAir(problem, air.density, air.viscosity, ball);
  return problem;
}

/** Writes the constants that depend on the air, and on factors on the model's coefficients. @internal */
export function setAir(
  problem: WritableProblem,
  density: number,
  viscosity: number,
  ball: Ball,
  dragScale = 1,
  liftScale = 1,
  spinDecay: number = problem.model.spinDecay,
): void {
  const forceFactor = (density * Math.PI * ball.radius * ball.radius) / (2 * ball.mass);
  problem.dragFactor = dragScale * forceFactor;
  problem.liftFactor = liftScale * forceFactor;
  problem.reynoldsPerSpeed = (density * 2 * ball.radius) / viscosity;
  problem.decay = (spinDecay * (density / SPIN_DECAY_DENSITY)) / ball.radius;
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

/** Writes a launch, already read, into a problem. @internal */
export function launchInto(problem: WritableProblem, launch: Launch): void {
  setLaunch(
    problem,
    launch.ballSpeed,
    launch.launchAngle,
    launch.launchDirection ?? 0,
    launch.spinRate,
    launch.spinAxisTilt ?? 0,
    launch.rifleSpin ?? 0,
  );
}

/** One launch in one scene as plain numbers. @internal */
export function flightProblem(launch: Launch, scene: ResolvedScene): FlightProblem {
  const problem = sceneProblem(scene);
  launchInto(problem, launch);
  return problem;
}
