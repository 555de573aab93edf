/** Resistivity of annealed copper at 20 °C [Ω·m]. Source: IEC 60028:1925, 1/58 Ω·mm²/m. */
const copperResistivity = 1 / 58e6;

/**
 * Resistance of a solid round wire of annealed copper at 20 °C [Ω].
 *
 * R = ρ·l/(π·d²/4)
 *
 * ρ  resistivity of annealed copper, 1/58 Ω·mm²/m
 * d  diameter [m], more than zero
 * l  length of conductor [m]; for a cable, both ways
 * Valid for direct current. Stranded wire of the same gauge is a few per cent higher.
 * Source: IEC 60028:1925, International standard of resistance for copper.
 */
export function wireResistance(diameter: number, length: number): number {
  return (copperResistivity * length) / ((Math.PI / 4) * diameter * diameter);
}
