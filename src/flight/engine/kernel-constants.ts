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
