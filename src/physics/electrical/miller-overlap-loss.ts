/**
 * Loss from current and voltage overlapping while a driver moves the high side through its plateau [W].
 *
 * P = U²·(I/2)·R·C·(1/(U_dr − U_th) + 1/U_th)·f
 *
 * U     input voltage [V]
 * I     current of the phase [A]
 * R     resistance of the driver [Ω]
 * C     Miller capacitance [F]
 * U_dr  drive voltage [V], above U_th
 * U_th  gate voltage of the plateau [V], above 0
 * f     switching frequency [Hz]
 * Valid for hard switching where the driver, not stray inductance, sets the edges.
 * Source: Linear Technology, LTC3731 data sheet, page 23.
 */
export function millerOverlapLoss(
  inputVoltage: number,
  current: number,
  driverResistance: number,
  millerCapacitance: number,
  driveVoltage: number,
  plateauVoltage: number,
  frequency: number,
): number {
  const edges = 1 / (driveVoltage - plateauVoltage) + 1 / plateauVoltage;
  const charging = driverResistance * millerCapacitance * edges;
  return inputVoltage * inputVoltage * (current / 2) * charging * frequency;
}
