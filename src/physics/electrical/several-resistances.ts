/**
 * Resistance of several resistors in series [Ω].
 *
 * R = ΣR_i
 *
 * R_i  resistances [Ω], zero or more each; solder joints and copper in the path count like resistors
 * Valid for direct current.
 * Source: Kirchhoff's laws.
 */
export function seriesResistance(resistances: readonly number[]): number {
  return resistances.reduce((sum, resistance) => sum + resistance, 0);
}

/**
 * Resistance of several resistors in parallel [Ω]; Infinity for none.
 *
 * 1/R = Σ1/R_i
 *
 * R_i  resistances [Ω], zero or more each; Infinity for one that is open
 * Valid for direct current, where the leads between them are negligible.
 * Source: Kirchhoff's laws.
 */
export function severalInParallel(resistances: readonly number[]): number {
  return 1 / resistances.reduce((sum, resistance) => sum + 1 / resistance, 0);
}
