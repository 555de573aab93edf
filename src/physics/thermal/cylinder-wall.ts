/**
 * Thermal resistance through the wall of a tube, from its inside to its outside [K/W].
 *
 * R = ln(r2/r1)/(2·π·k·L)
 *
 * r1, r2  inner and outer radius [m], 0 < r1 ≤ r2
 * k       thermal conductivity of the wall [W/(m·K)]
 * L       length of tube that the heat passes [m]
 * Valid where the heat flows radially only.
 * Source: Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, equation 3.28.
 */
export function tubeWallResistance(inner: number, outer: number, conductivity: number, length: number): number {
  return Math.log(outer / inner) / (2 * Math.PI * conductivity * length);
}
