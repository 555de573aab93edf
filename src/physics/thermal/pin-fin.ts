/**
 * Efficiency of a round pin fin with an active tip [1].
 *
 * η = tanh(m·Lc)/(m·Lc), m = √(4·h/(k·D)), Lc = L + D/4
 *
 * h  film coefficient [W/(m²·K)]
 * k  thermal conductivity of the pin [W/(m·K)]
 * D  diameter [m]
 * L  length from root to tip [m]
 * It refers to the area π·D·Lc. Valid for pins that are thin against their length; the corrected length takes the tip's heat into account.
 * Source: Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, table 3.5.
 */
export function pinFinEfficiency(film: number, conductivity: number, diameter: number, length: number): number {
  const mL = Math.sqrt((4 * film) / (conductivity * diameter)) * (length + diameter / 4);
  return mL < 1e-6 ? 1 : Math.tanh(mL) / mL;
}

/**
 * Heat that a very long fin carries away [W].
 *
 * q = √(h·P·k·A)·θ
 *
 * h  film coefficient [W/(m²·K)]
 * P  perimeter of the fin [m]
 * k  thermal conductivity [W/(m·K)]
 * A  cross-section of the fin [m²]
 * θ  root above the air [K]
 * Valid from about L = 2.65·√(k·A/(h·P)) on, where it is 1 % more than the heat of the fin with an adiabatic tip.
 * Source: Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, table 3.4, case D.
 */
export function longFinHeat(
  film: number,
  perimeter: number,
  conductivity: number,
  section: number,
  excess: number,
): number {
  return Math.sqrt(film * perimeter * conductivity * section) * excess;
}
