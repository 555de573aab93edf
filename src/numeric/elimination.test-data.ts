/**
 * Reference for other solvers: solves A·x = b by elimination with partial pivoting; A is n × n, rows one after the other. Null when A is singular to working accuracy.
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
