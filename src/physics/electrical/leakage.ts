/**
 * Leakage power of a chip at a temperature [W].
 *
 * P = P0·exp((T − T0)/Te)
 *
 * P0  leakage at the reference temperature [W]
 * T   temperature [K]
 * T0  reference temperature [K]
 * Te  rise in temperature that multiplies leakage by e [K], more than zero
 * Valid over a few tens of kelvins around T0, at constant voltage.
 * Source: common practice, no source.
 */
export function leakagePower(power: number, temperature: number, reference: number, eFold: number): number {
  return power * Math.exp((temperature - reference) / eFold);
}
