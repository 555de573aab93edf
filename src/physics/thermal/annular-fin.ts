import { besselI, besselK } from './bessel.ts';

/**
 * Efficiency of an annular fin of constant thickness with an active tip [1].
 *
 * η = (2·r1/(m·(r2c² − r1²)))·(K1(m·r1)·I1(m·r2c) − I1(m·r1)·K1(m·r2c))/(I0(m·r1)·K1(m·r2c) + K0(m·r1)·I1(m·r2c))
 * m = √(2·h/(k·t)), r2c = r2 + t/2
 *
 * h   film coefficient [W/(m²·K)]
 * k   thermal conductivity of the fin [W/(m·K)]
 * t   thickness [m]
 * r1  radius of the root [m]
 * r2  radius of the tip [m], more than r1
 * It refers to the area 2·π·(r2c² − r1²). Valid for fins that are thin against their height.
 * Source: Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, equation 3.91.
 */
export function annularFinEfficiency(
  film: number,
  conductivity: number,
  thickness: number,
  root: number,
  tip: number,
): number {
  const m = Math.sqrt((2 * film) / (conductivity * thickness));
  const corrected = tip + thickness / 2;
  const [inner, outer] = [m * root, m * corrected];
  const top = besselK(1, inner) * besselI(1, outer) - besselI(1, inner) * besselK(1, outer);
  const bottom = besselI(0, inner) * besselK(1, outer) + besselK(0, inner) * besselI(1, outer);
  return ((2 * root) / (m * (corrected * corrected - root * root))) * (top / bottom);
}
