/**
 * True value by a straight line through two calibration points [unit of the true values].
 *
 * Y = Y1 + (Y2 − Y1)·(x − x1)/(x2 − x1)
 *
 * x1, x2   readings at the two points, not the same
 * Y1, Y2   true values there
 * x        reading
 * Valid where the sensor is straight; between the points it interpolates, beyond them the uncertainty grows.
 * Source: straight line through two points, closed form.
 */
export function calibratedValue(
  reading1: number,
  true1: number,
  reading2: number,
  true2: number,
  reading: number,
): number {
  return true1 + ((true2 - true1) * (reading - reading1)) / (reading2 - reading1);
}

/**
 * Standard uncertainty of that value [unit of the true values].
 *
 * p = (x − x1)/(x2 − x1), u² = (1 − p)²·u1² + p²·u2² + ((Y2 − Y1)/(x2 − x1))²·u_x²·(1 + (1 − p)² + p²)
 *
 * u1, u2   standard uncertainties of the true values, independent
 * u_x      standard uncertainty of each reading, independent
 * Valid to first order.
 * Source: JCGM 100:2008 (GUM), equation 10, applied to the straight line through two points.
 */
export function calibratedUncertainty(
  points: { readonly reading1: number; readonly true1: number; readonly reading2: number; readonly true2: number },
  uncertainty: { readonly true1: number; readonly true2: number; readonly reading: number },
  reading: number,
): number {
  const span = points.reading2 - points.reading1;
  const p = (reading - points.reading1) / span;
  const slope = (points.true2 - points.true1) / span;
  const ofReadings = slope * uncertainty.reading * Math.hypot(1, 1 - p, p);
  return Math.hypot((1 - p) * uncertainty.true1, p * uncertainty.true2, ofReadings);
}
