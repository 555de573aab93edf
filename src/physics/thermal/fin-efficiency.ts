/**
 * Efficiency of a straight fin of constant thickness [1].
 *
 * η = tanh(m·H)/(m·H), m = √(2·h/(k·t))
 *
 * h  film coefficient between fin and air [W/(m²·K)]
 * k  thermal conductivity of the fin [W/(m·K)]
 * t  thickness of the fin [m]
 * H  height from root to tip [m]; with an active tip, H + t/2
 * Valid for fins that are thin against their height and long along the air, with an adiabatic tip.
 * Source: Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, section 3.6.
 */
export function finEfficiency(film: number, conductivity: number, thickness: number, height: number): number {
  const mH = Math.sqrt((2 * film) / (conductivity * thickness)) * height;
  return mH < 1e-6 ? 1 : Math.tanh(mH) / mH;
}
