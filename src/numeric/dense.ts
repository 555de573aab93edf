/**
 * Lower Cholesky factor of a symmetric positive definite matrix, rows one after the other.
 * Null when the matrix isn't positive definite to working accuracy.
 */
export function cholesky(matrix: Float64Array, n: number): Float64Array | null {
  const lower = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = matrix[i * n + j];
      for (let k = 0; k < j; k++) sum -= lower[i * n + k] * lower[j * n + k];
      if (i !== j) lower[i * n + j] = sum / lower[j * n + j];
      else {
        if (!(sum > 4 * Number.EPSILON * n * Math.abs(matrix[i * n + i]))) return null;
        lower[i * n + i] = Math.sqrt(sum);
      }
    }
  }
  return lower;
}

/** Solves L·Lᵀ·x = b. */
export function choleskySolve(lower: Float64Array, b: Float64Array, n: number): Float64Array {
  const x = b.slice();
  for (let i = 0; i < n; i++) {
    for (let k = 0; k < i; k++) x[i] -= lower[i * n + k] * x[k];
    x[i] /= lower[i * n + i];
  }
  for (let i = n - 1; i >= 0; i--) {
    for (let k = i + 1; k < n; k++) x[i] -= lower[k * n + i] * x[k];
    x[i] /= lower[i * n + i];
  }
  return x;
}

/** Inverse of L·Lᵀ, symmetric to the last bit. */
export function choleskyInverse(lower: Float64Array, n: number): Float64Array {
  const inverse = new Float64Array(n * n);
  const unit = new Float64Array(n);
  for (let j = 0; j < n; j++) {
    unit.fill(0);
    unit[j] = 1;
    const column = choleskySolve(lower, unit, n);
    for (let i = j; i < n; i++) inverse[i * n + j] = inverse[j * n + i] = column[i];
  }
  return inverse;
}

/**
 * Solves A·x = b by elimination with partial pivoting; A is n × n, rows one after the other. Null when A is singular to working accuracy.
 * Source: G. H. Golub and C. F. Van Loan, Matrix Computations, 4th edition (2013), algorithm 3.4.1; rows are scaled by their largest entry first.
 */
export function solveDense(matrix: Float64Array, b: Float64Array, n: number): Float64Array | null {
  const a = matrix.slice();
  const x = b.slice();
  for (let i = 0; i < n; i++) {
    let largest = 0;
    for (let j = 0; j < n; j++) largest = Math.max(largest, Math.abs(a[i * n + j]));
    if (!(largest > 0 && largest < Infinity)) return null;
    // A power of two scales without rounding.
    const scale = 2 ** -Math.floor(Math.log2(largest));
    for (let j = 0; j < n; j++) a[i * n + j] *= scale;
    x[i] *= scale;
  }
  for (let k = 0; k < n; k++) {
    let pivot = k;
    for (let i = k + 1; i < n; i++) if (Math.abs(a[i * n + k]) > Math.abs(a[pivot * n + k])) pivot = i;
    if (!(Math.abs(a[pivot * n + k]) > Number.EPSILON * Number.EPSILON)) return null;
    if (pivot !== k) {
      for (let j = 0; j < n; j++) [a[k * n + j], a[pivot * n + j]] = [a[pivot * n + j], a[k * n + j]];
      [x[k], x[pivot]] = [x[pivot], x[k]];
    }
    for (let i = k + 1; i < n; i++) {
      const part = a[i * n + k] / a[k * n + k];
      for (let j = k + 1; j < n; j++) a[i * n + j] -= part * a[k * n + j];
      x[i] -= part * x[k];
    }
  }
  for (let i = n - 1; i >= 0; i--) {
    for (let j = i + 1; j < n; j++) x[i] -= a[i * n + j] * x[j];
    x[i] /= a[i * n + i];
  }
  return x;
}
