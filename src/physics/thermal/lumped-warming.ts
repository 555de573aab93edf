/**
 * Temperature of a body on its way from one temperature to another [K].
 *
 * T = T∞ + (T0 − T∞)·exp(−t/τ)
 *
 * T0  temperature at the start [K]
 * T∞  temperature it ends at [K]
 * t   time since the start [s]
 * τ   time constant [s]
 * Valid where the body is at one temperature throughout: h·V/(A·k) below 0.1.
 * Source: Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, equations 5.6 and 5.10.
 */
export function temperatureOnTheWay(start: number, end: number, time: number, timeConstant: number): number {
  return end + (start - end) * Math.exp(-time / timeConstant);
}

/**
 * Time constant of a body [s].
 *
 * τ = ρ·V·c·R
 *
 * ρ  density [kg/m³]
 * V  volume [m³]
 * c  specific heat [J/(kg·K)]
 * R  thermal resistance to its surroundings [K/W], 1/(h·A) for a film
 * Range and source as for the temperature on the way.
 */
export function bodyTimeConstant(density: number, volume: number, specificHeat: number, resistance: number): number {
  return density * volume * specificHeat * resistance;
}
