/**
 * A joint normal distribution of several inputs, as a fit leaves them: their uncertainties are no longer independent.
 * Figures belong to the coordinate: the value [SI], or for a logarithmic input ln(value / 1 SI unit).
 */
export interface Joint {
  readonly ids: readonly string[];
  readonly mean: Float64Array;
  /** Covariance, row by row, `ids.length` squared. */
  readonly covariance: Float64Array;
  /** True where the coordinate is the natural logarithm. */
  readonly logarithmic: readonly boolean[];
}

/** Correlation coefficient of two inputs [1]; 0 for an input the distribution doesn't hold, 1 for an input with itself. */
export function correlation(joint: Joint, a: string, b: string): number {
  if (a === b) return 1;
  const i = joint.ids.indexOf(a);
  const j = joint.ids.indexOf(b);
  if (i < 0 || j < 0) return 0;
  const n = joint.ids.length;
  const { covariance } = joint;
  return covariance[i * n + j] / Math.sqrt(covariance[i * n + i] * covariance[j * n + j]);
}
