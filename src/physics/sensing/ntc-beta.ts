/**
 * Resistance of a thermistor by its β value [Ω].
 *
 * R = R0·exp(β·(1/T − 1/T0))
 *
 * R0, T0   nominal resistance [Ω] and its temperature, usually 298.15 K [K]
 * β        constant of the material [K]
 * T        temperature [K], more than zero
 * Valid near the two temperatures β is stated for: a part with β(25/85) is a few tenths of a kelvin off between, 1 K at 0 °C, several at −40 °C.
 * Source: IEC 60539-1, B-value.
 */
export function betaResistance(nominal: number, nominalTemperature: number, beta: number, temperature: number): number {
  return nominal * Math.exp(beta * (1 / temperature - 1 / nominalTemperature));
}

/**
 * Temperature of a thermistor by its β value [K].
 *
 * 1/T = 1/T0 + ln(R/R0)/β
 *
 * Symbols and range as for the resistance.
 * Source: IEC 60539-1, B-value.
 */
export function betaTemperature(nominal: number, nominalTemperature: number, beta: number, resistance: number): number {
  return 1 / (1 / nominalTemperature + Math.log(resistance / nominal) / beta);
}

/**
 * β value between two points of a thermistor [K].
 *
 * β = ln(R1/R2)/(1/T1 − 1/T2)
 *
 * R1, T1, R2, T2   resistance [Ω] and temperature [K] of two points at different temperatures
 * Source: IEC 60539-1, B-value.
 */
export function betaBetween(
  resistance1: number,
  temperature1: number,
  resistance2: number,
  temperature2: number,
): number {
  return Math.log(resistance1 / resistance2) / (1 / temperature1 - 1 / temperature2);
}
