/**
 * Voltage of a supply under load [V].
 *
 * U = U0 − I·R
 *
 * U0  voltage at no load [V]
 * I   current [A]
 * R   source resistance [Ω]
 * Valid below the supply's current limit.
 * Source: Thévenin's theorem.
 */
export function supplyVoltage(noLoadVoltage: number, current: number, resistance: number): number {
  return noLoadVoltage - current * resistance;
}
