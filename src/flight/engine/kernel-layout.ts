import { dormandPrince853 } from '../../numerics/tableaux/dormand-prince-853.js';

/**
 * The distinct numbers of the tableau, in the order the kernel names them K0, K1 …. They reach the kernel as data: a
 * number in the text costs an engine more than one in a register or on the stack, and would stand in the bundle twice.
 * @internal
 */
export function kernelConstants(): Float64Array {
  const { a, b, e5 } = dormandPrince853;
  return Float64Array.from(
    new Set([...a.flat(), ...b, ...e5, ...thirdOrderWeights()].filter((value) => value !== 0)),
  );
}

/** Weights of the embedded solution of third order: the solution less its third-order error estimate. @internal */
export function thirdOrderWeights(): number[] {
  const { b, e3 } = dormandPrince853;
  return b.map((weight, j) => weight - (e3[j] ?? 0));
}

/** Names of the kernel's parameters, in the order of the parameter array; the batch shares the last eight. */
export const KERNEL_PARAMETERS = [
  'a0',
  'b0',
  'c0',
  'w0', // initial air velocity on the kernel's axes [m/s] and r ω [cells of S times m/s]
  'gravity2',
  'gravity3', // gravity along the second and third axis [m/s²]
  'drag',
  'lift', // ρ A / 2m for drag and for lift (0 for a ball without spin) [1/m]
  'decay', // minus the spin decay per metre [1/m]
  'cellsPerSpeed', // cells of Re per m/s of air speed
  'normal1',
  'normal2',
  'normal3',
  'normalWind', // climb from the ground = normal · (a, b, c) + normalWind
  'up2',
  'up3', // upward components of the second and third axis
  'height0', // height above the ground at the start [m]
  'firstStep', // [s]
  'across', // 1 when only the spin across the air enters S, else 0
  'sLow',
  'sHigh', // first and last usable cell of S
  'rLow',
  'rHigh', // first and last usable cell of Re
  'perTolerance', // 1 / velocity tolerance [s/m]
  'timeLimit', // [s]
  'restepApex', // 1 to redo a step onto the apex
] as const;

/** Names of the kernel's results, in the order of the output array. */
export const KERNEL_RESULTS = [
  'a',
  'b',
  'c',
  'w',
  'A',
  'B',
  'C',
  't', // state at the end: air velocity, r ω, displacement against the air, time
  'apex',
  'apexA',
  'apexB',
  'apexC',
  'apexT', // height of the apex, displacement and time there
  'slowest',
  'fastest',
  'leastSpin',
  'mostSpin', // range of air speed and of S over the nodes
  'evaluations',
  'nodes', // work done
] as const;

/** Numbers the batch gives back for a flight: the results up to the apex, then how it ended. */
export const BATCH_RESULTS: number = KERNEL_RESULTS.indexOf('slowest') + 1;

/** What the kernel keeps of each node when given room for a track. */
export const TRACK_FIELDS = ['t', 'a', 'b', 'c', 'w', 'A', 'B', 'C', 'da', 'db', 'dc'] as const;
