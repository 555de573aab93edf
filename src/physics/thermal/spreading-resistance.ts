/**
 * Spreading resistance from a source to the plate it heats, by the source's mean temperature [K/W].
 *
 * R = ½·(1 − ε)^1.5·Φ/(√π·k·a)
 * Φ = (tanh(λτ) + λ/Bi)/(1 + (λ/Bi)·tanh(λτ)), λ = π + 1/(√π·ε), τ = t/b, Bi = h·b/k
 * ε = a/b, a = √(A_source/π), b = √(A_plate/π)
 *
 * A_source  area the heat enters through [m²], centred
 * A_plate   area of the plate [m²], at least A_source
 * t         thickness of the plate [m]
 * k         thermal conductivity of the plate [W/(m·K)]
 * h         film coefficient on the plate's far side, over its whole area [W/(m²·K)]
 * It comes on top of the plain layer t/(k·A_plate). Valid for compact, centred sources; within 6 % of the exact solution for square plates.
 * Source: S. Song, S. Lee, V. Au, IEPS Conf. 1994; S. Lee, S. Song, V. Au, K. P. Moran, ASME/JSME Thermal Eng. Conf. 1995 (equations from memory).
 */
export function spreadingResistance(
  sourceArea: number,
  plateArea: number,
  thickness: number,
  conductivity: number,
  film: number,
): number {
  const a = Math.sqrt(sourceArea / Math.PI);
  const epsilon = Math.sqrt(sourceArea / plateArea);
  const phi = plateFactor(a / epsilon, epsilon, thickness, conductivity, film);
  return (0.5 * (1 - epsilon) ** 1.5 * phi) / (Math.sqrt(Math.PI) * conductivity * a);
}

/**
 * Spreading resistance from a source to the plate it heats, by the source's hottest point [K/W].
 *
 * R = (1 − ε)·Φ/(π·k·a)
 *
 * Symbols as for the mean. Valid as for the mean; within 7 % of the exact solution for square plates.
 * Source: S. Lee, Electronics Cooling 4 (1998) 30–33 (equations from memory).
 */
export function peakSpreadingResistance(
  sourceArea: number,
  plateArea: number,
  thickness: number,
  conductivity: number,
  film: number,
): number {
  const a = Math.sqrt(sourceArea / Math.PI);
  const epsilon = Math.sqrt(sourceArea / plateArea);
  const phi = plateFactor(a / epsilon, epsilon, thickness, conductivity, film);
  return ((1 - epsilon) * phi) / (Math.PI * conductivity * a);
}

function plateFactor(b: number, epsilon: number, thickness: number, conductivity: number, film: number): number {
  const lambda = Math.PI + 1 / (Math.sqrt(Math.PI) * epsilon);
  const depth = Math.tanh((lambda * thickness) / b);
  const ratio = (lambda * conductivity) / (film * b);
  return (depth + ratio) / (1 + ratio * depth);
}
