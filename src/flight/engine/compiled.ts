import { type CompiledLaw, compiledLaw } from '../../aerodynamics/compiled-law.js';
import { STATES } from '../equations.js';
import { type FlightProblem, STANDARD_GRAVITY } from '../problem.js';
import type { NodeSink } from './general.js';
import { flyKernel, LANDED, OUTSIDE } from './kernel.generated.js';
import { KERNEL_PARAMETERS, KERNEL_RESULTS, kernelConstants, TRACK_FIELDS } from './kernel-layout.js';
import { APEX_RESTEP_BELOW, firstStep, VELOCITY_TOLERANCE_PER_METRE } from './tolerance.js';

/** Axes of the kernel: the third is the spin axis, the first is horizontal. @internal */
export interface KernelAxes {
  readonly e1x: number;
  readonly e1z: number;
  readonly e2x: number;
  readonly e2y: number;
  readonly e2z: number;
}

/** Axes for a spin axis (nx, ny, nz). @internal */
export function kernelAxes(nx: number, ny: number, nz: number): KernelAxes {
  const level = Math.sqrt(nx * nx + nz * nz);
  const e1x = level > 1e-9 ? nz / level : 1;
  const e1z = level > 1e-9 ? -nx / level : 0;
  return { e1x, e1z, e2x: ny * e1z, e2y: nz * e1x - nx * e1z, e2z: -ny * e1x };
}

/** Metres a landing moves for an error of 1 in a coefficient: what the error of the tables costs a long drive. */
const METRES_PER_COEFFICIENT = 1000;

/**
 * Packs a problem into the kernel's parameter array (order of KERNEL_PARAMETERS). Returns false where the problem
 * needs the general engine: a tolerance the tables are too coarse for, wind that changes with height, a law that has no
 * compiled form, or a start that is not clear of the ground.
 * @internal
 */
export function packKernel(
  problem: FlightProblem,
  law: CompiledLaw,
  axes: KernelAxes,
  tolerance: number,
  timeLimit: number,
  p: Float64Array,
): boolean {
  if (problem.profile !== undefined || tolerance < METRES_PER_COEFFICIENT * law.measuredError) return false;
  const { nx, ny, nz, windAlong, windAcross, slopeX, slopeZ } = problem;
  const { e1x, e1z, e2x, e2y, e2z } = axes;
  const ux = problem.vx - windAlong;
  const uz = problem.vz - windAcross;
  const climb = problem.vy - slopeX * problem.vx - slopeZ * problem.vz;
  const height = -problem.elevation;
  if (height < 0 || (height === 0 && climb <= 0)) return false;
  const velocityTolerance = tolerance * VELOCITY_TOLERANCE_PER_METRE;
  p[0] = e1x * ux + e1z * uz;
  p[1] = e2x * ux + e2y * problem.vy + e2z * uz;
  p[2] = nx * ux + ny * problem.vy + nz * uz;
  p[3] = law.cellsPerSpinRatio * problem.radius * problem.spin;
  p[4] = STANDARD_GRAVITY * e2y;
  p[5] = STANDARD_GRAVITY * ny;
  p[6] = -problem.forceFactor;
  p[7] = problem.spin === 0 ? 0 : problem.forceFactor;
  p[8] = -problem.decay;
  p[9] = problem.model.spinEntering === 'across' ? 1 : 0;
  p[10] = law.spinCells.low;
  p[11] = law.spinCells.high;
  p[12] = law.cellsPerReynolds * problem.reynoldsPerSpeed;
  p[13] = law.reynoldsCells.low;
  p[14] = law.reynoldsCells.high;
  p[15] = 1 / velocityTolerance;
  p[16] = firstStep(velocityTolerance, Math.sqrt(ux * ux + problem.vy * problem.vy + uz * uz));
  p[17] = timeLimit;
  p[18] = -slopeX * e1x - slopeZ * e1z;
  p[19] = e2y - slopeX * e2x - slopeZ * e2z;
  p[20] = ny - slopeX * nx - slopeZ * nz;
  p[21] = -slopeX * windAlong - slopeZ * windAcross;
  p[22] = height;
  p[23] = e2y;
  p[24] = ny;
  p[25] = tolerance < APEX_RESTEP_BELOW ? 1 : 0;
  return true;
}

/** Result of a compiled flight in the world frame; fields are overwritten by the next flight. @internal */
export interface CompiledFlight {
  ending: 'landed' | 'time-limit';
  time: number;
  apex: number;
  apexAt: number;
  readonly state: Float64Array;
  /** Range over the nodes of Reynolds number and spin ratio. */
  readonly reynolds: { min: number; max: number };
  readonly spinRatio: { min: number; max: number };
}

/** Flies problems by the compiled kernel; `undefined` hands a flight to the general engine. @internal */
export interface CompiledEngine {
  readonly fly: (problem: FlightProblem, tolerance: number, timeLimit: number) => CompiledFlight | undefined;
  /** Hands the nodes of the last flight to a sink, in the world frame. */
  readonly replay: (sink: NodeSink) => void;
}

const NO_TRACK = new Float64Array(0);
const TRACK_ROOM = 400;

