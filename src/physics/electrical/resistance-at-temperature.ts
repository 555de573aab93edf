/**
 * Resistance at a temperature [Ω].
 *
 * R = R0·(1 + α·(T − T0))
 *
 * R0  resistance at the reference temperature [Ω]
 * α   temperature coefficient at the reference temperature [1/K]; annealed copper at 20 °C: 3.93e-3
 * T   temperature [K]
 * T0  reference temperature [K]
 * Valid where resistance follows temperature in a straight line: copper from −50 °C to 200 °C, resistor alloys over their rated range.
 * Source: IEC 60028:1925 (copper); IEC 60115-1, temperature coefficient of resistance.
 */
export function resistanceAt(
  resistance: number,
  coefficient: number,
  temperature: number,
  referenceTemperature: number,
): number {
  return resistance * (1 + coefficient * (temperature - referenceTemperature));
}
