/**
 * Conduction loss of a switch, or of the inductor's winding, in one buck phase [W].
 *
 * P = (I² + ΔI²/12)·R·share
 *
 * I      average current of the phase [A]
 * ΔI     peak-to-peak ripple [A]
 * R      resistance at its temperature [Ω]
 * share  part of the period that it conducts [1]: D for the high side, 1 − D for the low side, 1 for the winding
 * Valid in continuous conduction.
 * Source: ROHM, Efficiency of Buck Converter, application note 64AN035E, 2021.
 */
export function conductionLoss(current: number, ripple: number, resistance: number, share: number): number {
  return (current * current + (ripple * ripple) / 12) * resistance * share;
}

/**
 * Loss from current and voltage overlapping while the high side switches [W].
 *
 * P = ½·U·I·t·f
 *
 * U  input voltage [V]
 * I  current of the phase [A]
 * t  rise plus fall time [s]
 * f  switching frequency [Hz]
 * Valid for hard switching with straight edges.
 * Source: ROHM, application note 64AN035E, 2021.
 */
export function switchingLoss(inputVoltage: number, current: number, edges: number, frequency: number): number {
  return 0.5 * inputVoltage * current * edges * frequency;
}

/**
 * Loss from charging the output capacitances of both switches [W].
 *
 * P = ½·Q·U·f
 *
 * Q  output charge of both switches at the input voltage [C]
 * U  input voltage [V]
 * f  switching frequency [Hz]
 * Valid for hard switching.
 * Source: International Rectifier, IRF7832 data sheet, power MOSFET selection; with Q = C·U the form in ROHM 64AN035E, 2021.
 */
export function outputChargeLoss(charge: number, inputVoltage: number, frequency: number): number {
  return 0.5 * charge * inputVoltage * frequency;
}

/**
 * Loss from the reverse recovery of the low side's body diode [W].
 *
 * P = Q·U·f
 *
 * Q  reverse recovery charge [C]; for a triangular recovery ½·I_rr·t_rr
 * U  input voltage [V]
 * f  switching frequency [Hz]
 * Valid for hard switching after a dead time in which the diode conducts.
 * Source: International Rectifier, IRF7832 data sheet, power MOSFET selection.
 */
export function recoveryLoss(charge: number, inputVoltage: number, frequency: number): number {
  return charge * inputVoltage * frequency;
}

/**
 * Loss from driving the gates [W].
 *
 * P = Q·U·f
 *
 * Q  gate charge of both switches at the drive voltage [C]
 * U  drive voltage [V]
 * f  switching frequency [Hz]
 * Valid without recovery of the gate's energy.
 * Source: ROHM, application note 64AN035E, 2021.
 */
export function gateLoss(charge: number, driveVoltage: number, frequency: number): number {
  return charge * driveVoltage * frequency;
}

/**
 * Loss in the body diode during the dead times [W].
 *
 * P = U·I·t·f
 *
 * U  diode's forward voltage [V]
 * I  current of the phase [A]
 * t  both dead times of one period together [s]
 * f  switching frequency [Hz]
 * Valid where the ripple is small against the current, so that both dead times see about the average.
 * Source: ROHM, application note 64AN035E, 2021.
 */
export function deadTimeLoss(diodeVoltage: number, current: number, deadTime: number, frequency: number): number {
  return diodeVoltage * current * deadTime * frequency;
}
