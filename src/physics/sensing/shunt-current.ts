/**
 * Current through a shunt from the output of its amplifier [A].
 *
 * I = (U − U0)/(G·R)
 *
 * U    output of the amplifier [V]
 * U0   output at no current: a reference, and the amplifier's offset times its gain [V]
 * G    gain [1]; 1 where the shunt's voltage itself is read
 * R    resistance of the shunt between its voltage leads [Ω], more than zero
 * Valid while the output is clear of both its ends.
 * Source: Texas Instruments, INA210–INA215 data sheet SBOS437F, 2014, section 8.
 */
export function shuntCurrent(output: number, atNoCurrent: number, gain: number, resistance: number): number {
  return (output - atNoCurrent) / (gain * resistance);
}
