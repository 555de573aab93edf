import { sobol } from '../numeric/sobol.ts';
import { endsOf, type Spread } from '../quantity/spread.ts';
import { toDistribution } from './distribution.ts';
import { normalQuantile } from './normal-quantile.ts';

/** How the numbers of a fit are drawn: from what is stated about them, drawn towards what was observed. In the fit's coordinates. */
export interface Learning {
  /** What was stated of each number, in the order of the joint distribution. */
  readonly stated: readonly { readonly value: number; readonly spread: Spread }[];
  readonly logarithmic: readonly boolean[];
  /** Stated value of each coordinate, its stated standard uncertainty, and the fitted distance in such units. */
  readonly centre: Float64Array;
  readonly scale: Float64Array;
  readonly best: Float64Array;
  /** H, observations × numbers: ∂f/∂coordinate over the observation's uncertainty. */
  readonly slopes: Float64Array;
  /** K = P⁺·Hᵀ, numbers × observations. */
  readonly gain: Float64Array;
  readonly observations: number;
}

/**
 * Turns columns of probabilities, one a number, and columns of standard normal noise, one an observation, into draws of what is known after the fit [SI],
 * in place: ζ̂ + ζ − K·(H·ζ + ε), ζ drawn from what was stated, ε: noise.
 *
 * For normal distributions and straight slopes the result is exactly the fit's mean and covariance. Other distributions keep their shape in
 * the directions that nothing was learnt about, and what the observations tie together stays tied. A number with two ends is kept inside them.
 * Source: A. G. Journel, C. J. Huijbregts, "Mining Geostatistics" (Academic Press 1978), conditioning by kriging; D. S. Oliver, Math. Geol. 28 (1996) 741–757; from memory.
 */
export function drawTowards(
  learning: Learning,
  columns: readonly Float64Array[],
  noise: readonly Float64Array[],
): void {
  const { stated, logarithmic, centre, scale, best } = learning;
  scaledTowards(learning, columns, noise);
  columns.forEach((column, i) => {
    for (let s = 0; s < column.length; s++) {
      const coordinate = centre[i] + scale[i] * column[s];
      column[s] = logarithmic[i] ? Math.exp(coordinate) : coordinate;
    }
    const ends = endsOf(stated[i].spread);
    const fitted = centre[i] + scale[i] * best[i];
    const natural = logarithmic[i] ? Math.exp(fitted) : fitted;
    // A fitted value beyond an end contradicts the ends; then they say nothing about the draws either.
    if (!ends || natural < ends.low || natural > ends.high) return;
    for (let s = 0; s < column.length; s++) column[s] = Math.min(ends.high, Math.max(ends.low, column[s]));
  });
}

/** The same, left in the fit's scaled coordinates. */
function scaledTowards(learning: Learning, columns: readonly Float64Array[], noise: readonly Float64Array[]): void {
  const { stated, logarithmic, centre, scale, best, slopes, gain, observations } = learning;
  const n = columns.length;
  columns.forEach((column, i) => {
    toDistribution(column, stated[i].spread, stated[i].value);
    // A normal distribution of a positive number reaches below zero, if hardly ever.
    const least = 1e-3 * stated[i].value;
    for (let s = 0; s < column.length; s++)
      column[s] = ((logarithmic[i] ? Math.log(Math.max(column[s], least)) : column[s]) - centre[i]) / scale[i];
  });
  noise.forEach((missed, k) => {
    for (let i = 0; i < n; i++) {
      const slope = slopes[k * n + i];
      if (slope === 0) continue;
      const column = columns[i];
      for (let s = 0; s < missed.length; s++) missed[s] += slope * column[s];
    }
  });
  columns.forEach((column, i) => {
    for (let s = 0; s < column.length; s++) column[s] += best[i];
    for (let k = 0; k < observations; k++) {
      const part = gain[i * observations + k];
      if (part === 0) continue;
      const missed = noise[k];
      for (let s = 0; s < column.length; s++) column[s] -= part * missed[s];
    }
  });
}

/** Draws that the mean of the predictions is taken from, and rounds of moving it. */
const centring = 64;
const rounds = 2;

/**
 * The same learning, moved so that its draws meet the observations in the mean. Where the models bend, draws around the most probable point predict
 * more (or less) than that point does: two resistances in series of which only the sum was read are each uncertain, and the sum of their
 * draws is larger on average. `missed`: predictions at scaled coordinates less those at the fitted point, over the observations' uncertainties; null
 * where there's no solution.
 */
export function centred(learning: Learning, missed: (scaled: Float64Array) => Float64Array | null): Learning {
  const { observations, gain, slopes } = learning;
  const n = learning.best.length;
  /** What straight slopes say of the distance from the fitted point. */
  const straight = (k: number, point: ArrayLike<number>) => {
    let sum = 0;
    for (let i = 0; i < n; i++) sum += slopes[k * n + i] * (point[i] - learning.best[i]);
    return sum;
  };
  const best = learning.best.slice();
  const sequence = sobol(n + observations, 1);
  for (let round = 0; round < rounds; round++) {
    const drawn = Array.from({ length: n + observations }, (_, d) => {
      const column = new Float64Array(centring);
      sequence.column(d, 0, column);
      return d < n ? column : column.map(normalQuantile);
    });
    const [columns, noise] = [drawn.slice(0, n), drawn.slice(n)];
    scaledTowards({ ...learning, best }, columns, noise);
    const mean = new Float64Array(observations);
    let solved = 0;
    for (let s = 0; s < centring; s++) {
      const point = Float64Array.from(columns, (column) => column[s]);
      const away = missed(point);
      if (!away) continue;
      solved++;
      // The straight part has its mean without any draws.
      for (let k = 0; k < observations; k++) mean[k] += away[k] - straight(k, point);
    }
    // Too much lies beyond the models: nothing to be said about the mean.
    if (solved < centring / 2) return learning;
    const above = mean.map((sum, k) => sum / solved + straight(k, best));
    for (let i = 0; i < n; i++) for (let k = 0; k < observations; k++) best[i] -= gain[i * observations + k] * above[k];
  }
  return { ...learning, best };
}
