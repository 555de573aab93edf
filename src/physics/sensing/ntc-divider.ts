/**
 * Resistance of a thermistor in a divider [Ω]; null when the voltage is at either end, as with an open or a shorted thermistor.
 *
 * thermistor to ground R = R_s·U/(U_s − U); to the supply R = R_s·(U_s − U)/U
 *
 * U     voltage at the middle of the divider [V]
 * U_s   supply of the divider [V]; where the converter's reference is the same supply, only the ratio counts
 * R_s   the other resistor [Ω]
 * Valid where what measures the voltage draws nothing from the divider.
 * Source: Kirchhoff's laws.
 */
export function dividerResistance(
  voltage: number,
  supply: number,
  series: number,
  thermistorAt: 'ground' | 'supply',
): number | null {
  if (!(voltage > 0 && voltage < supply)) return null;
  return thermistorAt === 'ground' ? (series * voltage) / (supply - voltage) : (series * (supply - voltage)) / voltage;
}

/**
 * Power that a divider turns into heat in its thermistor [W].
 *
 * P = R·(U_s/(R + R_s))²
 *
 * R, R_s   thermistor and the other resistor [Ω]
 * U_s      supply of the divider [V]
 * Valid for a supply that is on all the time; switched on for readings only, its mean is less.
 * Source: Ohm's and Joule's laws.
 */
export function dividerHeat(supply: number, thermistor: number, series: number): number {
  return thermistor * (supply / (thermistor + series)) ** 2;
}
