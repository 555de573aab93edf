/**
 * Nusselt number of turbulent flow in a smooth tube [1].
 *
 * Nu = 0.023·Re^0.8·Pr^n, n = 0.4 where the tube heats the fluid, 0.3 where it cools it
 *
 * Re  Reynolds number of the diameter [1]
 * Pr  Prandtl number [1]
 * Valid for Re from 1e4 on, Pr from 0.6 to 160, length over ten diameters, small differences of temperature; within 25 %.
 * Source: Dittus and Boelter, 1930, as in Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, equation 8.60.
 */
export function turbulentTubeNusselt(reynolds: number, prandtl: number, heating: boolean): number {
  return 0.023 * reynolds ** 0.8 * prandtl ** (heating ? 0.4 : 0.3);
}

/**
 * Nusselt number of fully developed laminar flow in a round tube with uniform heat flux [1].
 *
 * Nu = 48/11
 *
 * Valid for Re up to 2300, beyond the entrance length.
 * Source: Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, equation 8.53.
 */
export const laminarTubeNusseltAtUniformFlux = 48 / 11;
