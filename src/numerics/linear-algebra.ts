/** A small dense matrix, row by row. */
export type Matrix = readonly (readonly number[])[];

/**
 * Lower triangular L with A = L Lᵀ; undefined when the symmetric matrix is not positive definite to working
 * precision. Source: Golub G H, Van Loan C F (2013) Matrix Computations, 4th ed., algorithm 4.2.1.
 */
export function cholesky(a: Matrix): number[][] | undefined {
  const n = a.length;
  const l: number[][] = a.map(() => new Array<number>(n).fill(0));
  for (let j = 0; j < n; j++) {
    let pivot = a[j]![j]!;
    for (let k = 0; k < j; k++) pivot -= l[j]![k]! ** 2;
    if (!(pivot > n * Number.EPSILON * Math.abs(a[j]![j]!))) return undefined;
    const diagonal = Math.sqrt(pivot);
    l[j]![j] = diagonal;
    for (let i = j + 1; i < n; i++) {
      let sum = a[i]![j]!;
      for (let k = 0; k < j; k++) sum -= l[i]![k]! * l[j]![k]!;
      l[i]![j] = sum / diagonal;
    }
  }
  return l;
}

/** Solves L Lᵀ x = b for a factor of {@link cholesky}. */
export function choleskySolve(l: Matrix, b: readonly number[]): number[] {
  const n = l.length;
  const x = [...b];
  for (let i = 0; i < n; i++) {
    for (let k = 0; k < i; k++) x[i]! -= l[i]![k]! * x[k]!;
    x[i]! /= l[i]![i]!;
  }
  for (let i = n - 1; i >= 0; i--) {
    for (let k = i + 1; k < n; k++) x[i]! -= l[k]![i]! * x[k]!;
    x[i]! /= l[i]![i]!;
  }
  return x;
}

/** Inverse of a symmetric positive definite matrix; undefined when it is not positive definite. */
export function inverseOfSymmetric(a: Matrix): number[][] | undefined {
  const l = cholesky(a);
  if (l === undefined) return undefined;
  const columns = a.map((_, j) =>
    choleskySolve(
      l,
      a.map((__, i) => (i === j ? 1 : 0)),
    ),
  );
  return columns.map((column, i) => column.map((_, j) => 0.5 * (columns[i]![j]! + columns[j]![i]!)));
}

/** Solution of a linear least-squares problem. */
export interface LinearLeastSquares {
  /** Coefficients. */
  readonly x: readonly number[];
  /** Sum of squared residuals. */
  readonly sumOfSquares: number;
  /** (AᵀA)⁻¹, from the triangular factor. */
  readonly inverseNormal: Matrix;
}

/**
 * The x that makes |A x − b| least, by Householder reflections on columns scaled to unit length, so that neither
 * units nor the squared condition number of the normal equations cost digits.
 *
 * Source: Golub and Van Loan (2013) sec. 5.3.2; column scaling: van der Sluis A (1969) Numer. Math. 14, 14–23.
 * @returns undefined when the columns are linearly dependent to working precision, as with fewer rows than columns
 */
