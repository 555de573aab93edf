/**
 * Rise of a thick body's surface after a step of heat into it [K].
 *
 * ΔT = (P/A)·2·√(t/(π·k·ρ·c))
 *
 * P/A  heat per area [W/m²]
 * t    time since the step [s]
 * k    thermal conductivity [W/(m·K)]
 * ρ    density [kg/m³]
 * c    specific heat [J/(kg·K)]
 * Valid while t is below 0.1·L²·ρ·c/k for a body of thickness L; the square-root correction of a cooling curve's first microseconds rests on it.
 * Source: H. S. Carslaw, J. C. Jaeger, Conduction of Heat in Solids, 2nd ed., section 2.9; JEDEC JESD51-14, annex (from memory).
 */
export function surfaceStepRise(
  heatFlux: number,
  time: number,
  conductivity: number,
  density: number,
  specificHeat: number,
): number {
  return 2 * heatFlux * Math.sqrt(time / (Math.PI * conductivity * density * specificHeat));
}
