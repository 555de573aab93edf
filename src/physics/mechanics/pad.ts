/**
 * Strain of a gap pad [1]; negative: it doesn't touch.
 *
 * ε = (t − s)/t
 *
 * t  thickness of the free pad [m]
 * s  space between the two surfaces [m]
 * Usual from 0.20 to 0.45: below, contact is uncertain; above, silicone oil may bleed out.
 * Source: definition, as in ASTM D575; the usual range from a pad maker's selection guide (T-Global Technology).
 */
export function padStrain(thickness: number, space: number): number {
  return (thickness - space) / thickness;
}

/**
 * Pressure of a gap pad at a strain, between two points of its data sheet [Pa].
 *
 * p = p1·(ε/ε1)^m, m = ln(p2/p1)/ln(ε2/ε1)
 *
 * ε1, p1  strain [1] and pressure [Pa] of one point
 * ε2, p2  of another, both larger
 * ε       strain [1], not negative
 * Valid between the points, for the load at the speed of the test; a pad relaxes to about half of it within hours (common practice, no source).
 * Source: interpolation along a straight line in double logarithmic scale; test by ASTM D575.
 */
export function padPressure(
  strain: number,
  strain1: number,
  pressure1: number,
  strain2: number,
  pressure2: number,
): number {
  const exponent = Math.log(pressure2 / pressure1) / Math.log(strain2 / strain1);
  return pressure1 * (strain / strain1) ** exponent;
}
