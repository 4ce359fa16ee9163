import { stageTime, type Tableau } from './tableaux/dormand-prince-853.js';

/** Derivative of a system y' = f(t, y), written to `out`. Must not keep references to its arguments. */
export type RightHandSide = (t: number, y: Float64Array, out: Float64Array) => void;

/** One explicit embedded Runge-Kutta stepper with its own scratch; steps allocate nothing. */
export interface EmbeddedStepper {
  /** Result of the last step. */
  readonly next: Float64Array;
  /**
   * Takes one step of size `h` from `(t, y)`, where `derivative` is f(t, y); the result is in `next`.
   */
  readonly step: (f: RightHandSide, t: number, y: Float64Array, derivative: Float64Array, h: number) => void;
  /**
   * Error of the last step: the combined fifth- and third-order estimate of Hairer, Norsett & Wanner 1993, section
   * II.10, over `components` components from `first` on, each divided by `scale`. At most 1 means acceptable.
   */
  readonly error: (h: number, first: number, components: number, scale: number) => number;
}

/** Makes a stepper for systems of the given dimension. */
export function createStepper(tableau: Tableau, dimension: number): EmbeddedStepper {
  const stages = tableau.b.length;
  const a = Float64Array.from(tableau.a.flat());
  const b = Float64Array.from(tableau.b);
  const c = Float64Array.from(tableau.a, stageTime);
  const e5 = Float64Array.from(tableau.e5);
  const e3 = b.map((weight, j) => weight - tableau.third[j]!);
  const k = Array.from({ length: stages }, () => new Float64Array(dimension));
  const stage = new Float64Array(dimension);
  const next = new Float64Array(dimension);

  function step(f: RightHandSide, t: number, y: Float64Array, derivative: Float64Array, h: number): void {
    k[0]!.set(derivative);
    for (let i = 1, row = 0; i < stages; row += i, i++) {
      for (let d = 0; d < dimension; d++) {
        let sum = 0;
        for (let j = 0; j < i; j++) sum += a[row + j]! * k[j]![d]!;
        stage[d] = y[d]! + h * sum;
      }
      f(t + c[i]! * h, stage, k[i]!);
    }
    for (let d = 0; d < dimension; d++) {
      let sum = 0;
      for (let j = 0; j < stages; j++) sum += b[j]! * k[j]![d]!;
      next[d] = y[d]! + h * sum;
    }
  }

  function error(h: number, first: number, components: number, scale: number): number {
    let fifth = 0;
    let third = 0;
    for (let d = first; d < first + components; d++) {
      let s5 = 0;
      let s3 = 0;
      for (let j = 0; j < stages; j++) {
        const kj = k[j]![d]!;
        s5 += e5[j]! * kj;
        s3 += e3[j]! * kj;
      }
      fifth += (s5 / scale) ** 2;
      third += (s3 / scale) ** 2;
    }
    if (fifth === 0 && third === 0) return 0;
    return (Math.abs(h) * fifth) / Math.sqrt((fifth + 0.01 * third) * components);
  }

  return { next, step, error };
}
