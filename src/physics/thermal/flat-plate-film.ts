/**
 * Mean Nusselt number of a plate in laminar flow along it [1].
 *
 * Nu = 0.664·√Re·Pr^⅓
 *
 * Re  Reynolds number of the plate's length [1]
 * Pr  Prandtl number [1], at least 0.6
 * Valid for Re up to 5e5, plate at one temperature, properties at the mean of plate and air.
 * Source: Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, equation 7.30.
 */
export function laminarPlateNusselt(reynolds: number, prandtl: number): number {
  return 0.664 * Math.sqrt(reynolds) * Math.cbrt(prandtl);
}

/**
 * Mean Nusselt number of a plate whose boundary layer turns turbulent at Re = 5e5, or from its edge on where it is tripped [1].
 *
 * Nu = (0.037·Re^0.8 − A)·Pr^⅓, A = 871, tripped 0
 *
 * Re  Reynolds number of the plate's length [1]
 * Pr  Prandtl number [1], 0.6 to 60
 * Valid for Re from 5e5 (tripped: from anything that is turbulent) to 1e8.
 * Source: Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, equation 7.38.
 */
export function turbulentPlateNusselt(reynolds: number, prandtl: number, tripped: boolean): number {
  return (0.037 * reynolds ** 0.8 - (tripped ? 0 : 871)) * Math.cbrt(prandtl);
}

/**
 * Film coefficient between a plate and air along it [W/(m²·K)].
 *
 * h = Nu·k/L, Re = v·L/ν; Nu laminar up to Re = 5e5, above it mixed
 *
 * v   velocity [m/s]
 * L   length of the plate along the air [m]
 * k   thermal conductivity of air [W/(m·K)]
 * ν   kinematic viscosity of air [m²/s]
 * Pr  Prandtl number of air [1]
 * Valid as the two Nusselt numbers are. Source as for those.
 */
export function plateFilm(
  velocity: number,
  length: number,
  conductivity: number,
  viscosity: number,
  prandtl: number,
): number {
  const reynolds = (velocity * length) / viscosity;
  const nusselt =
    reynolds <= 5e5 ? laminarPlateNusselt(reynolds, prandtl) : turbulentPlateNusselt(reynolds, prandtl, false);
  return (nusselt * conductivity) / length;
}
