/** A linear least-squares fit. */
export interface ColumnFit {
  /** One a column. */
  readonly coefficients: readonly number[];
  /** Inverse of XᵀX: the coefficients' covariance per unit variance of a reading. */
  readonly inverse: readonly (readonly number[])[];
  /** Sum of the squared residuals, in squared units of the readings. */
  readonly squares: number;
}

/**
 * Coefficients b that make Σ (yᵢ − Σⱼ Xᵢⱼ·bⱼ)² least; null when a column follows from the others, or there are fewer readings than columns.
 *
 * X = Q·R, b = R⁻¹·Qᵀ·y, (XᵀX)⁻¹ = R⁻¹·R⁻ᵀ
 *
 * X   columns, each as long as y
 * y   readings
 * Source: Å. Björck, Numerical Methods for Least Squares Problems (1996), section 2.4, modified Gram–Schmidt with the readings as last column.
 */
export function fitColumns(columns: readonly (readonly number[])[], readings: readonly number[]): ColumnFit | null {
  const n = columns.length;
  if (readings.length < n) return null;
  const q = columns.map((column) => [...column]);
  const left = [...readings];
  const r = columns.map(() => new Array<number>(n).fill(0));
  const projected = new Array<number>(n).fill(0);
  for (let j = 0; j < n; j++) {
    const before = Math.hypot(...columns[j]);
    r[j][j] = Math.hypot(...q[j]);
    if (!(r[j][j] > 1e-12 * before)) return null;
    q[j] = q[j].map((value) => value / r[j][j]);
    for (let k = j + 1; k < n; k++) r[j][k] = subtract(q[k], q[j]);
    projected[j] = subtract(left, q[j]);
  }
  const rows = invertUpper(r);
  return {
    coefficients: rows.map((row) => dot(row, projected)),
    inverse: rows.map((row) => rows.map((other) => dot(row, other))),
    squares: dot(left, left),
  };
}

/** Takes the part along a unit column out of another, and says how much that was. */
function subtract(from: number[], unit: readonly number[]): number {
  const along = dot(from, unit);
  for (let i = 0; i < from.length; i++) from[i] -= along * unit[i];
  return along;
}

function dot(one: readonly number[], other: readonly number[]): number {
  let sum = 0;
  for (let i = 0; i < one.length; i++) sum += one[i] * other[i];
  return sum;
}

function invertUpper(r: readonly (readonly number[])[]): number[][] {
  const n = r.length;
  const inverse = r.map(() => new Array<number>(n).fill(0));
  for (let j = 0; j < n; j++) {
    inverse[j][j] = 1 / r[j][j];
    for (let i = j - 1; i >= 0; i--) {
      let sum = 0;
      for (let k = i + 1; k <= j; k++) sum += r[i][k] * inverse[k][j];
      inverse[i][j] = -sum / r[i][i];
    }
  }
  return inverse;
}
