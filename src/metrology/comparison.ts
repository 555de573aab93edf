import { acceleratedInterval, bootstrap, percentileInterval, type Statistic } from './bootstrap.ts';
import { type MonotoneTrend, mannKendall, type RobustSlope, theilSen } from './mann-kendall.ts';
import { differenceByWelch, differenceOfPairs, type MeanDifference } from './mean-difference.ts';
import { cautiousTime, chanceOfIndependence } from './neighbours.ts';
import { type QuantileDefinition, quantileOf } from './quantile.ts';
import { geometricMean, type Ratio, ratioByLogs, ratioOfMeans, ratioOfPairedMeans } from './ratio.ts';
import { type Scatter, scatterOf } from './scatter.ts';
import { warmUpOf } from './warm-up.ts';

/** What a sample in the order of time says about itself. */
export interface SampleCheck extends Scatter {
  /** Independent readings that it is worth: fewer than n where neighbours are alike. */
  readonly independent: number;
  /** Mann–Kendall test and Theil–Sen slope per reading; null for fewer than four readings or when all are the same. */
  readonly trend: (MonotoneTrend & RobustSlope) | null;
  /** Readings at the beginning that look like a warm-up, and the mean without them; null where none do. */
  readonly warmUp: { readonly cut: number; readonly mean: number } | null;
}

/** Neighbours are taken to be alike below this probability of independence (common practice, no source). */
const alike = 0.01;

/** A warm-up is farther from the rest than so many of its standard deviations (common practice, no source). */
const farOut = 3;

/** A longer sample's trend is looked for in so many means of neighbouring readings: the test takes the square of it. */
const mostInTrend = 500;

/** Mean, scatter, independence and trend of a sample. */
export function checkSample(values: ArrayLike<number>): SampleCheck {
  const scatter = scatterOf(values);
  const { n } = scatter;
  let time = 1;
  if (chanceOfIndependence(values) < alike) time = Math.min(n / 2, cautiousTime(values, 'mean'));
  return { ...scatter, independent: n / time, trend: n < 4 ? null : trendOf(values), warmUp: warmUpIn(values) };
}

/** Readings that the mean is better without, if they are farther from it than the others scatter. */
function warmUpIn(values: ArrayLike<number>): { cut: number; mean: number } | null {
  const found = values.length < 10 ? null : warmUpOf(values, values.length < 50 ? 1 : 5);
  if (!found || found.cut === 0 || !found.found) return null;
  const all = Float64Array.from(values);
  const [cut, kept] = [scatterOf(all.subarray(0, found.cut)), scatterOf(all.subarray(found.cut))];
  const far = Math.abs(cut.mean - kept.mean) > farOut * Math.sqrt(kept.variance);
  return far ? { cut: found.cut, mean: kept.mean } : null;
}

function trendOf(values: ArrayLike<number>): (MonotoneTrend & RobustSlope) | null {
  const length = Math.ceil(values.length / mostInTrend);
  const means = Float64Array.from({ length: Math.floor(values.length / length) }, (_, b) => {
    let sum = 0;
    for (let i = 0; i < length; i++) sum += values[b * length + i];
    return sum / length;
  });
  const trend = mannKendall(means);
  if (!trend) return null;
  const { slope, low, high } = theilSen(means, undefined, 0.95, trend.inflation)!;
  return { ...trend, slope: slope / length, low: low / length, high: high / length };
}

/** How two samples are compared. */
export interface ComparisonRule {
  /** Whether readings of the same place belong together. */
  readonly paired: boolean;
  /** Of all intervals, such as 0.95. */
  readonly confidence: number;
  readonly seed: number;
  /** The share below a quantile that is compared as well, and by which definition; null for none. */
  readonly quantile: { readonly p: number; readonly definition: QuantileDefinition } | null;
}

/** An interval by drawing the samples anew. */
export interface DrawnInterval {
  readonly low: number;
  readonly high: number;
  readonly draws: number;
}

