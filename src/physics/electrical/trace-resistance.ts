/** Resistivity of annealed copper at 20 °C [Ω·m]. Source: IEC 60028:1925, 1/58 Ω·mm²/m. */
export const copperResistivity = 1 / 58e6;

/**
 * Thickness of copper foil of a given weight [m].
 *
 * t = 1.378 mil·n
 *
 * n  ounces of copper on a square foot [1]
 * Valid for foil as bought; etching and plating change it by a tenth or more.
 * Source: common practice in board fabrication, 35 µm an ounce; 1.378 mil in calculators of trace widths.
 */
export function copperThickness(ounces: number): number {
  return 1.378 * 25.4e-6 * ounces;
}

/**
 * Resistance of a conductor of constant section [Ω].
 *
 * R = ρ·l/A
 *
 * ρ  resistivity at its temperature [Ω·m]
 * l  length [m]
 * A  section [m²], more than zero: width times thickness for a trace or plane, area of the pad for a solder joint
 * Valid for direct current that fills the section evenly: for a plane not near the points where the current enters.
 * Source: definition of resistivity, IEC 60028:1925.
 */
export function barResistance(resistivity: number, length: number, section: number): number {
  return (resistivity * length) / section;
}
