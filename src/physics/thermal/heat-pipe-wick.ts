/**
 * Porosity of a wrapped screen wick [1].
 *
 * ε = 1 − π·S·N·d/4
 *
 * S  crimping factor, about 1.05 [1]
 * N  wires per length [1/m]
 * d  diameter of a wire [m]
 * Source: S. W. Chi, Heat Pipe Theory and Practice, 1976; as in Qpedia Thermal eMagazine.
 */
export function screenPorosity(crimping: number, wiresPerLength: number, wireDiameter: number): number {
  return 1 - (Math.PI * crimping * wiresPerLength * wireDiameter) / 4;
}

/**
 * Thermal conductivity of a wrapped screen wick full of liquid [W/(m·K)].
 *
 * k = kl·[(kl + ks) − (1 − ε)·(kl − ks)]/[(kl + ks) + (1 − ε)·(kl − ks)]
 *
 * kl, ks  thermal conductivity of liquid and wire [W/(m·K)]
 * ε       porosity [1]
 * Source: S. W. Chi, Heat Pipe Theory and Practice, 1976; as in Qpedia Thermal eMagazine.
 */
export function screenConductivity(liquid: number, wire: number, porosity: number): number {
  const sum = liquid + wire;
  const difference = (1 - porosity) * (liquid - wire);
  return (liquid * (sum - difference)) / (sum + difference);
}

/**
 * Thermal conductivity of a grooved wick full of liquid, across the wall [W/(m·K)].
 *
 * k = ks·[1 − ε·(1 − kl/ks)], ε = w/(w + f)
 *
 * kl, ks  thermal conductivity of liquid and wall [W/(m·K)]
 * w, f    width of a groove and of the fin beside it [m]
 * Source: Qpedia Thermal eMagazine.
 */
export function grooveConductivity(liquid: number, wall: number, groove: number, fin: number): number {
  return wall * (1 - (groove / (groove + fin)) * (1 - liquid / wall));
}

/**
 * Most heat that a level heat pipe carries before its wick runs dry [W].
 *
 * Q = (2·σ/r)·K·A·ρ·h/(µ·L)
 *
 * σ  surface tension [N/m]
 * r  pore radius [m]
 * K  permeability of the wick [m²]
 * A  cross-section of the wick [m²]
 * ρ  density of the liquid [kg/m³]
 * h  heat of evaporation [J/kg]
 * µ  viscosity of the liquid [Pa·s]
 * L  effective length [m]
 * Valid where the vapour's pressure drop and gravity are small; other limits (boiling, entrainment, sound) may lie lower.
 * Source: A. Faghri, Heat Pipe Science and Technology, 1995.
 */
export function capillaryLimit(
  pipe: {
    readonly poreRadius: number;
    readonly permeability: number;
    readonly wickSection: number;
    readonly length: number;
  },
  liquid: {
    readonly surfaceTension: number;
    readonly density: number;
    readonly heatOfEvaporation: number;
    readonly viscosity: number;
  },
): number {
  const suction = (2 * liquid.surfaceTension) / pipe.poreRadius;
  const flow = (pipe.permeability * pipe.wickSection * suction) / (liquid.viscosity * pipe.length);
  return flow * liquid.density * liquid.heatOfEvaporation;
}
