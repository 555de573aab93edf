/** Coefficients of a thermistor for resistance in Ω [1/K]. */
export interface SteinhartHart {
  readonly a: number;
  readonly b: number;
  readonly c: number;
}

/**
 * Temperature of a thermistor by its three coefficients [K].
 *
 * 1/T = A + B·L + C·L³, L = ln(R/Ω)
 *
 * A B C   coefficients of the part [1/K]
 * R       resistance [Ω], more than zero
 * Valid between the points the coefficients come from: within 0.05 K over 100 K for common parts, worse outside.
 * Source: J. S. Steinhart and S. R. Hart, Calibration curves for thermistors, Deep-Sea Research 15 (1968) 497–503.
 */
export function steinhartHartTemperature({ a, b, c }: SteinhartHart, resistance: number): number {
  const logarithm = Math.log(resistance);
  return 1 / (a + b * logarithm + c * logarithm ** 3);
}

/**
 * Resistance of a thermistor by its three coefficients [Ω].
 *
 * L = ∛(y − x/2) − ∛(y + x/2), x = (A − 1/T)/C, y = √((B/(3·C))³ + x²/4), R = exp(L) Ω; for C = 0, L = (1/T − A)/B
 *
 * Symbols and range as for the temperature; B and C positive, or C zero.
 * Source: solution of the depressed cubic (Cardano) of the Steinhart–Hart equation.
 */
export function steinhartHartResistance({ a, b, c }: SteinhartHart, temperature: number): number {
  if (c === 0) return Math.exp((1 / temperature - a) / b);
  const x = (a - 1 / temperature) / c;
  const y = Math.sqrt((b / (3 * c)) ** 3 + x ** 2 / 4);
  return Math.exp(Math.cbrt(y - x / 2) - Math.cbrt(y + x / 2));
}

/**
 * Whether resistance falls as temperature rises there, as it must of any thermistor of this kind.
 *
 * B + 3·C·L² > 0, L = ln(R/Ω)
 *
 * Symbols as for the temperature.
 * Source: derivative of the Steinhart–Hart equation.
 */
export function steinhartHartFalls({ b, c }: SteinhartHart, resistance: number): boolean {
  return b + 3 * c * Math.log(resistance) ** 2 > 0;
}
