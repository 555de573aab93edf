/**
 * Rayleigh number [1].
 *
 * Ra = g·β·ΔT·L³/(ν·a)
 *
 * g   9.81 m/s²
 * β   volumetric expansion [1/K]; for a gas 1/T of the mean temperature
 * ΔT  surface against the air, taken positive [K]
 * L   height, or another length that the law names [m]
 * ν   kinematic viscosity [m²/s]
 * a   thermal diffusivity [m²/s]
 * Source: Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, equation 9.25.
 */
export function rayleigh(
  expansion: number,
  difference: number,
  length: number,
  viscosity: number,
  diffusivity: number,
): number {
  return (9.81 * expansion * Math.abs(difference) * length ** 3) / (viscosity * diffusivity);
}

/**
 * Mean Nusselt number of an upright plate in still air [1].
 *
 * Nu = {0.825 + 0.387·Ra^(1/6)/[1 + (0.492/Pr)^(9/16)]^(8/27)}²
 *
 * Ra  Rayleigh number of the height [1]
 * Pr  Prandtl number [1]
 * Valid for every Ra; below 1e9 the laminar form is somewhat nearer.
 * Source: S. W. Churchill, H. H. S. Chu, Int. J. Heat Mass Transfer 18 (1975) 1323, as in Incropera and DeWitt, equation 9.26.
 */
export function verticalPlateNusselt(rayleighNumber: number, prandtl: number): number {
  return (0.825 + (0.387 * rayleighNumber ** (1 / 6)) / (1 + (0.492 / prandtl) ** (9 / 16)) ** (8 / 27)) ** 2;
}

/**
 * Mean Nusselt number of an upright plate in still air, laminar [1].
 *
 * Nu = 0.68 + 0.670·Ra^¼/[1 + (0.492/Pr)^(9/16)]^(4/9)
 *
 * Symbols as for every Ra. Valid for Ra up to 1e9. Source: as above, equation 9.27.
 */
export function laminarVerticalPlateNusselt(rayleighNumber: number, prandtl: number): number {
  return 0.68 + (0.67 * rayleighNumber ** 0.25) / (1 + (0.492 / prandtl) ** (9 / 16)) ** (4 / 9);
}

/**
 * Mean Nusselt number of a level plate that is warm on top, or cold below [1].
 *
 * Nu = 0.54·Ra^¼ up to Ra = 1e7, 0.15·Ra^⅓ above
 *
 * Ra  Rayleigh number of area over perimeter [1], 1e4 to 1e11
 * Source: Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, equations 9.30 and 9.31.
 */
export function upwardPlateNusselt(rayleighNumber: number): number {
  return rayleighNumber <= 1e7 ? 0.54 * rayleighNumber ** 0.25 : 0.15 * Math.cbrt(rayleighNumber);
}

/**
 * Mean Nusselt number of a level plate that is warm below, or cold on top [1].
 *
 * Nu = 0.27·Ra^¼
 *
 * Ra  Rayleigh number of area over perimeter [1], 1e5 to 1e10
 * Source: Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, 6th ed., equation 9.32.
 */
export function downwardPlateNusselt(rayleighNumber: number): number {
  return 0.27 * rayleighNumber ** 0.25;
}

/**
 * Mean Nusselt number of a level cylinder in still air [1].
 *
 * Nu = {0.60 + 0.387·Ra^(1/6)/[1 + (0.559/Pr)^(9/16)]^(8/27)}²
 *
 * Ra  Rayleigh number of the diameter [1], up to 1e12
 * Pr  Prandtl number [1]
 * Source: S. W. Churchill, H. H. S. Chu, Int. J. Heat Mass Transfer 18 (1975) 1049, as in Incropera and DeWitt, equation 9.34.
 */
export function levelCylinderNusselt(rayleighNumber: number, prandtl: number): number {
  return (0.6 + (0.387 * rayleighNumber ** (1 / 6)) / (1 + (0.559 / prandtl) ** (9 / 16)) ** (8 / 27)) ** 2;
}
