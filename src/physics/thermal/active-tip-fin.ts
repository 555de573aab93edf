/**
 * Heat that a fin of constant section carries away, its tip cooled too [W].
 *
 * q = M·(sinh mL + (h/(m·k))·cosh mL)/(cosh mL + (h/(m·k))·sinh mL), M = √(h·P·k·A)·θ, m = √(h·P/(k·A))
 *
 * h  film coefficient, also at the tip [W/(m²·K)]
 * P  perimeter [m]
 * k  thermal conductivity of the fin [W/(m·K)]
 * A  cross-section [m²]
 * L  length from root to tip [m]
 * θ  root above the air [K]
 * Valid for fins that are thin against their length.
 * Source: Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, table 3.4, case A.
 */
export function activeTipFinHeat(
  film: number,
  perimeter: number,
  conductivity: number,
  section: number,
  length: number,
  excess: number,
): number {
  const m = Math.sqrt((film * perimeter) / (conductivity * section));
  const tanh = Math.tanh(m * length);
  const tip = film / (m * conductivity);
  return (Math.sqrt(film * perimeter * conductivity * section) * excess * (tanh + tip)) / (1 + tip * tanh);
}
