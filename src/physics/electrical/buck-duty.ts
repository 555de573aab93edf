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
