import { meanOf } from './mean.ts';
import { cautiousTime } from './neighbours.ts';
import { resolutionOf } from './resolution.ts';
import { studentQuantile } from './student-t.ts';

/** Mean of a steady stretch of readings, and how well it is known. */
export interface SeriesMean {
  readonly mean: number;
  /** Standard deviation of single readings. */
  readonly sd: number;
  readonly n: number;
  /** Independent readings that would say as much. */
  readonly nEffective: number;
  /** Standard uncertainty of the mean; null where it isn't known: the readings never move and their resolution isn't given. */
  readonly uMean: number | null;
  /** Integrated autocorrelation time [readings]. */
  readonly tau: number;
  /** Step the readings are rounded to, as given or as seen; null where neither. */
  readonly resolution: number | null;
  /** True below ten independent readings: the autocorrelation, and so the uncertainty, is then itself a rough guess. */
  readonly short: boolean;
}

/**
 * Mean of correlated readings (all in the unit of the series): u² = s²·τ/(n − τ)·(n − 1)/n + q²/12.
 *
 * s: standard deviation, τ: autocorrelation time, n: readings, q: resolution. The n − τ allows for the mean being taken from the same
 * readings; for independent ones the first term is s²/n. The resolution's part isn't divided by n: a rounded reading
 * repeated is the same error repeated (GUM F.2.2.1).
 */
export function meanOfSeries(values: ArrayLike<number>, resolution: number | null = resolutionOf(values)): SeriesMean {
  const n = values.length;
  if (n === 0) throw new Error('no readings to average');
  const numbers = Float64Array.from(values);
  const mean = meanOf(numbers);
  const squares = numbers.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  const sd = n > 1 ? Math.sqrt(squares / (n - 1)) : 0;
  const tau = Math.max(1, Math.min(cautiousTime(numbers, 'mean'), n / 2));
  const rounding = resolution === null ? 0 : resolution ** 2 / 12;
  const known = n > 1 && (sd > 0 || resolution !== null);
  const uMean = known ? Math.sqrt((squares / n / (n - tau)) * tau + rounding) : null;
  return { mean, sd, n, nEffective: n / tau, uMean, tau, resolution, short: n / tau < 10 };
}

/** Straight line through readings over time. */
export interface Trend {
  /** Slope [unit of the readings per unit of time]. */
  readonly slope: number;
  /** Standard uncertainty of the slope; null where it isn't known: the readings never move and their resolution isn't given. */
  readonly uSlope: number | null;
  /** How far the true slope may be from this one, with 95 %: Student's distribution for the scatter, twice u for the rounding; null as `uSlope`. */
  readonly reach: number | null;
  readonly n: number;
  /** Independent readings that the residuals are worth. */
  readonly nEffective: number;
}

/**
 * Slope of readings over time by least squares: u² = s²·n/(nₑ − 2)/Σ(t − t̄)² + q²/(6·T²)·exp(−4π²s²/q²), s² = Σe²/n − q²/12 or zero. Null
 * for fewer than three readings or one moment only.
 *
 * e: residuals, n: their number, nₑ: this over their autocorrelation time, t: times, q: resolution, T: length of the record. The second term is
 * what two independent roundings at the ends can hide, which is less where noise of s carries the readings over the steps.
 * Sources: first term: B. D. Santer et al., J. Geophys. Res. 105 (2000) 7337–7356, section 3, there with the first lag alone; exponential:
 * first term of the error of the mean of rounded normal noise, B. Widrow, I. Kollár, Quantization Noise (2008), from memory.
 */
export function trend(
  values: ArrayLike<number>,
  times: ArrayLike<number>,
  resolution: number | null = resolutionOf(values),
): Trend | null {
  const n = values.length;
  if (times.length !== n) throw new Error(`${n} readings at ${times.length} times`);
  const meanTime = meanOf(times);
  const meanValue = meanOf(values);
  let timeSquares = 0;
  let products = 0;
  for (let i = 0; i < n; i++) {
    timeSquares += (times[i] - meanTime) ** 2;
    products += (times[i] - meanTime) * (values[i] - meanValue);
  }
  if (n < 3 || !(timeSquares > 0)) return null;
  const slope = products / timeSquares;
  const residuals = Float64Array.from(values, (y, i) => y - meanValue - slope * (times[i] - meanTime));
  const squares = residuals.reduce((sum, r) => sum + r * r, 0);
  const nEffective = Math.max(3, n / cautiousTime(residuals, 'line'));
  const length = Math.abs(times[n - 1] - times[0]);
  const step = (resolution ?? 0) ** 2;
  const own = Math.max(0, squares - (n * step) / 12);
  const dither = step > 0 ? Math.exp((-4 * Math.PI ** 2 * own) / n / step) : 0;
  const rounding = ((step / 6) * dither) / length ** 2;
  const scatter = own / (nEffective - 2) / timeSquares;
  const still = squares === 0 && slope === 0 && resolution === null;
  const sure = studentQuantile(0.975, nEffective - 2) ** 2 * scatter + 4 * rounding;
  return {
    slope,
    uSlope: still ? null : Math.sqrt(scatter + rounding),
    reach: still ? null : Math.sqrt(sure),
    n,
    nEffective,
  };
}
