/** Means of a channel over equal stretches of time: smooths a load that switches on and off within one level. */
export interface Blocks {
  /** Length of one block [s]. */
  readonly length: number;
  /** Middle of each block [s]. */
  readonly time: Float64Array;
  readonly mean: Float64Array;
}

/** Block means; blocks without a reading take the one before. */
export function blockMeans(time: Float64Array, values: Float64Array, length: number): Blocks {
  const count = Math.max(1, Math.floor((time[time.length - 1] - time[0]) / length));
  const sum = new Float64Array(count);
  const readings = new Float64Array(count);
  for (let i = 0; i < time.length; i++) {
    const block = Math.min(count - 1, Math.floor((time[i] - time[0]) / length));
    if (Number.isNaN(values[i])) continue;
    sum[block] += values[i];
    readings[block]++;
  }
  const mean = new Float64Array(count);
  for (let b = 0; b < count; b++) mean[b] = readings[b] > 0 ? sum[b] / readings[b] : b > 0 ? mean[b - 1] : Number.NaN;
  return { length, time: mean.map((_, b) => time[0] + (b + 0.5) * length), mean };
}
