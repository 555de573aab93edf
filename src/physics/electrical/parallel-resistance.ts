/**
 * Resistance of two resistors in parallel [Ω].
 *
 * R = a·b/(a + b)
 *
 * a, b  resistances [Ω]; zero or more, not both zero.
 * Valid for direct current, where the leads between the two are negligible against both.
 * Source: Ohm's and Kirchhoff's laws.
 */
export function parallelResistance(a: number, b: number): number {
  return (a * b) / (a + b);
}
