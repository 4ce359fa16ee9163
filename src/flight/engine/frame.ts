import type { CompiledLaw } from '../../aerodynamics/compiled-law.js';
import { STANDARD_GRAVITY } from '../../gravity.js';
import { STATES } from '../equations.js';
import type { FlightProblem } from '../problem.js';
import { APEX_RESTEP_BELOW, firstStep, VELOCITY_TOLERANCE_PER_METRE } from './tolerance.js';

/**
 * The frame a kernel flies in: axes whose third (n) is the spin axis and whose first (e1) is horizontal, moving with the
 * wind, and spin as r ω in cells of the law's table.
 * @internal
 */
export interface KernelFrame {
  e1x: number;
  e1z: number;
  e2x: number;
  e2y: number;
  e2z: number;
  nx: number;
  ny: number;
  nz: number;
  windAlong: number;
  windAcross: number;
  /** Spin of the kernel for each rad/s. */
  spinScale: number;
  reynoldsPerSpeed: number;
  cellsPerSpinRatio: number;
}

/** A frame to be set. @internal */
export function kernelFrame(): KernelFrame {
  return {
    e1x: 1,
    e1z: 0,
    e2x: 0,
    e2y: 1,
    e2z: 0,
    nx: 0,
    ny: 0,
    nz: 1,
    windAlong: 0,
    windAcross: 0,
    spinScale: 1,
    reynoldsPerSpeed: 1,
    cellsPerSpinRatio: 1,
  };
}

/** Sets a frame for a problem. @internal */
export function setFrame(frame: KernelFrame, problem: FlightProblem, law: CompiledLaw): void {
  const { nx, ny, nz } = problem;
  const level = Math.sqrt(nx * nx + nz * nz);
  const e1x = level > 1e-9 ? nz / level : 1;
  const e1z = level > 1e-9 ? -nx / level : 0;
  frame.e1x = e1x;
  frame.e1z = e1z;
  frame.e2x = ny * e1z;
  frame.e2y = nz * e1x - nx * e1z;
  frame.e2z = -ny * e1x;
  frame.nx = nx;
  frame.ny = ny;
  frame.nz = nz;
  frame.windAlong = problem.windAlong;
  frame.windAcross = problem.windAcross;
  frame.spinScale = law.cellsPerSpinRatio * problem.radius;
  frame.reynoldsPerSpeed = problem.reynoldsPerSpeed;
  frame.cellsPerSpinRatio = law.cellsPerSpinRatio;
}

/** Metres a landing moves for an error of 1 in a coefficient: what the error of the tables costs a long drive. */
const METRES_PER_COEFFICIENT = 1000;

/**
 * Packs a problem into the kernel's parameter array (order of KERNEL_PARAMETERS) from `at` on. Returns false where the problem
 * needs the general engine: a tolerance the tables are too coarse for, wind that changes with height, or a start that
 * is not clear of the ground.
 * @internal
 */
