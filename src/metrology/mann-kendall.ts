import { autocorrelation } from './autocorrelation.ts';
import { firstOrderTime, unbiasedCorrelation } from './neighbours.ts';
import { normalQuantile } from './normal-quantile.ts';
import { normalBelow } from './probability.ts';
import { quantileOf } from './quantile.ts';
import { ranksOf } from './ranks.ts';

/** Whether readings rise or fall, whatever the shape of the rise and of their scatter. */
export interface MonotoneTrend {
  /** Pairs that rise less pairs that fall. */
  readonly s: number;
  /** Variance of s for independent readings without a trend, ties allowed for. */
  readonly variance: number;
  /** (|s| − 1)/√variance with the sign of s. */
  readonly z: number;
  /** Probability of a trend at least this clear, either way, if there were none. */
  readonly chance: number;
  /** Kendall's τ-b [1]: 1 where every pair rises. */
  readonly tau: number;
  /** How many times larger the variance is because neighbours are alike, by Hamed and Rao's sum over the lags that show; 1 where none does. */
  readonly inflationOfLags: number;
  /** The larger of it and of what the first lag alone makes expect. */
  readonly inflation: number;
  /** z and chance with the inflated variance. */
  readonly zCorrelated: number;
  readonly chanceCorrelated: number;
}

/**
 * Mann–Kendall test of readings in the order of time. Variance n(n − 1)(2n + 5)/18 − Σ t(t − 1)(2t + 5)/18 over groups of t equal readings.
 *
 * For readings like their neighbours it grows by 1 + 2/(n(n − 1)(n − 2)) · Σ (n − k)(n − k − 1)(n − k − 2)·ρ(k), with the autocorrelations ρ of the
 * ranks of the readings without their slope, those beyond 1.96/√n only. Never shrunk: readings that swing are no proof. That sum is too
 * small for short series, because the slope took some of ρ with it; so at least what a first-order series has is taken, with ρ(1) freed of
 * that bias. Null for fewer than three readings or when all are the same.
 * Sources: H. B. Mann, Econometrica 13 (1945) 245–259; M. G. Kendall, Rank Correlation Methods (1975); K. H. Hamed, A. R. Rao, J. Hydrology
 * 204 (1998) 182–196.
 */
export function mannKendall(values: ArrayLike<number>): MonotoneTrend | null {
  const n = values.length;
  let s = 0;
  for (let i = 0; i < n; i++) for (let j = i + 1; j < n; j++) s += Math.sign(values[j] - values[i]);
  const counts = new Map<number, number>();
  for (let i = 0; i < n; i++) counts.set(values[i], (counts.get(values[i]) ?? 0) + 1);
  let variance = (n * (n - 1) * (2 * n + 5)) / 18;
  let tiedPairs = 0;
  for (const t of counts.values()) {
    variance -= (t * (t - 1) * (2 * t + 5)) / 18;
    tiedPairs += (t * (t - 1)) / 2;
  }
  if (n < 3 || counts.size < 2) return null;
  const pairs = (n * (n - 1)) / 2;
  const { ofLags, ofFirst } = inflationsOf(values);
  const inflation = Math.max(ofLags, ofFirst);
  const z = (s - Math.sign(s)) / Math.sqrt(variance);
  const zCorrelated = z / Math.sqrt(inflation);
  const tau = s / Math.sqrt(pairs * (pairs - tiedPairs));
  const inflations = { inflationOfLags: ofLags, inflation };
  return {
    s,
    variance,
    z,
    chance: twoSided(z),
    tau,
    ...inflations,
    zCorrelated,
    chanceCorrelated: twoSided(zCorrelated),
  };
}

/** Slope of readings through the middle of all pairs. */
export interface RobustSlope {
  /** Median of the slopes of all pairs [unit of the readings per unit of time]. */
  readonly slope: number;
  /** Interval that holds the true slope with the confidence asked for; independent readings. */
  readonly low: number;
  readonly high: number;
}

/**
 * Theil–Sen slope with an interval from the variance of Mann–Kendall's s: the slopes (N ∓ C)/2 places from the lower end, C = z·√variance,
 * N: number of slopes. `times` are the readings' numbers where they aren't given; pairs of the same time are left out. Null where
 * `mannKendall` is, or without two times.
 * Sources: H. Theil (1950); P. K. Sen, J. Am. Stat. Assoc. 63 (1968) 1379–1389; the interval as in R. O. Gilbert, Statistical Methods for
 * Environmental Pollution Monitoring (1987), section 16.5.
 */
export function theilSen(
  values: ArrayLike<number>,
  times: ArrayLike<number> = Array.from(values, (_, i) => i),
  confidence = 0.95,
  inflation = 1,
): RobustSlope | null {
  const trend = mannKendall(values);
  if (!trend) return null;
  const slopes: number[] = [];
  for (let i = 0; i < values.length; i++)
    for (let j = i + 1; j < values.length; j++)
      if (times[j] !== times[i]) slopes.push((values[j] - values[i]) / (times[j] - times[i]));
  if (slopes.length === 0) return null;
  const sorted = Float64Array.from(slopes).sort();
  const reach = normalQuantile((1 + confidence) / 2) * Math.sqrt(trend.variance * inflation);
  const at = (place: number) => {
    const kept = Math.min(sorted.length, Math.max(1, place));
    const below = Math.min(sorted.length - 1, Math.floor(kept));
    return sorted[below - 1] + (kept - below) * (sorted[below] - sorted[below - 1]);
  };
  const slope = quantileOf(sorted, 0.5);
  if (sorted.length === 1) return { slope, low: slope, high: slope };
  return { slope, low: at((sorted.length - reach) / 2), high: at((sorted.length + reach) / 2 + 1) };
}

function inflationsOf(values: ArrayLike<number>): { ofLags: number; ofFirst: number } {
  const n = values.length;
  const slope = medianSlope(values);
  const rests = Array.from(values, (value, i) => value - slope * i);
  // Rests that are equal but for the rounding of the subtraction are ties.
  const grain = 1e-9 * (Math.max(...rests) - Math.min(...rests)) || 1;
  const ranks = ranksOf(rests.map((rest) => Math.round((rest - rests[0]) / grain)));
  const limit = 1.96 / Math.sqrt(n);
  let sum = 0;
  for (let lag = 1; lag < n - 2; lag++) {
    const correlation = autocorrelation(ranks, lag);
    if (Math.abs(correlation) > limit) sum += (n - lag) * (n - lag - 1) * (n - lag - 2) * correlation;
  }
  const first = unbiasedCorrelation(autocorrelation(ranks, 1), n, 'line');
  const ofLags = Math.max(1, 1 + (2 / (n * (n - 1) * (n - 2))) * sum);
  return { ofLags, ofFirst: firstOrderTime(first, n) };
}

function medianSlope(values: ArrayLike<number>): number {
  const slopes = new Float64Array((values.length * (values.length - 1)) / 2);
  let count = 0;
  for (let i = 0; i < values.length; i++)
    for (let j = i + 1; j < values.length; j++) slopes[count++] = (values[j] - values[i]) / (j - i);
  return quantileOf(slopes.sort(), 0.5);
}

function twoSided(z: number): number {
  return 2 * normalBelow(-Math.abs(z));
}
