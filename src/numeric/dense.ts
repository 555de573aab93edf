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
