/** Stefan–Boltzmann constant [W/(m²·K⁴)]. Source: CODATA 2018. */
const stefanBoltzmann = 5.670374419e-8;

/**
 * Heat that a grey surface radiates to surroundings that are much larger [W].
 *
 * q = ε·σ·A·(T⁴ − Ts⁴)
 *
 * ε   emissivity [1]
 * A   area [m²]
 * T   temperature of the surface [K]
 * Ts  temperature of the surroundings [K]
 * Source: Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, equation 1.7.
 */
export function radiatedHeat(emissivity: number, area: number, temperature: number, surroundings: number): number {
  return emissivity * stefanBoltzmann * area * (temperature ** 4 - surroundings ** 4);
}

/**
 * Radiation as a film coefficient, for a surface in surroundings that are much larger [W/(m²·K)].
 *
 * h = ε·σ·(T + Ts)·(T² + Ts²)
 *
 * Symbols as for the heat. Exact; it depends on both temperatures.
 * Source: Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, equation 1.9.
 */
export function radiationFilm(emissivity: number, temperature: number, surroundings: number): number {
  return (
    emissivity *
    stefanBoltzmann *
    (temperature + surroundings) *
    (temperature * temperature + surroundings * surroundings)
  );
}

/**
 * Heat between two grey surfaces that see only each other [W].
 *
 * q = σ·(T1⁴ − T2⁴)/[(1 − ε1)/(ε1·A1) + 1/(A1·F) + (1 − ε2)/(ε2·A2)]
 *
 * T1, T2  their temperatures [K]
 * ε1, ε2  their emissivities [1], more than zero
 * A1, A2  their areas [m²]
 * F       view factor from the first to the second [1]; 1 for parallel plates close together and for what is enclosed
 * Valid for diffuse grey surfaces in an enclosure.
 * Source: Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, equation 13.18.
 */
export function exchangedHeat(
  first: { readonly emissivity: number; readonly area: number; readonly temperature: number },
  second: { readonly emissivity: number; readonly area: number; readonly temperature: number },
  viewFactor: number,
): number {
  const atSurface = (side: { readonly emissivity: number; readonly area: number }) =>
    (1 - side.emissivity) / (side.emissivity * side.area);
  const resistance = atSurface(first) + 1 / (first.area * viewFactor) + atSurface(second);
  return (stefanBoltzmann * (first.temperature ** 4 - second.temperature ** 4)) / resistance;
}
