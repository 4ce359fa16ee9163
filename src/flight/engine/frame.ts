import type { CompiledLaw } from '../../aerodynamics/compiled-law.js';
import { changesWithHeight } from '../../air/wind-ratio.js';
import { STANDARD_GRAVITY } from '../../gravity.js';
import { STATES } from '../equations.js';
import type { FlightProblem } from '../problem.js';
import { seenNothing, type WritableRanges } from '../range-watch.js';
import { APEX_RESTEP_BELOW, firstStep, VELOCITY_TOLERANCE_PER_METRE } from './tolerance.js';

/**
 * The frame a kernel flies in: axes of which the third is the spin axis and the first is horizontal, moving with the wind,
 * and spin as r ω in cells of the law's table. Where wind changes with height the axes stand still.
 * @internal
 */
export interface KernelFrame {
  axis1x: number;
  axis1z: number;
  axis2x: number;
  axis2y: number;
  axis2z: number;
  axis3x: number;
  axis3y: number;
  axis3z: number;
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
    axis1x: 1,
    axis1z: 0,
    axis2x: 0,
    axis2y: 1,
    axis2z: 0,
    axis3x: 0,
    axis3y: 0,
    axis3z: 1,
    windAlong: 0,
    windAcross: 0,
    spinScale: 1,
    reynoldsPerSpeed: 1,
    cellsPerSpinRatio: 1,
  };
}

/** Level part of a unit spin axis below which it counts as upright, and any first axis will do. */
const UPRIGHT_BELOW = 1e-9;

/** Sets a frame for a problem. @internal */
export function setFrame(frame: KernelFrame, problem: FlightProblem, law: CompiledLaw): void {
  const { nx, ny, nz } = problem;
  const level = Math.sqrt(nx * nx + nz * nz);
  const axis1x = level > UPRIGHT_BELOW ? nz / level : 1;
  const axis1z = level > UPRIGHT_BELOW ? -nx / level : 0;
  frame.axis1x = axis1x;
  frame.axis1z = axis1z;
  frame.axis2x = ny * axis1z;
  frame.axis2y = nz * axis1x - nx * axis1z;
  frame.axis2z = -ny * axis1x;
  frame.axis3x = nx;
  frame.axis3y = ny;
  frame.axis3z = nz;
  // Axes can't move with a wind that changes with height.
  const still = changesWithHeight(problem.profile);
  frame.windAlong = still ? 0 : problem.windAlong;
  frame.windAcross = still ? 0 : problem.windAcross;
  frame.spinScale = law.cellsPerSpinRatio * problem.radius;
  frame.reynoldsPerSpeed = problem.reynoldsPerSpeed;
  frame.cellsPerSpinRatio = law.cellsPerSpinRatio;
}

/** Metres a landing moves for an error of 1 in a coefficient: what the error of the tables costs a long drive. */
const METRES_PER_COEFFICIENT = 1000;

/**
 * Packs a problem into the kernel's parameter array (order in build-time/kernel-layout.ts). Returns false
 * where the problem needs the general engine: a tolerance the tables are too coarse for, or a start that is not clear of the
 * ground.
 * @internal
 */
