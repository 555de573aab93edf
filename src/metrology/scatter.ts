/** Independent readings in three numbers. */
export interface Scatter {
  readonly n: number;
  readonly mean: number;
  /** Σ(x − x̄)²/(n − 1); 0 for a single reading. */
  readonly variance: number;
}

/**
 * Mean and variance in two passes, both around the first reading: readings that differ in their last digits only keep those digits. The
 * second pass takes off what rounding left in the mean.
 * Source: T. F. Chan, G. H. Golub, R. J. LeVeque, "Algorithms for computing the sample variance", Am. Stat. 37 (1983) 242–247, eq. 1.7.
 */
export function scatterOf(values: ArrayLike<number>): Scatter {
  const n = values.length;
  if (n === 0) throw new Error('no readings');
  let sum = 0;
  for (let i = 0; i < n; i++) sum += values[i] - values[0];
  const shift = sum / n;
  let squares = 0;
  let rest = 0;
  for (let i = 0; i < n; i++) {
    const deviation = values[i] - values[0] - shift;
    squares += deviation * deviation;
    rest += deviation;
  }
  return { n, mean: values[0] + shift, variance: n > 1 ? (squares - (rest * rest) / n) / (n - 1) : 0 };
}
