/** Mean of independent results of different uncertainty, and whether they agree. */
export interface WeightedMean {
  readonly mean: number;
  /** Standard uncertainty from the stated ones alone: 1/√Σu⁻². */
  readonly u: number;
  /** Σ ((x − mean)/u)² */
  readonly chiSquare: number;
  readonly degreesOfFreedom: number;
  /** √(χ²/ν): about 1 where the results agree within their uncertainties; null for a single result. */
  readonly birgeRatio: number | null;
  /** Standard uncertainty with the Birge ratio where it is above 1. */
  readonly uAgreed: number;
}

/**
 * Weighted mean Σ x/u² / Σ 1/u² [unit of the results].
 * Source: R. T. Birge, "The calculation of errors by the method of least squares", Phys. Rev. 40 (1932) 207–227.
 */
export function weightedMean(results: ArrayLike<number>, uncertainties: ArrayLike<number>): WeightedMean {
  const n = results.length;
  if (n === 0 || uncertainties.length !== n) throw new Error(`${n} results with ${uncertainties.length} uncertainties`);
  let weights = 0;
  let sum = 0;
  for (let i = 0; i < n; i++) {
    const weight = 1 / uncertainties[i] ** 2;
    if (!(weight > 0 && weight < Number.POSITIVE_INFINITY)) throw new Error(`uncertainty ${uncertainties[i]}`);
    weights += weight;
    sum += weight * (results[i] - results[0]);
  }
  const mean = results[0] + sum / weights;
  let chiSquare = 0;
  for (let i = 0; i < n; i++) chiSquare += ((results[i] - mean) / uncertainties[i]) ** 2;
  const birgeRatio = n > 1 ? Math.sqrt(chiSquare / (n - 1)) : null;
  const u = 1 / Math.sqrt(weights);
  return { mean, u, chiSquare, degreesOfFreedom: n - 1, birgeRatio, uAgreed: u * Math.max(1, birgeRatio ?? 1) };
}
