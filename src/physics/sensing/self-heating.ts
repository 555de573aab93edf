/**
 * How much a sensor is warmer than what it measures, from its own power [K].
 *
 * ΔT = P/δ
 *
 * P   power in the sensor [W]
 * δ   dissipation constant [W/K]: a thermistor bead in still air 1 to 3 mW/K, glued to metal several times that
 * Valid in steady state, for the mounting that δ was stated for.
 * Source: IEC 60539-1, dissipation factor.
 */
export function selfHeating(power: number, dissipation: number): number {
  return power / dissipation;
}
