/**
 * What a limiter reads at a true power once a resistor is stacked across its sense resistor [W].
 *
 * P_read = P·R_s/(R + R_s)
 *
 * P    true power [W]
 * R    sense resistor that the firmware believes in [Ω]
 * R_s  resistor stacked across it, with its joints [Ω]; Infinity when it isn't connected
 * Valid for one sense point without divider and offset. At a small load this is the check of the joints: a reading that hasn't fallen means an open
 * joint, one that fell to zero a short. In both cases stop.
 * Source: Ohm's law.
 */
export function stackedReading(power: number, original: number, stacked: number): number {
  return power / (1 + original / stacked);
}

/**
 * Resistor to stack across a sense resistor so that real power is a multiple of what is read [Ω].
 *
 * R_s = R/(m − 1)
 *
 * R  sense resistor that is there [Ω]
 * m  real power over reading [1], above 1
 * Valid for one sense point without divider and offset.
 * Source: Ohm's law.
 */
export function resistorToStack(original: number, multiple: number): number {
  return original / (multiple - 1);
}
