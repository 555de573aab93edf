/**
 * Voltage a processor asks for at a share of its power [V].
 *
 * U = U1·s^b
 *
 * U1  voltage at scale 1 [V]
 * s   power as a share of the power at scale 1 [1], more than zero
 * b   exponent [1]; 1/3 is the "cube law": power as voltage squared times a frequency that rises with voltage
 * Valid between about half and twice the power at scale 1, above the processor's lowest voltage.
 * Source: common practice, no source.
 */
export function loadVoltage(voltage: number, scale: number, exponent: number): number {
  return voltage * scale ** exponent;
}
