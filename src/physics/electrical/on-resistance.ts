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

/**
 * On-resistance of a power transistor at its junction temperature, in the form that grows by the same factor with each kelvin [Ω].
 *
 * R = R25·(1 + α)^(T − 25 °C)
 *
 * R25  on-resistance at 25 °C [Ω]
 * α    growth [1/K]; about 0.004 in data sheets of silicon MOSFETs
 * T    junction temperature [K]
 * Valid for silicon MOSFETs from 25 °C to 150 °C.
 * Source: D. Graovac, M. Pürschel, A. Kiep, MOSFET Power Losses Calculation Using the Data-Sheet Parameters, Infineon, 2006, section 2.1.1.
 */
export function onResistanceGrowing(resistance: number, growth: number, temperature: number): number {
  return resistance * (1 + growth) ** (temperature - 298.15);
}
