/** Boltzmann constant [J/K]. Source: CODATA 2018, exact. */
const boltzmann = 1.380649e-23;

/**
 * How many times faster something ages at one temperature than at another [1].
 *
 * A = exp(E/k·(1/T1 − 1/T2))
 *
 * E       activation energy [J]; 1 eV = 1.602176634e-19 J
 * T1, T2  lower and higher temperature [K], above zero
 * k       Boltzmann constant
 * Valid where one mechanism with one activation energy rules.
 * Source: JEDEC dictionary, acceleration factor, temperature (JEP122, JESD74).
 */
export function agingFactor(activationEnergy: number, temperature: number, higherTemperature: number): number {
  return Math.exp((activationEnergy / boltzmann) * (1 / temperature - 1 / higherTemperature));
}
