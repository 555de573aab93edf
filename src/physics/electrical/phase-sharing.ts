/**
 * Currents of the phases of a buck converter without current balancing [A].
 *
 * I_j = (D_j·U_in − U)/R_j, with U = (Σ D_j·U_in/R_j − I)/Σ 1/R_j
 *
 * I     output current of all phases together [A]
 * U_in  input voltage [V]
 * D_j   duty of each phase [1]
 * R_j   resistance of each phase: winding + D·high side + (1 − D)·low side + trace [Ω], more than zero
 * U     output voltage that follows [V]
 * Valid in continuous conduction. A negative current means that the phase takes current from the others.
 * Source: Kirchhoff's laws.
 */
export function sharePhases(
  outputCurrent: number,
  inputVoltage: number,
  duties: readonly number[],
  resistances: readonly number[],
): number[] {
  if (duties.length !== resistances.length) throw new Error('each phase needs a duty and a resistance');
  let driven = 0;
  let conductance = 0;
  for (const [j, resistance] of resistances.entries()) {
    driven += (duties[j] * inputVoltage) / resistance;
    conductance += 1 / resistance;
  }
  const outputVoltage = (driven - outputCurrent) / conductance;
  return resistances.map((resistance, j) => (duties[j] * inputVoltage - outputVoltage) / resistance);
}

/**
 * Current that moves from one of two phases to the other for a difference in their duty [A].
 *
 * ΔI = ΔD·U_in/(R1 + R2)
 *
 * ΔD      difference in duty [1]
 * U_in    input voltage [V]
 * R1, R2  resistances of the phases [Ω]
 * Valid for two phases in continuous conduction without current balancing.
 * Source: Kirchhoff's laws.
 */
export function mismatchCurrent(dutyDifference: number, inputVoltage: number, first: number, second: number): number {
  return (dutyDifference * inputVoltage) / (first + second);
}