export function packKernel(
  problem: FlightProblem,
  law: CompiledLaw,
  frame: KernelFrame,
  tolerance: number,
  timeLimit: number,
  p: Float64Array,
  at = 0,
): boolean {
  if (problem.profile !== undefined || tolerance < METRES_PER_COEFFICIENT * law.measuredError) return false;
  const { windAlong, windAcross, slopeX, slopeZ, vy } = problem;
  const { e1x, e1z, e2x, e2y, e2z, nx, ny, nz } = frame;
  const ux = problem.vx - windAlong;
  const uz = problem.vz - windAcross;
  const climb = vy - slopeX * problem.vx - slopeZ * problem.vz;
  const height = -problem.elevation;
  if (height < 0 || (height === 0 && climb <= 0)) return false;
  const velocityTolerance = tolerance * VELOCITY_TOLERANCE_PER_METRE;
  p[at] = e1x * ux + e1z * uz;
  p[at + 1] = e2x * ux + e2y * vy + e2z * uz;
  p[at + 2] = nx * ux + ny * vy + nz * uz;
  p[at + 3] = frame.spinScale * problem.spin;
  p[at + 4] = STANDARD_GRAVITY * e2y;
  p[at + 5] = STANDARD_GRAVITY * ny;
  p[at + 6] = -problem.forceFactor;
  p[at + 7] = problem.spin === 0 ? 0 : problem.forceFactor;
  p[at + 8] = -problem.decay;
  p[at + 9] = law.cellsPerReynolds * problem.reynoldsPerSpeed;
  p[at + 10] = -slopeX * e1x - slopeZ * e1z;
  p[at + 11] = e2y - slopeX * e2x - slopeZ * e2z;
  p[at + 12] = ny - slopeX * nx - slopeZ * nz;
  p[at + 13] = -slopeX * windAlong - slopeZ * windAcross;
  p[at + 14] = e2y;
  p[at + 15] = ny;
  p[at + 16] = height;
  p[at + 17] = firstStep(velocityTolerance, Math.sqrt(ux * ux + vy * vy + uz * uz));
  p[at + 18] = problem.model.spinEntering === 'across' ? 1 : 0;
  p[at + 19] = law.spinCells.low;
  p[at + 20] = law.spinCells.high;
  p[at + 21] = law.reynoldsCells.low;
  p[at + 22] = law.reynoldsCells.high;
  p[at + 23] = 1 / velocityTolerance;
  p[at + 24] = timeLimit;
  p[at + 25] = tolerance < APEX_RESTEP_BELOW ? 1 : 0;
  return true;
}

/** End of a compiled flight in the world frame; fields are overwritten by the next flight. @internal */
export interface CompiledEnd {
  ending: 'landed' | 'time-limit';
  time: number;
  apex: number;
  apexAt: number;
  readonly state: Float64Array;
}

/** An end to write into. @internal */
export function compiledEnd(): CompiledEnd {
  return { ending: 'landed', time: 0, apex: 0, apexAt: 0, state: new Float64Array(STATES) };
}

/** Turns (a, b, c, w, A, B, C) at `offset` into position, velocity and spin rate in the world frame. @internal */
export function toWorld(
  frame: KernelFrame,
  from: Float64Array,
  offset: number,
  time: number,
  s: Float64Array,
): void {
  const { e1x, e1z, e2x, e2y, e2z, nx, ny, nz, windAlong, windAcross } = frame;
  const a = from[offset]!;
  const b = from[offset + 1]!;
  const c = from[offset + 2]!;
  const A = from[offset + 4]!;
  const B = from[offset + 5]!;
  const C = from[offset + 6]!;
  s[0] = e1x * A + e2x * B + nx * C + windAlong * time;
  s[1] = e2y * B + ny * C;
  s[2] = e1z * A + e2z * B + nz * C + windAcross * time;
  s[3] = e1x * a + e2x * b + nx * c + windAlong;
  s[4] = e2y * b + ny * c;
  s[5] = e1z * a + e2z * b + nz * c + windAcross;
  s[6] = from[offset + 3]! / frame.spinScale;
}

/** Reads a kernel's results (order of KERNEL_RESULTS, up to the apex) at `offset` as an end in the world frame. @internal */
export function toEnd(frame: KernelFrame, out: Float64Array, offset: number, end: CompiledEnd): void {
  const { nx, nz, windAlong, windAcross } = frame;
  const A = out[offset + 9]!;
  const B = out[offset + 10]!;
  const C = out[offset + 11]!;
  const t = out[offset + 12]!;
  const x = frame.e1x * A + frame.e2x * B + nx * C + windAlong * t;
  const z = frame.e1z * A + frame.e2z * B + nz * C + windAcross * t;
  // A drop of less than a rounding error must not end before it began.
  end.time = Math.max(0, out[offset + 7]!);
  end.apex = out[offset + 8]!;
  end.apexAt = Math.sqrt(x * x + z * z);
  toWorld(frame, out, offset, end.time, end.state);
}
