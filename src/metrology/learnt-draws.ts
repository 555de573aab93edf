import { endsOf, type Spread } from '../quantity/spread.ts';
import { toDistribution } from './distribution.ts';

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
  const { stated, logarithmic, centre, scale, best, slopes, gain, observations } = learning;
  const n = columns.length;
  columns.forEach((column, i) => {
    toDistribution(column, stated[i].spread, stated[i].value);
    for (let s = 0; s < column.length; s++)
      column[s] = ((logarithmic[i] ? Math.log(column[s]) : column[s]) - centre[i]) / scale[i];
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
    for (let k = 0; k < observations; k++) {
      const part = gain[i * observations + k];
      if (part === 0) continue;
      const missed = noise[k];
      for (let s = 0; s < column.length; s++) column[s] -= part * missed[s];
    }
    for (let s = 0; s < column.length; s++) {
      const coordinate = centre[i] + scale[i] * (best[i] + column[s]);
      column[s] = logarithmic[i] ? Math.exp(coordinate) : coordinate;
    }
    const ends = endsOf(stated[i].spread);
    const fitted = centre[i] + scale[i] * best[i];
    // A fitted value beyond an end contradicts the ends; then they say nothing about the draws either.
    if (!ends || fitted < ends.low || fitted > ends.high) return;
    for (let s = 0; s < column.length; s++) column[s] = Math.min(ends.high, Math.max(ends.low, column[s]));
  });
}
