/**
 * Life of an aluminium electrolytic capacitor with liquid electrolyte [s].
 *
 * L = L0·2^((T0 − T)/10 K)
 *
 * L0  rated life at the rated temperature [s]
 * T0  rated temperature [K]
 * T   temperature of its core [K]
 * Valid for liquid electrolyte from about 40 °C up to the rated temperature; a polymer capacitor follows another law.
 * Source: COSEL, technical note A0057, life of electrolytic capacitors.
 */
export function liquidCapacitorLife(ratedLife: number, ratedTemperature: number, temperature: number): number {
  return ratedLife * 2 ** ((ratedTemperature - temperature) / 10);
}
