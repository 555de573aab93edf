/**
 * Properties of dry air at 1 atm. All four laws:
 *
 * T  temperature [K]
 * Valid from 250 K to 600 K near sea level; within 2 % of the tables.
 * Source: correlations as printed on egichem.com, thermophysical properties of air; the original was not read.
 */

/** Dynamic viscosity [Pa·s]: µ = 1.4592e-6·T^1.5/(109.10 + T). */
export function airViscosity(temperature: number): number {
  return (1.4592e-6 * temperature ** 1.5) / (109.1 + temperature);
}

/** Thermal conductivity [W/(m·K)]: k = 2.334e-3·T^1.5/(164.54 + T). */
export function airConductivity(temperature: number): number {
  return (2.334e-3 * temperature ** 1.5) / (164.54 + temperature);
}

/** Isobaric specific heat [J/(kg·K)]: c = 1030.5 − 0.19975·T + 3.9734e-4·T². */
export function airHeatCapacity(temperature: number): number {
  return 1030.5 - 0.19975 * temperature + 3.9734e-4 * temperature * temperature;
}

/** Prandtl number [1]: Pr = c·µ/k. */
export function airPrandtl(temperature: number): number {
  return (airHeatCapacity(temperature) * airViscosity(temperature)) / airConductivity(temperature);
}
