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

/**
 * Life of an aluminium electrolytic capacitor with liquid electrolyte, with its ripple current [s].
 *
 * L = L0·2^((T0 − T)/10 K)·K^((1 − (I/I0)²)·ΔT0/10 K)
 *
 * L0   rated life at rated temperature and rated ripple current [s]
 * T0   rated temperature [K]
 * T    temperature of the air around it [K]
 * I    ripple current, converted to the frequency of the rating [A]
 * I0   rated ripple current [A], more than zero
 * ΔT0  rise of the core at rated ripple [K]; typically 3.5 K to 5 K in parts for 105 °C, up to 10 K in parts for 85 °C
 * K    2 up to the rated ripple current, 4 above it
 * Valid from about 40 °C up to the rated temperature, at up to the rated voltage.
 * Source: A. Albertsen, Electrolytic Capacitor Lifetime Estimation, Jianghai Europe, 2012.
 */
export function liquidCapacitorLifeWithRipple(
  ratedLife: number,
  ratedTemperature: number,
  ambient: number,
  ratedRipple: number,
  ripple: number,
  ratedRise: number,
): number {
  const share = ripple / ratedRipple;
  const base = share > 1 ? 4 : 2;
  return liquidCapacitorLife(ratedLife, ratedTemperature, ambient) * base ** (((1 - share * share) * ratedRise) / 10);
}

/**
 * Life of an aluminium capacitor with conductive polymer [s].
 *
 * L = L0·10^((T0 − T)/20 K)
 *
 * L0  rated life at the rated temperature [s]
 * T0  rated temperature [K]
 * T   temperature of the capacitor [K]
 * Valid for solid polymer, not for hybrids with liquid electrolyte.
 * Source: Würth Elektronik, aluminium polymer capacitors, 2022, pages 18–19.
 */
export function polymerCapacitorLife(ratedLife: number, ratedTemperature: number, temperature: number): number {
  return ratedLife * 10 ** ((ratedTemperature - temperature) / 20);
}

/**
 * Life under several conditions in turn [s].
 *
 * L = Σt_i/Σ(t_i/L_i)
 *
 * t_i  time spent in each condition, in any one unit; more than zero together
 * L_i  life if it were always in that condition [s]
 * Valid where wear adds up and doesn't depend on the order.
 * Source: COSEL, technical note A0057, life of electrolytic capacitors at varying temperatures.
 */
export function lifeUnderMix(parts: readonly { readonly time: number; readonly life: number }[]): number {
  const time = parts.reduce((sum, part) => sum + part.time, 0);
  return time / parts.reduce((sum, part) => sum + part.time / part.life, 0);
}
