/**
 * Part of a sense voltage that reaches the amplifier through a divider on the sense lines [1].
 *
 * g = p/(p + s), p = R_p·R_in/(R_p + R_in)
 *
 * s     all series resistance in the two sense lines [Ω]
 * R_p   resistor across the sense lines at the amplifier [Ω], more than zero
 * R_in  amplifier's own differential input resistance [Ω]; Infinity when it draws nothing
 * Valid for direct current where the sense resistor is negligible against s.
 * Source: Texas Instruments, INA210–INA215 data sheet SBOS437F, 2014, section 8.4.1, whose filter resistors are this divider.
 */
export function dividerGain(series: number, parallel: number, input: number): number {
  return 1 / (1 + series / parallel + series / input);
}
