/**
 * Part of a voltage that a divider hands on [1].
 *
 * r = p/(R_u + p), p = R_l·R_load/(R_l + R_load)
 *
 * R_u     upper resistor [Ω]
 * R_l     lower resistor, across which the voltage is taken [Ω], more than zero
 * R_load  what draws current from the divider [Ω], more than zero; Infinity when nothing does
 * Valid for direct current from a source of negligible resistance.
 * Source: Kirchhoff's laws (voltage divider).
 */
export function dividerRatio(upper: number, lower: number, load: number): number {
  return 1 / (1 + upper / lower + upper / load);
}
