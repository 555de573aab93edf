/**
 * Current of one phase when phases of equal duty share by their resistance [A].
 *
 * I_j = I·g_j/Σg, g = 1/(R_winding + D·R_high + (1 − D)·R_low + R_trace)
 *
 * I   output current of all phases together [A]
 * g_j conductance of the phase [S]
 * Σg  conductance of all phases together [S]
 * Valid without current balancing, at exactly equal duty; a small difference in duty shifts far more.
 * Source: Kirchhoff's laws (current divider).
 */
export function phaseCurrent(outputCurrent: number, conductance: number, allConductances: number): number {
  return (outputCurrent * conductance) / allConductances;
}
