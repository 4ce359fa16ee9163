import { dormandPrince853, stageTime } from '../../numerics/tableaux/dormand-prince-853.js';

/**
 * The distinct weights of the tableau, in the order the kernel names them K0, K1 …; then the places of the stages in a step. They reach the kernel as data: a
 * number in the text costs an engine more than one in a register or on the stack, and would stand in the bundle twice.
 * @internal
 */
export function kernelConstants(): Float64Array {
  return Float64Array.from([...kernelWeights(), ...dormandPrince853.a.map(stageTime)]);
}

/** Those the kernel names. @internal */
export function kernelWeights(): number[] {
  const { a, b, e5, third } = dormandPrince853;
  const weights = [...a.flat(), ...b, ...e5, ...third];
  return [...new Set(weights.filter((value) => value !== 0))];
}
