import { moments } from './moments.ts';

/**
 * What is known about a number beside its best value; all figures SI. The best value is what a person would use, not always the mean: the
 * stated value for `normal`, `t` and everything between two ends, the median for `log-normal`, the mean for `choice`.
 * - `normal`: standard uncertainty u.
 * - `t`: standard uncertainty u from few readings, or from a certificate with its degrees of freedom: Student's distribution, scaled by u (JCGM 101, 6.4.9).
 * - `log-normal`: a positive quantity with a large relative spread; `sigma` is the standard deviation of the natural logarithm.
 * - `rectangular`: certainly between low and high, nothing else known (GUM 4.3.7).
 * - `triangular`: the same, but likelier the nearer to the best value, which is the peak (GUM 4.3.9).
 * - `u-shaped`: the same, but swinging between the ends like a sine, so most often near one of them (JCGM 101, 6.4.6).
 * - `trapezoidal`: the same, flat within `flat` of the middle and falling to nothing at the ends (JCGM 101, 6.4.4).
 * - `curvilinear`: a rectangle of which the ends are only known to ± `by`, both moving alike (curvilinear trapezoid, JCGM 101, 6.4.3).
 * - `sorted`: parts of a wide tolerance from which those of a narrower one have been sorted out: a rectangle with a hole.
 * - `choice`: one of several values, each with its probability; these add up to 1.
 */
export type Spread =
  | { readonly shape: 'normal'; readonly u: number }
  | { readonly shape: 't'; readonly u: number; readonly degreesOfFreedom: number }
  | { readonly shape: 'log-normal'; readonly sigma: number }
  | { readonly shape: 'rectangular'; readonly low: number; readonly high: number }
  | { readonly shape: 'triangular'; readonly low: number; readonly high: number }
  | { readonly shape: 'u-shaped'; readonly low: number; readonly high: number }
  | { readonly shape: 'trapezoidal'; readonly low: number; readonly high: number; readonly flat: number }
  | { readonly shape: 'curvilinear'; readonly low: number; readonly high: number; readonly by: number }
  | {
      readonly shape: 'sorted';
      readonly low: number;
      readonly high: number;
      readonly holeLow: number;
      readonly holeHigh: number;
    }
  | { readonly shape: 'choice'; readonly values: readonly number[]; readonly probabilities: readonly number[] };

/**
 * Standard uncertainty of a number [SI]: the standard deviation of its distribution. For `t` it is the one that was stated, as in the GUM; the few
 * degrees of freedom go into the coverage factor there (GUM 4.2.3, G.3), and make the standard deviation larger by √(ν/(ν − 2)) in JCGM 101.
 */
export function standardUncertainty(spread: Spread, value: number): number {
  if (spread.shape === 'normal' || spread.shape === 't') return spread.u;
  if (spread.shape === 'rectangular') return (spread.high - spread.low) / Math.sqrt(12);
  return Math.sqrt(moments(spread, value).variance!);
}

/** Degrees of freedom of a standard uncertainty [1]; ∞ where it isn't in doubt itself. */
export function degreesOfFreedom(spread: Spread): number {
  return spread.shape === 't' ? spread.degreesOfFreedom : Number.POSITIVE_INFINITY;
}

/** The ends that a number is certainly between [SI]; null where there are none. */
export function endsOf(spread: Spread): { readonly low: number; readonly high: number } | null {
  switch (spread.shape) {
    case 'normal':
    case 't':
    case 'log-normal':
      return null;
    case 'curvilinear':
      return { low: spread.low - spread.by, high: spread.high + spread.by };
    case 'choice':
      return { low: Math.min(...spread.values), high: Math.max(...spread.values) };
    default:
      return { low: spread.low, high: spread.high };
  }
}
