/**
 * Thickness of an interface material under pressure [m].
 *
 * BLT = c·(τ/p)^m, c = 1.31e-4 m, m = 0.166
 *
 * τ  yield stress of the material [Pa]; 10 Pa to 500 Pa is common (from memory)
 * p  pressure on the interface [Pa], more than zero
 * Valid for particle-filled greases and gels pressed to rest, about 50 kPa to 2 MPa.
 * Source: R. Prasher, J. Shipley, S. Prstic, P. Koning, J.-L. Wang, ASME IMECE2002-32118 (constants from memory).
 */
export function bondLineThickness(yieldStress: number, pressure: number): number {
  return 1.31e-4 * (yieldStress / pressure) ** 0.166;
}
