import type { Scatter } from './scatter.ts';
import { studentAbove, studentQuantile } from './student-t.ts';

/** A difference between two means [unit of the readings], and how well it is known. */
export interface MeanDifference {
  /** Second mean less the first. */
  readonly difference: number;
  /** Standard uncertainty. */
  readonly u: number;
  readonly degreesOfFreedom: number;
  /** difference/u */
  readonly t: number;
  /** Probability of a difference at least this large, either way, if there were none. */
  readonly chance: number;
  /** Interval that holds the true difference with the confidence asked for. */
  readonly low: number;
  readonly high: number;
}

/**
 * Difference of two means of independent readings whose scatters may differ: u² = s₁²/n₁ + s₂²/n₂, ν = u⁴/Σ (sᵢ²/nᵢ)²/(nᵢ − 1).
 * Null where neither sample scatters: then nothing is known of the uncertainty.
 * Source: B. L. Welch, "The generalization of Student's problem", Biometrika 34 (1947) 28–35, with Satterthwaite's degrees of freedom (1946).
 */
export function differenceByWelch(one: Scatter, other: Scatter, confidence = 0.95): MeanDifference | null {
  const variance = one.variance / one.n + other.variance / other.n;
  return studentDifference(other.mean - one.mean, variance, welchDegrees(one, other), confidence);
}

/** Degrees of freedom of a sum of two variances of means [1]: Welch–Satterthwaite. */
export function welchDegrees(one: Scatter, other: Scatter): number {
  const [first, second] = [one.variance / one.n, other.variance / other.n];
  return (first + second) ** 2 / (first ** 2 / (one.n - 1) + second ** 2 / (other.n - 1));
}

/**
 * Difference of two means of independent readings that scatter alike: one variance from both, ν = n₁ + n₂ − 2. Null where neither scatters.
 * Source: Student (1908), R. A. Fisher (1925); NIST/SEMATECH e-Handbook of Statistical Methods, 7.3.1.
 */
export function differenceByPooling(one: Scatter, other: Scatter, confidence = 0.95): MeanDifference | null {
  const degreesOfFreedom = one.n + other.n - 2;
  const variance = ((one.n - 1) * one.variance + (other.n - 1) * other.variance) / degreesOfFreedom;
  return studentDifference(other.mean - one.mean, variance * (1 / one.n + 1 / other.n), degreesOfFreedom, confidence);
}

/**
 * Mean of the differences within pairs, given as one sample: what both readings of a pair share drops out; ν = pairs − 1. Null where all
 * differences are the same.
 * Source: Student, "The probable error of a mean", Biometrika 6 (1908) 1–25; NIST/SEMATECH e-Handbook, 7.3.1.1.
 */
export function differenceOfPairs({ n, mean, variance }: Scatter, confidence = 0.95): MeanDifference | null {
  return studentDifference(mean, variance / n, n - 1, confidence);
}

/** A difference with its variance and degrees of freedom (above 0), by Student's distribution; null without a variance. */
export function studentDifference(
  difference: number,
  variance: number,
  degreesOfFreedom: number,
  confidence: number,
): MeanDifference | null {
  if (!(variance > 0)) return null;
  const u = Math.sqrt(variance);
  const t = difference / u;
  const reach = studentQuantile((1 + confidence) / 2, degreesOfFreedom) * u;
  const chance = 2 * studentAbove(Math.abs(t), degreesOfFreedom);
  return { difference, u, degreesOfFreedom, t, chance, low: difference - reach, high: difference + reach };
}
