/**
 * Steady temperature of a part whose loss grows with its own temperature [K].
 *
 * T = Ta + R·(P0 + P1·(1 + α·(T − T0))), solved: T = (Ta + R·(P0 + P1·(1 − α·T0)))/(1 − g), g = R·P1·α
 *
 * Ta  temperature of its surroundings [K]
 * R   thermal resistance from the part to its surroundings [K/W]
 * P0  loss that doesn't depend on temperature [W]
 * P1  the growing loss at T0 [W]
 * α   its relative growth [1/K]
 * T0  reference temperature of P1 and α [K]
 * Valid for g < 1. From g = 1 on there is no steady temperature (thermal runaway): Infinity.
 * Source: closed form of the iteration in Maxim Integrated, tutorial 1832, Guide to MOSFET Power Dissipation Calculation.
 */
export function settledTemperature(
  ambient: number,
  resistance: number,
  fixed: number,
  growing: number,
  coefficient: number,
  reference: number,
): number {
  const gain = resistance * growing * coefficient;
  if (gain >= 1) return Number.POSITIVE_INFINITY;
  const atAmbient = fixed + growing * (1 + coefficient * (ambient - reference));
  return ambient + (resistance * atAmbient) / (1 - gain);
}