/** An empty flight to write into. @internal */
export function compiledFlight(): CompiledFlight {
  return {
    ending: 'landed',
    time: 0,
    apex: 0,
    apexAt: 0,
    state: new Float64Array(STATES),
    reynolds: { min: 0, max: 0 },
    spinRatio: { min: 0, max: 0 },
  };
}

/** Turns (a, b, c, w, A, B, C) at `offset` into position, velocity and spin rate in the world frame. */
function toWorld(
  problem: FlightProblem,
  axes: KernelAxes,
  cells: number,
  from: Float64Array,
  offset: number,
  time: number,
  s: Float64Array,
): void {
  const { nx, ny, nz, windAlong, windAcross } = problem;
  const a = from[offset]!;
  const b = from[offset + 1]!;
  const c = from[offset + 2]!;
  const dA = from[offset + 4]!;
  const dB = from[offset + 5]!;
  const dC = from[offset + 6]!;
  s[0] = axes.e1x * dA + axes.e2x * dB + nx * dC + windAlong * time;
  s[1] = axes.e2y * dB + ny * dC;
  s[2] = axes.e1z * dA + axes.e2z * dB + nz * dC + windAcross * time;
  s[3] = axes.e1x * a + axes.e2x * b + nx * c + windAlong;
  s[4] = axes.e2y * b + ny * c;
  s[5] = axes.e1z * a + axes.e2z * b + nz * c + windAcross;
  s[6] = from[offset + 3]! / (cells * problem.radius);
}

/** Reads a kernel's results (order of KERNEL_RESULTS) at `offset` into a flight in the world frame. @internal */
export function worldEnd(
  problem: FlightProblem,
  axes: KernelAxes,
  cells: number,
  out: Float64Array,
  offset: number,
  flight: CompiledFlight,
): void {
  const { nx, nz, windAlong, windAcross } = problem;
  const [A, B, C, t] = [out[offset + 9]!, out[offset + 10]!, out[offset + 11]!, out[offset + 12]!];
  const x = axes.e1x * A + axes.e2x * B + nx * C + windAlong * t;
  const z = axes.e1z * A + axes.e2z * B + nz * C + windAcross * t;
  // A drop of less than a rounding error must not end before it began.
  flight.time = Math.max(0, out[offset + 7]!);
  flight.apex = out[offset + 8]!;
  flight.apexAt = Math.sqrt(x * x + z * z);
  toWorld(problem, axes, cells, out, offset, flight.time, flight.state);
  flight.reynolds.min = problem.reynoldsPerSpeed * out[offset + 13]!;
  flight.reynolds.max = problem.reynoldsPerSpeed * out[offset + 14]!;
  flight.spinRatio.min = out[offset + 15]! / cells;
  flight.spinRatio.max = out[offset + 16]! / cells;
}

const NODES = KERNEL_RESULTS.indexOf('nodes');

/** Makes a compiled engine with scratch of its own. @internal */
export function createCompiledEngine(keepTrack: boolean): CompiledEngine {
  const p = new Float64Array(KERNEL_PARAMETERS.length);
  const constants = kernelConstants();
  const out = new Float64Array(KERNEL_RESULTS.length);
  const track = keepTrack ? new Float64Array(TRACK_ROOM * TRACK_FIELDS.length) : NO_TRACK;
  const flight = compiledFlight();
  let axes = kernelAxes(0, 0, 1);
  let last: FlightProblem | undefined;
  let cells = 1;

  function fly(problem: FlightProblem, tolerance: number, timeLimit: number): CompiledFlight | undefined {
    const law = compiledLaw(problem.model);
    if (law === undefined) return undefined;
    axes = kernelAxes(problem.nx, problem.ny, problem.nz);
    if (!packKernel(problem, law, axes, tolerance, timeLimit, p)) return undefined;
    const status = flyKernel(p, constants, law.spinTable, law.reynoldsTable, out, track);
    if (status === OUTSIDE || (keepTrack && out[NODES]! > TRACK_ROOM)) return undefined;
    last = problem;
    cells = law.cellsPerSpinRatio;
    flight.ending = status === LANDED ? 'landed' : 'time-limit';
    worldEnd(problem, axes, cells, out, 0, flight);
    return flight;
  }

  function replay(sink: NodeSink): void {
    if (last === undefined) return;
    const { nx, ny, nz } = last;
    const state = new Float64Array(STATES);
    const derivative = new Float64Array(STATES);
    for (let k = 0; k < TRACK_FIELDS.length * out[NODES]!; k += TRACK_FIELDS.length) {
      toWorld(last, axes, cells, track, k + 1, track[k]!, state);
      const ka = track[k + 8]!;
      const kb = track[k + 9]!;
      const kc = track[k + 10]!;
      derivative.set(state.subarray(3, 6));
      derivative[3] = axes.e1x * ka + axes.e2x * kb + nx * kc;
      derivative[4] = axes.e2y * kb + ny * kc;
      derivative[5] = axes.e1z * ka + axes.e2z * kb + nz * kc;
      derivative[6] =
        -last.decay * Math.sqrt(track[k + 1]! ** 2 + track[k + 2]! ** 2 + track[k + 3]! ** 2) * state[6]!;
      sink(track[k]!, state, derivative);
    }
  }

  return { fly, replay };
}
