/** Factor from a connector's measured base curve to the curve that may be used. Source: IEC 60512-5-2, test 5b. */
export const connectorFactor = 0.8;

/**
 * Current of a connector by the points of its curve [A].
 *
 * straight between two points; the first point's current below it; nothing above the last point
 *
 * points       ambient temperature [K], rising, and current [A]
 * temperature  of the air around it [K]
 * Valid for the number of contacts loaded and the wire of the curve.
 * Source: IEC 60512-5-2, test 5b, current-temperature derating; between points common practice, no source.
 */
export function currentByCurve(points: readonly (readonly [number, number])[], temperature: number): number {
  if (points.length === 0) throw new Error('a curve needs points');
  if (temperature <= points[0][0]) return points[0][1];
  const next = points.findIndex(([at]) => at >= temperature);
  if (next < 0) return 0;
  const [[from, high], [to, low]] = [points[next - 1], points[next]];
  return high + ((low - high) * (temperature - from)) / (to - from);
}

/**
 * Current of a conductor that warms itself, at another ambient temperature [A].
 *
 * I = I1·√((T_max − T)/(T_max − T1))
 *
 * I1     current that brings it to its limit at ambient T1 [A]
 * T1     that ambient temperature [K], below T_max
 * T_max  its limiting temperature [K]
 * T      ambient temperature [K]; from T_max on there is no current left
 * Valid where loss is I²R with R about constant and heat leaves in proportion to the rise; many contacts close together depart from it.
 * Source: balance of I²R and heat; connectors' published base curves (IEC 60512-5-2) follow it within 1 % to 7 %.
 */
export function selfHeatingCurrent(current: number, at: number, limit: number, temperature: number): number {
  return temperature >= limit ? 0 : current * Math.sqrt((limit - temperature) / (limit - at));
}