export function packKernel(
  problem: FlightProblem,
  law: CompiledLaw,
  frame: KernelFrame,
  tolerance: number,
  timeLimit: number,
  p: Float64Array,
): boolean {
  if (tolerance < METRES_PER_COEFFICIENT * law.measuredError) return false;
  const { slopeX, slopeZ, vy } = problem;
  const { windAlong, windAcross } = frame;
  const { axis1x, axis1z, axis2x, axis2y, axis2z, axis3x, axis3y, axis3z } = frame;
  const ux = problem.vx - windAlong;
  const uz = problem.vz - windAcross;
  const climb = vy - slopeX * problem.vx - slopeZ * problem.vz;
  const height = -problem.elevation;
  if (height < 0 || (height === 0 && climb <= 0)) return false;
  const velocityTolerance = tolerance * VELOCITY_TOLERANCE_PER_METRE;
  p[0] = axis1x * ux + axis1z * uz;
  p[1] = axis2x * ux + axis2y * vy + axis2z * uz;
  p[2] = axis3x * ux + axis3y * vy + axis3z * uz;
  p[3] = frame.spinScale * problem.spin;
  p[4] = STANDARD_GRAVITY * axis2y;
  p[5] = STANDARD_GRAVITY * axis3y;
  p[6] = -problem.dragFactor;
  p[7] = problem.spin === 0 ? 0 : problem.liftFactor;
  p[8] = -problem.decay;
  p[9] = law.cellsPerReynolds * problem.reynoldsPerSpeed;
  p[10] = -slopeX * axis1x - slopeZ * axis1z;
  p[11] = axis2y - slopeX * axis2x - slopeZ * axis2z;
  p[12] = axis3y - slopeX * axis3x - slopeZ * axis3z;
  p[13] = -slopeX * windAlong - slopeZ * windAcross;
  p[14] = axis2y;
  p[15] = axis3y;
  p[16] = height;
  p[17] = firstStep(velocityTolerance, Math.sqrt(ux * ux + vy * vy + uz * uz));
  p[18] = problem.model.spinEntering === 'across' ? 1 : 0;
  p[19] = law.spinCells.low;
  p[20] = law.spinCells.high;
  p[21] = law.reynoldsCells.low;
  p[22] = law.reynoldsCells.high;
  p[23] = 1 / velocityTolerance;
  p[24] = timeLimit;
  p[25] = tolerance < APEX_RESTEP_BELOW ? 1 : 0;
  p[26] = law.reynoldsForm;
  const along = problem.windAlong - windAlong;
  const across = problem.windAcross - windAcross;
  p[27] = axis1x * along + axis1z * across;
  p[28] = axis2x * along + axis2z * across;
  p[29] = axis3x * along + axis3z * across;
  return true;
}

/** End of a compiled flight in the world frame; fields are overwritten by the next flight. @internal */
export interface CompiledEnd {
  ending: 'landed' | 'time-limit';
  time: number;
  apex: number;
  apexAt: number;
  readonly state: Float64Array;
  /** Reynolds numbers and spin ratios at the nodes. */
  readonly seen: WritableRanges;
}

/** An end to write into. @internal */
export function compiledEnd(): CompiledEnd {
  return {
    ending: 'landed',
    time: 0,
    apex: 0,
    apexAt: 0,
    state: new Float64Array(STATES),
    seen: seenNothing(),
  };
}

/** Turns (a, b, c, w, A, B, C) at `offset` into position, velocity and spin rate in the world frame. @internal */
export function toWorld(
  frame: KernelFrame,
  from: Float64Array,
  offset: number,
  time: number,
  s: Float64Array,
): void {
  const { axis1x, axis1z, axis2x, axis2y, axis2z, axis3x, axis3y, axis3z, windAlong, windAcross } = frame;
  const a = from[offset]!;
  const b = from[offset + 1]!;
  const c = from[offset + 2]!;
  const A = from[offset + 4]!;
  const B = from[offset + 5]!;
  const C = from[offset + 6]!;
  s[0] = axis1x * A + axis2x * B + axis3x * C + windAlong * time;
  s[1] = axis2y * B + axis3y * C;
  s[2] = axis1z * A + axis2z * B + axis3z * C + windAcross * time;
  s[3] = axis1x * a + axis2x * b + axis3x * c + windAlong;
  s[4] = axis2y * b + axis3y * c;
  s[5] = axis1z * a + axis2z * b + axis3z * c + windAcross;
  s[6] = from[offset + 3]! / frame.spinScale;
}

/** Reads a kernel's results (order in build-time/kernel-layout.ts, up to the work done) at `offset` as an end in the world frame. @internal */
export function toEnd(frame: KernelFrame, out: Float64Array, offset: number, end: CompiledEnd): void {
  const { axis3x, axis3z, windAlong, windAcross } = frame;
  const A = out[offset + 9]!;
  const B = out[offset + 10]!;
  const C = out[offset + 11]!;
  const t = out[offset + 12]!;
  const x = frame.axis1x * A + frame.axis2x * B + axis3x * C + windAlong * t;
  const z = frame.axis1z * A + frame.axis2z * B + axis3z * C + windAcross * t;
  // A drop of less than a rounding error must not end before it began.
  end.time = Math.max(0, out[offset + 7]!);
  end.apex = out[offset + 8]!;
  end.apexAt = Math.sqrt(x * x + z * z);
  const { reynolds, spinRatio } = end.seen;
  reynolds.min = frame.reynoldsPerSpeed * out[offset + 13]!;
  reynolds.max = frame.reynoldsPerSpeed * out[offset + 14]!;
  spinRatio.min = out[offset + 15]! / frame.cellsPerSpinRatio;
  spinRatio.max = out[offset + 16]! / frame.cellsPerSpinRatio;
  toWorld(frame, out, offset, end.time, end.state);
}
