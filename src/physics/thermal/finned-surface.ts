/**
 * Heat that a finned surface gives to the air for each kelvin [W/K].
 *
 * G = h·(N·η·Af + Ab)
 *
 * h   film coefficient [W/(m²·K)]
 * N   number of fins [1]
 * η   efficiency of one fin [1]
 * Af  area of one fin, as its efficiency refers to it [m²]
 * Ab  area of the root between the fins [m²]
 * Valid where fins and root see the same air.
 * Source: Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, section 3.6.5.
 */
export function finnedConductance(
  film: number,
  fins: number,
  efficiency: number,
  finArea: number,
  bareArea: number,
): number {
  return film * (fins * efficiency * finArea + bareArea);
}
