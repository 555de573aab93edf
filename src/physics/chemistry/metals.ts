/** What plating with a metal needs to know of it. */
export interface PlatedMetal {
  /** Standard atomic weight as a molar mass [kg/mol]. */
  readonly molarMass: number;
  /** Charge of its ion in the usual baths [1]; others are given where they are used. */
  readonly valence: number;
  /** Density of the solid [kg/m³]; deposits may be a few per cent lighter. */
  readonly density: number;
}

/**
 * Metals that are plated on boards and heat sinks.
 * Source: molar masses: IUPAC, Standard Atomic Weights, 2021 (from memory); densities at 20 °C: CRC Handbook of Chemistry and Physics (from memory).
 */
export const platedMetals = {
  nickel: { molarMass: 58.6934e-3, valence: 2, density: 8908 },
  copper: { molarMass: 63.546e-3, valence: 2, density: 8960 },
  silver: { molarMass: 107.8682e-3, valence: 1, density: 10_490 },
  gold: { molarMass: 196.96657e-3, valence: 1, density: 19_300 },
  tin: { molarMass: 118.71e-3, valence: 2, density: 7287 },
  zinc: { molarMass: 65.38e-3, valence: 2, density: 7134 },
  chromium: { molarMass: 51.9961e-3, valence: 6, density: 7150 },
  palladium: { molarMass: 106.42e-3, valence: 2, density: 12_020 },
  indium: { molarMass: 114.818e-3, valence: 3, density: 7310 },
} satisfies Record<string, PlatedMetal>;
