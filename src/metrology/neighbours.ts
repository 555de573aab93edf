import { autocorrelation, autocorrelationTime } from './autocorrelation.ts';
import { normalBelow } from './probability.ts';
import { scatterOf } from './scatter.ts';

/**
 * Squares of the steps between neighbours over those about the mean [1]: about 2 for independent readings, less where neighbours are alike
 * or the series drifts, up to 4 where it swings. NaN for a constant series.
 * Source: J. von Neumann, "Distribution of the ratio of the mean square successive difference to the variance", Ann. Math. Stat. 12 (1941) 367–395.
 */
export function vonNeumannRatio(values: ArrayLike<number>): number {
  const { n, variance } = scatterOf(values);
  let steps = 0;
  for (let i = 1; i < n; i++) steps += (values[i] - values[i - 1]) ** 2;
  return steps / ((n - 1) * variance);
}

/**
 * Probability of a von Neumann ratio at most this small if the readings were independent [1]: normal, mean 2, variance 4(n − 2)/(n² − 1). 1
 * for a constant series or fewer than four readings: then nothing can be said.
 * Source: L. C. Young, "On randomness in ordered sequences", Ann. Math. Stat. 12 (1941) 293–300.
 */
export function chanceOfIndependence(values: ArrayLike<number>): number {
  const n = values.length;
  const ratio = n < 4 ? Number.NaN : vonNeumannRatio(values);
  return Number.isNaN(ratio) ? 1 : normalBelow((ratio - 2) / Math.sqrt((4 * (n - 2)) / (n * n - 1)));
}

/**
 * Autocorrelation time of n readings that each keep the share φ of their neighbour's deviation [readings]: 1 + 2·Σ (1 − k/n)·φᵏ, summed;
 * (1 + φ)/(1 − φ) for endless series. n over it is the number of independent readings that say as much about the mean. Valid for −1 < φ < 1.
 * Source: G. E. P. Box, G. M. Jenkins, Time Series Analysis (1970), variance of the mean of a first-order autoregressive series.
 */
export function firstOrderTime(phi: number, n = Number.POSITIVE_INFINITY): number {
  const endless = (1 + phi) / (1 - phi);
  return n === Number.POSITIVE_INFINITY ? endless : endless - (2 * phi * (1 - phi ** n)) / (n * (1 - phi) ** 2);
}

/** A record of more independent readings than this tells its autocorrelation itself (common practice, no source). */
const longRecord = 50;

/**
 * Autocorrelation time of a record about its mean or its straight line [readings], not too short where the record is: there the sum over
 * the lags ends too early, and what was fitted took part of the first autocorrelation with it, about (1 + 3ρ)/n for a mean and (2 + 4ρ)/n
 * for a line. So at least the time of a first-order series is taken, ρ freed of that; none where ρ is within 1.96/√n.
 * Source of the bias: M. G. Kendall, Biometrika 41 (1954) 403–404, from memory; for a line as well as a mean.
 */
export function cautiousTime(record: ArrayLike<number>, about: 'mean' | 'line'): number {
  const n = record.length;
  const sum = autocorrelationTime(record);
  const first = unbiasedCorrelation(autocorrelation(record, 1), n, about);
  return n / sum > longRecord ? sum : Math.max(sum, firstOrderTime(first, n));
}

/** A first autocorrelation freed of what fitting a mean or a line took of it [1]; 0 where it doesn't show. */
export function unbiasedCorrelation(first: number, n: number, about: 'mean' | 'line'): number {
  if (n <= 4 || first < 1.96 / Math.sqrt(n)) return 0;
  return Math.min(1 - 1 / n, about === 'mean' ? (n * first + 1) / (n - 3) : (n * first + 2) / (n - 4));
}
