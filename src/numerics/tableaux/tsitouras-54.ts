/** Coefficients of an explicit Runge-Kutta pair whose last stage is the first of the next step. */
export interface FirstSameAsLast {
  /** Lower-triangular stage matrix of the stages before the end, row i has i entries. */
  readonly a: readonly (readonly number[])[];
  /** Weights of the propagated solution. */
  readonly b: readonly number[];
  /** Weights of the error estimate, the end of the step included. */
  readonly e: readonly number[];
}

/**
 * The pair of orders 5 and 4 with the least principal error terms known.
 * Source: Tsitouras C (2011) Runge–Kutta pairs of order 5(4) satisfying only the first column simplifying assumption,
 * Comput. Math. Appl. 62, 770–775, table 1; order and identities are tested in tests/numerics.
 */
export const tsitouras54: FirstSameAsLast = {
  a: [
    [],
    [0.161],
    [-0.008480655492356989, 0.335480655492357],
    [2.8971530571054935, -6.359448489975075, 4.3622954328695815],
    [5.325864828439257, -11.748883564062828, 7.4955393428898365, -0.09249506636175525],
    [5.86145544294642, -12.92096931784711, 8.159367898576159, -0.071584973281401, -0.028269050394068383],
  ],
  b: [
    0.09646076681806523, 0.01, 0.4798896504144996, 1.379008574103742, -3.290069515436081, 2.324710524099774,
  ],
  e: [
    0.001780011052225777, 0.0008164344596567469, -0.007880878010261995, 0.1447110071732629,
    -0.5823571654525552, 0.45808210592918697, -0.015151515151515152,
  ],
};
