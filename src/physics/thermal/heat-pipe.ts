/**
 * Thermal resistance of one heat pipe, end to end [K/W].
 *
 * R = 2·(R_wall + R_wick)
 *
 * R_wall  through the wall, at evaporator or condenser, alike at both [K/W]
 * R_wick  through the wick, at evaporator or condenser, alike at both [K/W]
 * Valid below the pipe's carrying limit, where the vapour's own drop is negligible.
 * Source: Qpedia Thermal eMagazine, heat pipe resistance network.
 */
export function heatPipeResistance(wall: number, wick: number): number {
  return 2 * (wall + wick);
}

/**
 * Thermal conductivity that a solid bar of the same size would need to do as well [W/(m·K)].
 *
 * k = L/(R·A)
 *
 * L  length [m]
 * R  thermal resistance from end to end [K/W]
 * A  cross-section [m²]
 * It depends on the length and is no property of the pipe.
 * Source: Fourier's law.
 */
export function effectiveConductivity(length: number, resistance: number, section: number): number {
  return length / (resistance * section);
}
