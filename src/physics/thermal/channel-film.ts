/**
 * Film coefficient between plate fins and the air forced between them [W/(m²·K)].
 *
 * h = Nu·k/b
 * Nu = [(Re*·Pr/2)^−3 + (0.664·√Re*·Pr^⅓·√(1 + 3.65/√Re*))^−3]^(−⅓), Re* = (v·b/ν)·(b/L)
 *
 * v   velocity between the fins [m/s]
 * b   gap between two fins [m]
 * L   length of the fins along the air [m]
 * k   thermal conductivity of air [W/(m·K)]
 * ν   kinematic viscosity of air [m²/s]
 * Pr  Prandtl number of air [1]
 * The coefficient refers to the air's temperature where it enters.
 * Valid for 0.1 < Re* < 100, laminar; rms error of the fit 2.1 %.
 * Source: P. Teertstra, M. M. Yovanovich, J. R. Culham, T. Lemczyk, SEMI-THERM 1999; J. R. Culham, Y. S. Muzychka, IEEE Trans. Components and Packaging Technologies 24 (2001).
 */
export function channelFilm(
  velocity: number,
  gap: number,
  length: number,
  conductivity: number,
  viscosity: number,
  prandtl: number,
): number {
  return (channelNusselt((velocity * gap * gap) / (viscosity * length), prandtl) * conductivity) / gap;
}

/** Nusselt number of the channel between plate fins, referred to the gap [1]; symbols as for the film coefficient. */
export function channelNusselt(reynolds: number, prandtl: number): number {
  const root = Math.sqrt(reynolds);
  const developed = (reynolds * prandtl) / 2;
  const developing = 0.664 * root * Math.cbrt(prandtl) * Math.sqrt(1 + 3.65 / root);
  return (developed ** -3 + developing ** -3) ** (-1 / 3);
}
