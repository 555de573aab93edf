/**
 * Peak-to-peak ripple current in the inductor of one buck phase [A].
 *
 * ΔI = (U_in − U_out)·U_out/(U_in·L·f)
 *
 * U_in, U_out  input and output voltage [V], U_in above U_out
 * L            inductance at the working current [H]
 * f            switching frequency of the phase [Hz]
 * Valid in continuous conduction, with an inductance that is constant over the ripple.
 * Source: Texas Instruments, TPS40140 data sheet SLUS660H, 2013, section 6.1.
 */
export function inductorRipple(
  inputVoltage: number,
  outputVoltage: number,
  inductance: number,
  frequency: number,
): number {
  return ((inputVoltage - outputVoltage) * outputVoltage) / (inputVoltage * inductance * frequency);
}

/**
 * Inductance that gives a peak-to-peak ripple current in one buck phase [H].
 *
 * L = (U_in − U_out)·U_out/(U_in·ΔI·f)
 *
 * ΔI  peak-to-peak ripple [A], more than zero; the others and the range as for the ripple
 * Source: Texas Instruments, TPS40140 data sheet SLUS660H, 2013, section 6.1.
 */
export function inductanceForRipple(
  inputVoltage: number,
  outputVoltage: number,
  ripple: number,
  frequency: number,
): number {
  return inductorRipple(inputVoltage, outputVoltage, ripple, frequency);
}
