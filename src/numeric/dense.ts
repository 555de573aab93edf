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

/** Inverse of a square matrix given row by row, by Gauss–Jordan elimination with partial pivoting; null when a pivot is zero or not a number. */
export function invert(matrix: Float64Array, n: number): Float64Array | null {
  const a = matrix.slice();
  const inverse = new Float64Array(n * n);
  for (let i = 0; i < n; i++) inverse[i * n + i] = 1;
  const swap = (rows: Float64Array, i: number, k: number) => {
    const kept = rows.slice(i * n, (i + 1) * n);
    rows.copyWithin(i * n, k * n, (k + 1) * n);
    rows.set(kept, k * n);
  };
  for (let k = 0; k < n; k++) {
    let best = k;
    for (let i = k + 1; i < n; i++) if (Math.abs(a[i * n + k]) > Math.abs(a[best * n + k])) best = i;
    const pivot = a[best * n + k];
    if (!(Math.abs(pivot) > 0 && Math.abs(pivot) < Number.POSITIVE_INFINITY)) return null;
    if (best !== k) for (const rows of [a, inverse]) swap(rows, k, best);
    for (let j = 0; j < n; j++) {
      a[k * n + j] /= pivot;
      inverse[k * n + j] /= pivot;
    }
    for (let i = 0; i < n; i++) {
      const factor = a[i * n + k];
      if (i === k || factor === 0) continue;
      for (let j = 0; j < n; j++) {
        a[i * n + j] -= factor * a[k * n + j];
        inverse[i * n + j] -= factor * inverse[k * n + j];
      }
    }
  }
  return inverse;
}