/** Two samples compared, the second less or over the first. */
export interface Comparison {
  readonly before: SampleCheck;
  readonly after: SampleCheck;
  /** The differences within pairs as a sample; null for independent samples. */
  readonly pairs: SampleCheck | null;
  /** By Student's distribution with the independent readings; null where nothing scatters. */
  readonly difference: MeanDifference | null;
  /** By Fieller; null where nothing scatters, or the first mean is zero. */
  readonly ratio: Ratio | null;
  /** Ratio of the geometric means; null unless all readings are positive, and independent of their neighbours. */
  readonly ratioByLogs: Ratio | null;
  /**
   * Difference of the means by BCa bootstrap; null where readings aren't independent, fewer than eight, or so many that Student's interval
   * is as good.
   */
  readonly drawn: DrawnInterval | null;
  /** Difference of a quantile, by percentiles of the bootstrap. */
  readonly quantile: (DrawnInterval & { readonly before: number; readonly after: number }) | null;
}

const draws = 10_000;

/** Readings of a sample from which on the bootstrap is made: drawn from fewer, its intervals are too narrow (common practice, no source). */
const leastInBootstrap = 8;

/** Readings of both up to which it is made: leaving out each in turn takes the square of their number. */
const mostInBootstrap = 2000;

/** Compares two samples of at least two readings each. The same seed gives the same result. */
export function compareSamples(before: readonly number[], after: readonly number[], rule: ComparisonRule): Comparison {
  const { paired, confidence, quantile } = rule;
  const [one, other] = [checkSample(before), checkSample(after)];
  const pairs = paired ? checkSample(after.map((value, i) => value - before[i])) : null;
  const independent = (pairs ? [pairs] : [one, other]).every((sample) => sample.independent === sample.n);
  const fit =
    Math.min(before.length, after.length) >= leastInBootstrap && before.length + after.length <= mostInBootstrap;
  const ratio = () =>
    paired
      ? ratioOfPairedMeans(before, after, confidence)
      : ratioOfMeans(asIndependent(one), asIndependent(other), confidence);
  const positive = [...before, ...after].every((value) => value > 0);
  const logs = () =>
    paired
      ? geometricMean(
          after.map((value, i) => value / before[i]),
          confidence,
        )
      : ratioByLogs(before, after, confidence);
  return {
    before: one,
    after: other,
    pairs,
    difference: pairs
      ? differenceOfPairs(asIndependent(pairs), confidence)
      : differenceByWelch(asIndependent(one), asIndependent(other), confidence),
    ratio: one.mean === 0 ? null : ratio(),
    ratioByLogs: positive && independent ? logs() : null,
    drawn: independent && fit ? drawnDifference(before, after, rule, (values) => scatterOf(values).mean, true) : null,
    quantile: quantile && fit ? quantileDifference(before, after, rule, quantile) : null,
  };
}

/** A sample of independent readings with the same mean and the same uncertainty of it. */
function asIndependent({ n, mean, variance, independent }: SampleCheck): Scatter {
  return { n: independent, mean, variance: (variance * (n - 1)) / (n - n / independent) };
}

/** Difference of a statistic of one sample, the pairs drawn together. */
function drawnDifference(
  before: readonly number[],
  after: readonly number[],
  { paired, confidence, seed }: ComparisonRule,
  of: (values: ArrayLike<number>) => number,
  accelerated: boolean,
): DrawnInterval {
  const both: Statistic = ([one, other]) => of(other) - of(one);
  const rows: Statistic = ([rows]) => of(rows.map((row) => after[row])) - of(rows.map((row) => before[row]));
  const found = paired
    ? bootstrap([before.map((_, i) => i)], rows, draws, seed)
    : bootstrap([before, after], both, draws, seed);
  const [low, high] = accelerated ? acceleratedInterval(found, confidence) : percentileInterval(found, confidence);
  return { low, high, draws };
}

function quantileDifference(
  before: readonly number[],
  after: readonly number[],
  rule: ComparisonRule,
  { p, definition }: NonNullable<ComparisonRule['quantile']>,
) {
  const of = (values: ArrayLike<number>) => quantileOf(Float64Array.from(values).sort(), p, definition);
  return { before: of(before), after: of(after), ...drawnDifference(before, after, rule, of, false) };
}
