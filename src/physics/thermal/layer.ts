/**
 * Thermal resistance of a layer [K/W].
 *
 * R = t/(k·A)
 *
 * t  thickness along the heat [m]
 * k  thermal conductivity [W/(m·K)], more than zero
 * A  area the heat passes through [m²], more than zero
 * Valid for heat that passes straight through; layers in series add up.
 * Source: Fourier's law; Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, chapter 3.
 */
export function layerResistance(thickness: number, conductivity: number, area: number): number {
  return thickness / (conductivity * area);
}
