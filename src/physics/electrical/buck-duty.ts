/**
 * Duty of a buck converter's high side, losses neglected [1].
 *
 * D = U_out/U_in
 *
 * U_in, U_out  input and output voltage [V], U_in above U_out
 * Valid in continuous conduction; real duty is higher by about the relative loss.
 * Source: ROHM, Efficiency of Buck Converter, application note 64AN035E, 2021.
 */
export function buckDuty(inputVoltage: number, outputVoltage: number): number {
  return outputVoltage / inputVoltage;
}

/**
 * Time that a buck converter's high side conducts in each period [s].
 *
 * t = U_out/(U_in·f)
 *
 * U_in, U_out  input and output voltage [V]
 * f            switching frequency [Hz]
 * Valid in continuous conduction; below the controller's shortest on-time it skips pulses.
 * Source: Linear Technology, LTC3728 data sheet, design example.
 */
export function onTime(inputVoltage: number, outputVoltage: number, frequency: number): number {
  return buckDuty(inputVoltage, outputVoltage) / frequency;
}
