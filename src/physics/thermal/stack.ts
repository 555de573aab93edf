/**
 * Drops across layers that the same heat passes through, one after the other, in their order [K].
 *
 * ΔT_i = P·R_i
 *
 * P    heat [W]
 * R_i  thermal resistances in series [K/W]
 * Valid where no heat leaves between the layers.
 * Source: Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, section 3.1.3.
 */
export function layerDrops(power: number, resistances: readonly number[]): number[] {
  return resistances.map((resistance) => power * resistance);
}

/**
 * Thermal resistance of layers in series [K/W].
 *
 * R = Σ R_i
 *
 * Symbols, range and source as for the drops.
 */
export function seriesThermalResistance(resistances: readonly number[]): number {
  return resistances.reduce((sum, resistance) => sum + resistance, 0);
}

/**
 * Thermal resistance of ways side by side between the same two temperatures [K/W].
 *
 * R = 1/Σ (1/R_i)
 *
 * R_i  thermal resistance of each way [K/W], more than zero
 * Valid where the ways don't exchange heat between their ends.
 * Source: Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, section 3.1.3.
 */
export function parallelThermalResistance(resistances: readonly number[]): number {
  return 1 / resistances.reduce((sum, resistance) => sum + 1 / resistance, 0);
}
