/**
 * Thermal conductance of the contact between two bare, rough, flat surfaces [W/(m²·K)].
 *
 * h = 1.25·k·(m/σ)·(p/H)^0.95, k = 2·k1·k2/(k1 + k2), σ² = σ1² + σ2², m² = m1² + m2²
 *
 * k1, k2  thermal conductivities [W/(m·K)]
 * σ       combined rms roughness [m], more than zero
 * m       combined mean absolute slope of the roughness [1]
 * p       pressure [Pa]
 * H       micro-hardness of the softer side [Pa]
 * Valid in vacuum, first loading, plastic contact, p/H from 1e-5 to 2e-2; what fills the gaps adds to it.
 * Source: M. M. Yovanovich, IEEE Trans. Components and Packaging Technologies 28 (2005) 182–206, after Cooper, Mikic and Yovanovich, 1969 (coefficient from memory).
 */
export function contactConductance(
  conductivityA: number,
  conductivityB: number,
  roughness: number,
  slope: number,
  pressure: number,
  hardness: number,
): number {
  const conductivity = (2 * conductivityA * conductivityB) / (conductivityA + conductivityB);
  return 1.25 * conductivity * (slope / roughness) * (pressure / hardness) ** 0.95;
}

/**
 * Thickness of solid that resists the heat as much as a contact does [m].
 *
 * t = k/h
 *
 * k  thermal conductivity of the solid [W/(m·K)]
 * h  conductance of the contact [W/(m²·K)]
 * Source: Çengel, Heat and Mass Transfer, section 3-2.
 */
export function equivalentThickness(conductivity: number, conductance: number): number {
  return conductivity / conductance;
}
