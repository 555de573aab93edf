/**
 * Efficiency of a converter from its loss [1].
 *
 * η = P/(P + P_loss)
 *
 * P       output power [W], more than zero
 * P_loss  all losses [W]
 * Valid in steady state.
 * Source: conservation of energy.
 */
export function efficiency(outputPower: number, loss: number): number {
  return outputPower / (outputPower + loss);
}

/**
 * Loss of a converter from its efficiency [W].
 *
 * P_loss = P·(1/η − 1)
 *
 * P  output power [W]
 * η  efficiency [1], above 0, up to 1
 * Valid in steady state.
 * Source: conservation of energy.
 */
export function lossFromEfficiency(outputPower: number, efficiencyThere: number): number {
  return outputPower * (1 / efficiencyThere - 1);
}

/**
 * Input current of a converter [A].
 *
 * I = (P + P_loss)/U
 *
 * P       output power [W]
 * P_loss  all losses [W]
 * U       input voltage [V]
 * Valid in steady state, averaged over the switching period.
 * Source: conservation of energy.
 */
export function converterInputCurrent(outputPower: number, loss: number, inputVoltage: number): number {
  return (outputPower + loss) / inputVoltage;
}
