/**
 * On-resistance of a power transistor at its junction temperature [Ω].
 *
 * R = R25·(1 + α·(T − 25 °C))
 *
 * R25  on-resistance at 25 °C [Ω]
 * α    coefficient [1/K]; 0.004 to 0.005 in data sheets of silicon MOSFETs
 * T    junction temperature [K]
 * Valid for silicon MOSFETs from 25 °C to 150 °C.
 * Source: Linear Technology, LTC3728 data sheet, design example (0.005/K).
 */
export function onResistanceAt(resistance: number, coefficient: number, temperature: number): number {
  return resistance * (1 + coefficient * (temperature - 298.15));
}
