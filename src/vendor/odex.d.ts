// odex ships its TypeScript source without declarations; this is the part of its interface used here.
export type Derivative = (x: number, y: number[]) => ArrayLike<number>;
export type DenseComponent = (component: number, x: number) => number;
export declare class Solver {
  constructor(dimension: number);
  denseOutput: boolean;
  absoluteTolerance: number | number[];
  relativeTolerance: number | number[];
  initialStepSize: number;
  maxStepSize: number;
  maxSteps: number;
  solve(
    f: Derivative,
    x: number,
    y0: number[],
    xEnd: number,
    solOut?: (
      n: number,
      xOld: number,
      x: number,
      y: number[],
      dense: DenseComponent | undefined,
    ) => false | undefined,
  ): { y: number[]; outcome: number; nStep: number; nEval: number; nAccept: number; nReject: number };
}
