import { meanOf } from './mean.ts';

/**
 * Autocorrelation of a series at one lag [1]: r = Σ (yᵢ − ȳ)(yᵢ₊ₗ − ȳ) / Σ (yᵢ − ȳ)²; 0 for a constant series.
 * Source: NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5.12.
 */
export function autocorrelation(values: ArrayLike<number>, lag: number): number {
  const deviations = deviationsOf(values);
  const total = lagged(deviations, 0);
  return total > 0 ? lagged(deviations, lag) / total : 0;
}

/**
 * Integrated autocorrelation time of a series [samples]: τ = 1 + 2 Σ ρ(lag). So many neighbouring samples say as much as one
 * independent one. Never below 1: samples that swing against each other aren't counted as more than they are.
 *
 * The sum stops at the smallest window that holds 2.5 τ, after which ρ is mostly noise.
 * Source: A. D. Sokal, "Monte Carlo methods in statistical mechanics" (1989), section 3: window M ≥ c·τ_int, with τ_int = τ/2 and c = 5.
 * A long series is first averaged in blocks, of a length doubled until at most 4096 are left; blocks as independent as their
 * neighbours allow have the same variance of the mean.
 */
export function autocorrelationTime(values: ArrayLike<number>): number {
  let blockLength = 1;
  while (values.length / blockLength > 4096) blockLength *= 2;
  const blocks = blockLength === 1 ? values : blockMeans(values, blockLength);
  const variance = meanSquare(values);
  if (!(variance > 0)) return 1;
  return Math.max(1, (blockLength * meanSquare(blocks) * windowedTime(blocks)) / variance);
}

function windowedTime(values: ArrayLike<number>): number {
  const deviations = deviationsOf(values);
  const total = lagged(deviations, 0);
  if (!(total > 0)) return 1;
  let time = 1;
  for (let lag = 1; lag < deviations.length; lag++) {
    time += (2 * lagged(deviations, lag)) / total;
    if (lag >= 2.5 * time) break;
  }
  return Math.max(1, time);
}

function blockMeans(values: ArrayLike<number>, blockLength: number): Float64Array {
  const means = new Float64Array(Math.floor(values.length / blockLength));
  for (let b = 0; b < means.length; b++) {
    let sum = 0;
    for (let i = 0; i < blockLength; i++) sum += values[b * blockLength + i];
    means[b] = sum / blockLength;
  }
  return means;
}

function deviationsOf(values: ArrayLike<number>): Float64Array {
  const mean = meanOf(values);
  return Float64Array.from(values, (value) => value - mean);
}

function lagged(deviations: Float64Array, lag: number): number {
  let sum = 0;
  for (let i = lag; i < deviations.length; i++) sum += deviations[i] * deviations[i - lag];
  return sum;
}

function meanSquare(values: ArrayLike<number>): number {
  return lagged(deviationsOf(values), 0) / values.length;
}
