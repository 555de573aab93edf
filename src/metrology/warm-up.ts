/** Where a series has left its warm-up behind. */
export interface WarmUp {
  /** Readings to leave out at the beginning. */
  readonly cut: number;
  /** Mean of the readings kept. */
  readonly mean: number;
  /** False where the best cut is the last one looked at: the series is still on its way. */
  readonly found: boolean;
}

/**
 * Cut that leaves the mean with the least squared standard error (MSER): the d up to half of the series with the least Σ (x − x̄)²/(n − d)²
 * over the readings after it. With `batch` readings averaged first (MSER-5: 5), which takes the edge off single readings; the cut is then a
 * multiple of it, and readings that fill no batch aren't looked at. Null for fewer than four batches.
 * Sources: K. P. White Jr., "An effective truncation heuristic for bias reduction in simulation output", Simulation 69 (1997) 323–334;
 * batches: S. C. Spratt, MS thesis, University of Virginia (1998). Half of the series as the last cut: White, M. J. Cobb, S. C. Spratt,
 * Winter Simulation Conference (2000) 755–760.
 */
export function warmUpOf(values: ArrayLike<number>, batch = 1): WarmUp | null {
  const count = Math.floor(values.length / batch);
  if (count < 4) return null;
  const means = Float64Array.from({ length: count }, (_, b) => {
    let sum = 0;
    for (let i = 0; i < batch; i++) sum += values[b * batch + i] - values[values.length - 1];
    return sum / batch;
  });
  const last = Math.floor(count / 2);
  const objective = (d: number) => marginalError(means.subarray(d));
  let best = 0;
  for (let d = 1; d <= last; d++) if (objective(d) < objective(best)) best = d;
  const kept = means.subarray(best);
  const mean = values[values.length - 1] + kept.reduce((sum, value) => sum + value, 0) / kept.length;
  return { cut: best * batch, mean, found: best < last };
}

/** Σ (x − x̄)²/n² [square of the unit of the readings]. */
export function marginalError(values: ArrayLike<number>): number {
  const n = values.length;
  let mean = 0;
  let squares = 0;
  for (let i = 0; i < n; i++) {
    const step = values[i] - mean;
    mean += step / (i + 1);
    squares += step * (values[i] - mean);
  }
  return squares / n ** 2;
}
