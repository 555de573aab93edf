import { fitColumns } from './column-fit.ts';

/** A calibration curve Y = b0 + b1·(x − x0) [+ b2·(x − x0)²]. */
export interface CalibrationCurve {
  /** x0, the reading that the powers count from. */
  readonly origin: number;
  /** b0, b1 and, of a quadratic, b2. */
  readonly coefficients: readonly number[];
  /** Of the coefficients, from the scatter about the curve. */
  readonly covariance: readonly (readonly number[])[];
  /** Standard deviation of one value about the curve. */
  readonly scatter: number;
  /** Points less coefficients. */
  readonly freedom: number;
}

/**
 * Calibration curve through points by least squares; null with too few different readings, or when none is left over to judge the scatter by.
 *
 * Σ (Yᵢ − Σⱼ bⱼ·(xᵢ − x0)ʲ)² is least, s² = that sum/(n − p), V(b) = s²·(XᵀX)⁻¹
 *
 * xᵢ, Yᵢ   readings and true values, n of them
 * x0       origin of the powers, near the readings
 * p        coefficients: 2 for a straight line, 3 for a quadratic
 * s        scatter about the curve
 * Valid where the scatter is the same at every point, independent, and the readings are known much better than the values.
 * Source: JCGM 100:2008 (GUM), H.3, for the straight line; NIST StRD, linear least squares, for the quadratic.
 */
export function fitCalibration(
  readings: readonly number[],
  values: readonly number[],
  order: 1 | 2,
  origin: number,
): CalibrationCurve | null {
  const columns = Array.from({ length: order + 1 }, (_, j) => readings.map((reading) => (reading - origin) ** j));
  const fit = fitColumns(columns, values);
  const freedom = readings.length - columns.length;
  if (fit === null || freedom < 1) return null;
  const variance = fit.squares / freedom;
  const covariance = fit.inverse.map((row) => row.map((entry) => variance * entry));
  return { origin, coefficients: fit.coefficients, covariance, scatter: Math.sqrt(variance), freedom };
}

/**
 * Value of a calibration curve at a reading, with the curve's own standard uncertainty [unit of the true values].
 *
 * Y = Σ bⱼ·zʲ, u² = Σⱼₖ zʲ⁺ᵏ·V(bⱼ, bₖ), z = x − x0
 *
 * x   reading, taken as exact
 * V   covariance of the coefficients; left out, the uncertainty far from the origin comes out wrong
 * A single new value scatters by s about the curve as well: √(u² + s²). Valid near the calibrated range; beyond, u holds only if the curve does.
 * Source: JCGM 100:2008 (GUM), H.3.4 and equation 13.
 */
export function predictCalibration(curve: CalibrationCurve, reading: number): { value: number; u: number } {
  const powers = curve.coefficients.map((_, j) => (reading - curve.origin) ** j);
  const value = curve.coefficients.reduce((sum, coefficient, j) => sum + coefficient * powers[j], 0);
  const variance = curve.covariance.reduce(
    (sum, row, j) => sum + row.reduce((rest, entry, k) => rest + powers[j] * powers[k] * entry, 0),
    0,
  );
  return { value, u: Math.sqrt(variance) };
}
