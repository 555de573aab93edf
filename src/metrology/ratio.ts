import { differenceByWelch, studentDifference, welchDegrees } from './mean-difference.ts';
import { type Scatter, scatterOf } from './scatter.ts';
import { studentQuantile } from './student-t.ts';

/** A ratio [1] and the interval that holds the true one with the confidence asked for. */
export interface Ratio {
  readonly ratio: number;
  /** Null where the divisor may be zero: then no finite interval holds the ratio. */
  readonly interval: readonly [low: number, high: number] | null;
  /** Square of the divisor's relative reach, t²·v(b)/b²; from 1 on the divisor may be zero. Null where no divisor is uncertain. */
  readonly g: number | null;
  readonly degreesOfFreedom: number;
}

/** Two uncertain numbers with their variances and covariance. */
export interface Quotient {
  readonly dividend: number;
  readonly divisor: number;
  readonly dividendVariance: number;
  readonly divisorVariance: number;
  readonly covariance: number;
}

/**
 * Interval of a ratio a/b [1] without the assumption that b is well known: all ρ for which a − ρ·b may be zero,
 * {θ − g·c/v_b ± (t/b)·√[v_a − 2θc + θ²v_b − g(v_a − c²/v_b)]}/(1 − g), g = t²·v_b/b².
 *
 * a, b: normal, v: variances, c: covariance, θ = a/b, t: quantile for the confidence. From g = 1 on the interval isn't finite.
 * Source: E. C. Fieller, "Some problems in interval estimation", J. R. Stat. Soc. B 16 (1954) 175–185.
 */
export function ratioByFieller(
  { dividend, divisor, dividendVariance, divisorVariance, covariance }: Quotient,
  reach: number,
  degreesOfFreedom = Number.POSITIVE_INFINITY,
): Ratio {
  const ratio = dividend / divisor;
  const g = (reach ** 2 * divisorVariance) / divisor ** 2;
  if (!(g < 1)) return { ratio, interval: null, g, degreesOfFreedom };
  // g/v_b is written out: a divisor without a variance is no reason to divide by zero.
  const shift = (reach / divisor) ** 2 * covariance;
  const inside =
    dividendVariance * (1 - g) - 2 * ratio * covariance + ratio ** 2 * divisorVariance + shift * covariance;
  const half = Math.abs(reach / divisor) * Math.sqrt(Math.max(0, inside));
  return { ratio, interval: [(ratio - shift - half) / (1 - g), (ratio - shift + half) / (1 - g)], g, degreesOfFreedom };
}

/** Ratio of the means of two independent samples, second over first, by Fieller with Welch's degrees of freedom. Null where neither scatters. */
export function ratioOfMeans(one: Scatter, other: Scatter, confidence = 0.95): Ratio | null {
  if (!(one.variance + other.variance > 0)) return null;
  const degreesOfFreedom = welchDegrees(one, other);
  const quotient = {
    dividend: other.mean,
    divisor: one.mean,
    dividendVariance: other.variance / other.n,
    divisorVariance: one.variance / one.n,
    covariance: 0,
  };
  return ratioByFieller(quotient, studentQuantile((1 + confidence) / 2, degreesOfFreedom), degreesOfFreedom);
}

/** Ratio of the means of pairs, second over first, by Fieller with the covariance within pairs. Null where neither scatters. */
export function ratioOfPairedMeans(
  before: ArrayLike<number>,
  after: ArrayLike<number>,
  confidence = 0.95,
): Ratio | null {
  const [one, other] = [scatterOf(before), scatterOf(after)];
  if (one.n !== other.n) throw new Error(`${one.n} readings and ${other.n} make no pairs`);
  if (!(one.variance + other.variance > 0)) return null;
  const products = Array.from(before, (value, i) => (value - one.mean) * (after[i] - other.mean));
  const quotient = {
    dividend: other.mean,
    divisor: one.mean,
    dividendVariance: other.variance / other.n,
    divisorVariance: one.variance / one.n,
    covariance: products.reduce((sum, product) => sum + product, 0) / (one.n - 1) / one.n,
  };
  return ratioByFieller(quotient, studentQuantile((1 + confidence) / 2, one.n - 1), one.n - 1);
}

/**
 * Ratio of the geometric means of two independent samples of positive readings: Welch's difference of their logarithms. Null where neither
 * scatters.
 */
export function ratioByLogs(before: ArrayLike<number>, after: ArrayLike<number>, confidence = 0.95): Ratio | null {
  const logs = differenceByWelch(scatterOf(logarithms(before)), scatterOf(logarithms(after)), confidence);
  return logs && fromLogs(logs);
}

/**
 * Geometric mean of positive ratios [1], exp(mean of ln r), with Student's interval on the logarithms: the one mean that doesn't depend on
 * what the ratios are taken to. No interval for a single ratio or for ratios that are all the same.
 * Source: P. J. Fleming, J. J. Wallace, "How not to lie with statistics: the correct way to summarize benchmark results", Comm. ACM 29
 * (1986) 218–221.
 */
export function geometricMean(ratios: ArrayLike<number>, confidence = 0.95): Ratio {
  const { n, mean, variance } = scatterOf(logarithms(ratios));
  const logs = n > 1 ? studentDifference(mean, variance / n, n - 1, confidence) : null;
  return logs ? fromLogs(logs) : { ratio: Math.exp(mean), interval: null, g: null, degreesOfFreedom: n - 1 };
}

function fromLogs({
  difference,
  low,
  high,
  degreesOfFreedom,
}: NonNullable<ReturnType<typeof studentDifference>>): Ratio {
  return { ratio: Math.exp(difference), interval: [Math.exp(low), Math.exp(high)], g: null, degreesOfFreedom };
}

function logarithms(values: ArrayLike<number>): number[] {
  return Array.from(values, (value) => {
    if (!(value > 0)) throw new Error(`the logarithm of ${value} doesn't exist`);
    return Math.log(value);
  });
}
