/**
 * Voltage at the far end of a source's resistance when the load there takes a constant power [V]; null when it can't be had.
 *
 * U = U0/2 + √(U0²/4 − P·R)
 *
 * U0  voltage at no load [V]
 * P   power taken at the far end [W]
 * R   resistance of source, cable and connectors together [Ω]
 * Valid below the supply's current limit; above P = U0²/(4·R) the voltage collapses.
 * Source: Ohm's law, the upper of the two solutions.
 */
export function voltageAtPower(noLoadVoltage: number, power: number, resistance: number): number | null {
  const root = (noLoadVoltage * noLoadVoltage) / 4 - power * resistance;
  return root < 0 ? null : noLoadVoltage / 2 + Math.sqrt(root);
}

/**
 * Resistance of a source from its voltage at no load and under load [Ω].
 *
 * R = (U0 − U)/I
 *
 * U0, U  voltage at no load and at the current [V]
 * I      current [A], more than zero
 * Valid below the supply's current limit, and without a supply that raises its voltage with the load.
 * Source: Thévenin's theorem.
 */
export function sourceResistance(noLoadVoltage: number, voltage: number, current: number): number {
  return (noLoadVoltage - voltage) / current;
}
