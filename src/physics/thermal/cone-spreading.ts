/**
 * Thermal resistance of a layer below a square source, where the heat is taken to widen at an angle [K/W].
 *
 * R = d/(k·a·(a + 2·d·tan α))
 *
 * a  side of the source [m]
 * d  thickness of the layer [m]
 * k  thermal conductivity [W/(m·K)]
 * α  angle of widening [rad]; π/4 is common practice
 * A rough rule: it knows nothing of what lies below the layer, nor of its edges.
 * Source: Infineon, Industrial IGBT Modules: Explanation of Technical Information, equation 4.12.
 */
export function coneResistance(side: number, thickness: number, conductivity: number, angle: number): number {
  return thickness / (conductivity * side * (side + 2 * thickness * Math.tan(angle)));
}
