import { faradayConstant } from './electrochemical-equivalent.ts';

/**
 * Mass of metal plated [kg].
 *
 * m = η·e·Q
 *
 * η  current efficiency of the cathode [1]; about 0.955 for nickel
 * e  electrochemical equivalent [kg/C]
 * Q  charge, current times time [C]
 * Valid within the bath's ranges of temperature, pH and current density.
 * Source: Faraday's laws of electrolysis; Nickel Institute, Nickel Plating Handbook (efficiency, from memory).
 */
export function platedMass(charge: number, equivalent: number, efficiency: number): number {
  return efficiency * equivalent * charge;
}

/**
 * Mean thickness of a plated layer [m].
 *
 * s = η·e·j·t/ρ
 *
 * j  current density, current over plated area [A/m²]
 * t  time [s]
 * ρ  density of the deposit [kg/m³]
 * η, e, range and source as for the mass. Edges grow thicker than the middle, hollows stay thinner.
 */
export function platedThickness(
  currentDensity: number,
  time: number,
  equivalent: number,
  density: number,
  efficiency: number,
): number {
  return (efficiency * equivalent * currentDensity * time) / density;
}

/**
 * Time to plate a mean thickness [s].
 *
 * t = s·ρ/(η·e·j)
 *
 * Symbols, range and source as for the thickness.
 */
export function platingTime(
  thickness: number,
  currentDensity: number,
  equivalent: number,
  density: number,
  efficiency: number,
): number {
  return (thickness * density) / (efficiency * equivalent * currentDensity);
}

/**
 * Charge to plate a mean thickness on an area [C].
 *
 * Q = s·A·ρ/(η·e)
 *
 * A  plated area, both sides where both are wet [m²]
 * Other symbols, range and source as for the thickness.
 */
export function platingCharge(
  thickness: number,
  area: number,
  equivalent: number,
  density: number,
  efficiency: number,
): number {
  return (thickness * area * density) / (efficiency * equivalent);
}

/**
 * Current for a current density on an area [A].
 *
 * I = j·A
 *
 * j  current density [A/m²]; 1 A/dm² is 100 A/m²
 * A  plated area [m²]
 * Valid as a mean; edges and corners see more.
 * Source: definition of current density.
 */
export function platingCurrent(currentDensity: number, area: number): number {
  return currentDensity * area;
}

/**
 * Amount of hydrogen that the current's remainder sets free [mol].
 *
 * n = (1 − η)·Q/(2·F)
 *
 * η  current efficiency of the cathode [1]
 * Q  charge [C]
 * F  Faraday constant [C/mol]
 * Valid where hydrogen takes all of the remainder. Hydrogen burns: this is why a plating shop is ventilated.
 * Source: Faraday's laws of electrolysis.
 */
export function hydrogenAmount(charge: number, efficiency: number): number {
  return ((1 - efficiency) * charge) / (2 * faradayConstant);
}
