/**
 * Rate of a helical compression spring [N/m].
 *
 * k = G·d⁴/(8·D³·n)
 *
 * G  shear modulus of the wire [Pa]: about 81.5 GPa for spring steel, 70 GPa for stainless
 * d  diameter of the wire [m]
 * D  mean diameter of the coil [m]: outer diameter less d
 * n  active coils [1]: with closed ends two fewer than all coils
 * Valid for round wire, D/d from 4 to 20, until coils touch.
 * Source: EN 13906-1; Shigley's Mechanical Engineering Design, equation 10-9.
 */
export function helicalSpringRate(
  shearModulus: number,
  wireDiameter: number,
  coilDiameter: number,
  activeCoils: number,
): number {
  return (shearModulus * wireDiameter ** 4) / (8 * coilDiameter ** 3 * activeCoils);
}

/**
 * Rate of a flat spring arm, clamped at one end and loaded at the other [N/m].
 *
 * k = E·b·t³/(4·L³)
 *
 * E  modulus of elasticity [Pa]: about 200 GPa for steel
 * b  width [m]
 * t  thickness [m]
 * L  free length from the clamped end to the screw [m]
 * Valid for an arm that is thin against its length and bends by less than a tenth of it.
 * Source: beam theory, k = 3·E·I/L³ with I = b·t³/12; Shigley's Mechanical Engineering Design, table A-9, case 1.
 */
export function flatSpringRate(modulus: number, width: number, thickness: number, length: number): number {
  return (modulus * width * thickness ** 3) / (4 * length ** 3);
}

/**
 * Axial stiffness of a straight rod: a screw's shank or its thread, a standoff [N/m].
 *
 * k = E·A/L
 *
 * E  modulus of elasticity [Pa]
 * A  cross-section [m²]; of a thread, its stress area
 * L  length under load [m]
 * Valid below the yield point.
 * Source: Shigley's Mechanical Engineering Design, section 8-4.
 */
export function rodStiffness(modulus: number, area: number, length: number): number {
  return (modulus * area) / length;
}

/** Stiffness of parts that carry the same force one after the other [N/m]: 1/k = Σ 1/kᵢ. Source: Shigley, equation 8-18. */
export function seriesStiffness(parts: readonly number[]): number {
  return 1 / parts.reduce((sum, stiffness) => sum + 1 / stiffness, 0);
}