export function leastSquares(a: Matrix, b: readonly number[]): LinearLeastSquares | undefined {
  const m = a.length;
  const n = a[0]?.length ?? 0;
  const scale = Array.from({ length: n }, (_, j) => columnNorm(a, j));
  if (scale.some((s) => !(s > 0) || !Number.isFinite(s))) return undefined;
  const r = a.map((row) => row.map((value, j) => value / scale[j]!));
  const rhs = [...b];
  for (let k = 0; k < n; k++) {
    let square = 0;
    for (let i = k; i < m; i++) square += r[i]![k]! ** 2;
    const norm = Math.sqrt(square);
    if (!(norm > 4 * n * Number.EPSILON)) return undefined;
    const alpha = r[k]![k]! > 0 ? -norm : norm;
    const v: number[] = [];
    for (let i = k; i < m; i++) v.push(r[i]![k]!);
    v[0]! -= alpha;
    const vv = v.reduce((sum, vi) => sum + vi * vi, 0);
    for (let j = k; j < n; j++) {
      let dot = 0;
      for (let i = k; i < m; i++) dot += v[i - k]! * r[i]![j]!;
      for (let i = k; i < m; i++) r[i]![j]! -= ((2 * dot) / vv) * v[i - k]!;
    }
    let dot = 0;
    for (let i = k; i < m; i++) dot += v[i - k]! * rhs[i]!;
    for (let i = k; i < m; i++) rhs[i]! -= ((2 * dot) / vv) * v[i - k]!;
  }
  const y = new Array<number>(n).fill(0);
  for (let i = n - 1; i >= 0; i--) {
    let sum = rhs[i]!;
    for (let j = i + 1; j < n; j++) sum -= r[i]![j]! * y[j]!;
    y[i] = sum / r[i]![i]!;
  }
  let sumOfSquares = 0;
  for (let i = n; i < m; i++) sumOfSquares += rhs[i]! ** 2;

  // R⁻¹ column by column; (AᵀA)⁻¹ = R⁻¹ R⁻ᵀ.
  const inverse: number[][] = y.map(() => new Array<number>(n).fill(0));
  for (let j = 0; j < n; j++) {
    for (let i = j; i >= 0; i--) {
      let sum = i === j ? 1 : 0;
      for (let k = i + 1; k <= j; k++) sum -= r[i]![k]! * inverse[k]![j]!;
      inverse[i]![j] = sum / r[i]![i]!;
    }
  }
  const inverseNormal = y.map((_, i) =>
    y.map((__, j) => {
      let sum = 0;
      for (let k = Math.max(i, j); k < n; k++) sum += inverse[i]![k]! * inverse[j]![k]!;
      return sum / (scale[i]! * scale[j]!);
    }),
  );
  return { x: y.map((yi, i) => yi / scale[i]!), sumOfSquares, inverseNormal };
}

/** Euclidean length of one column. */
export function columnNorm(a: Matrix, j: number): number {
  let largest = 0;
  for (const row of a) largest = Math.max(largest, Math.abs(row[j]!));
  if (!(largest > 0) || !Number.isFinite(largest)) return largest;
  let sum = 0;
  for (const row of a) sum += (row[j]! / largest) ** 2;
  return largest * Math.sqrt(sum);
}

/** Eigenvalues, largest first, and their unit eigenvectors, one a row. */
export interface SymmetricEigen {
  /** Eigenvalues, largest first. */
  readonly values: readonly number[];
  /** Unit eigenvectors in the same order, one a row. */
  readonly vectors: Matrix;
}

/**
 * Eigenvalues and eigenvectors of a symmetric matrix by cyclic Jacobi rotations.
 * Source: Golub and Van Loan (2013) sec. 8.5.
 */
export function symmetricEigen(matrix: Matrix): SymmetricEigen {
  const n = matrix.length;
  const a = matrix.map((row) => [...row]);
  const v: number[][] = a.map((_, i) => a.map((__, j) => (i === j ? 1 : 0)));
  const size = Math.sqrt(a.reduce((sum, row) => sum + row.reduce((part, x) => part + x * x, 0), 0));
  for (let sweep = 0; sweep < 60; sweep++) {
    let off = 0;
    for (let p = 0; p < n; p++) for (let q = p + 1; q < n; q++) off = Math.hypot(off, a[p]![q]!);
    if (off <= 1e-3 * Number.EPSILON * size) break;
    for (let p = 0; p < n; p++) {
      for (let q = p + 1; q < n; q++) {
        if (a[p]![q] === 0) continue;
        const theta = (a[q]![q]! - a[p]![p]!) / (2 * a[p]![q]!);
        const t = (theta < 0 ? -1 : 1) / (Math.abs(theta) + Math.hypot(theta, 1));
        const c = 1 / Math.hypot(t, 1);
        const s = t * c;
        for (let k = 0; k < n; k++) {
          const kp = a[k]![p]!;
          const kq = a[k]![q]!;
          a[k]![p] = c * kp - s * kq;
          a[k]![q] = s * kp + c * kq;
        }
        for (let k = 0; k < n; k++) {
          const pk = a[p]![k]!;
          const qk = a[q]![k]!;
          a[p]![k] = c * pk - s * qk;
          a[q]![k] = s * pk + c * qk;
          const vp = v[p]![k]!;
          const vq = v[q]![k]!;
          v[p]![k] = c * vp - s * vq;
          v[q]![k] = s * vp + c * vq;
        }
      }
    }
  }
  const order = a.map((_, i) => i).sort((i, j) => a[j]![j]! - a[i]![i]!);
  return { values: order.map((i) => a[i]![i]!), vectors: order.map((i) => v[i]!) };
}
