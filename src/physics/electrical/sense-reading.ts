/**
 * Power that a limiter reads at a sense point [W].
 *
 * P = U·(I·R·g + U0)/R_assumed
 *
 * U          bus voltage [V]
 * I          current through the sense point [A]
 * R          resistance that is really there, with what the sense lines include of the joints [Ω]
 * g          gain of a divider on the sense lines [1]; 1 without one
 * U0         offset of the amplifier, referred to its input [V]
 * R_assumed  resistance the firmware believes in [Ω], more than zero
 * Valid where the amplifier is linear and neither it nor the converter is at its end.
 * Source: Ohm's law.
 */
export function readPower(
  busVoltage: number,
  current: number,
  resistance: number,
  gain: number,
  offset: number,
  assumedResistance: number,
): number {
  return (busVoltage * (current * resistance * gain + offset)) / assumedResistance;
}
