/** Specific gas constant of dry air [J/(kg·K)]. Source: ISO 2533:1975, Standard atmosphere. */
const airGasConstant = 287.05287;

/** Standard pressure [Pa]. Source: ISO 2533:1975. */
const standardPressure = 101325;

/** Isobaric specific heat of air at room temperature [J/(kg·K)]. Source: Çengel, Heat and Mass Transfer, table A-15. */
const airSpecificHeat = 1007;

/**
 * Density of dry air at standard pressure [kg/m³].
 *
 * ρ = p/(R·T)
 *
 * p  101 325 Pa
 * R  specific gas constant of dry air
 * T  temperature [K]
 * Valid from −50 °C to 200 °C near sea level; 11 % less at 1000 m.
 * Source: ISO 2533:1975, Standard atmosphere.
 */
export function airDensity(temperature: number): number {
  return standardPressure / (airGasConstant * temperature);
}

/**
 * Heat that a stream of air takes up for each kelvin it warms [W/K].
 *
 * C = ρ(T)·V·c
 *
 * V  volume flow [m³/s], as measured at T
 * T  temperature at which the flow is stated [K]
 * c  specific heat of air, 1007 J/(kg·K)
 * Valid from 0 °C to 100 °C near sea level.
 * Source: energy balance; Çengel, Heat and Mass Transfer, table A-15.
 */
export function airHeatCapacityRate(volumeFlow: number, temperature: number): number {
  return airDensity(temperature) * volumeFlow * airSpecificHeat;
}

/**
 * Volume flow of air that takes up a heat at a given warming [m³/s].
 *
 * V = P/(ρ(T)·c·ΔT)
 *
 * P   heat [W]
 * T   temperature at which the flow is stated [K]
 * ΔT  warming of the air [K], more than zero
 * Range and source as for the heat that a stream takes up.
 */
export function airFlowFor(power: number, rise: number, temperature: number): number {
  return power / (airHeatCapacityRate(1, temperature) * rise);
}
